import { expect, it } from 'vitest';
import { wantsUpdate } from '../updating.ts';

it('rewrites fixtures only where they are asked for, and never on a build server', () => {
  expect(wantsUpdate({})).toBe(false);
  expect(wantsUpdate({ CI: 'true' })).toBe(false);
  expect(wantsUpdate({ UPDATE: '1' })).toBe(true);
  expect(wantsUpdate({ UPDATE: '1', CI: 'false' })).toBe(true);
  expect(() => wantsUpdate({ UPDATE: '1', CI: 'true' })).toThrow(/refused where CI is set/);
});
