import { expect, it } from 'vitest';
import { runInExtensionHost } from './extension-host.ts';

it('the suite passes inside the extension host', async () => {
  const { exitCode, console: lines } = await runInExtensionHost();
  expect(lines.filter((line) => /^(not ok| {2}#)/.test(line))).toEqual([]);
  expect(lines.filter((line) => /^ok \d/.test(line)).length).toBeGreaterThan(0);
  expect(exitCode).toBe(0);
});
