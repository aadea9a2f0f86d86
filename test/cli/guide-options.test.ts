import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectFolder } from '../editors/places.ts';
import { doughwright } from './run.ts';

const guide = join(projectFolder, 'docs/guide');
const pages = readdirSync(guide)
  .filter((name) => name.endsWith('.md'))
  .map((name) => readFileSync(join(guide, name), 'utf8'))
  .join('\n');

describe('the options of all commands', () => {
  it('stand in the guide, which names no others', async () => {
    const { stdout } = await doughwright(projectFolder, 'completion', 'fish');
    const options = new Set([...stdout.matchAll(/ -l '?([a-z][a-z-]*)/g)].map(([, name]) => name!));
    expect(options.size).toBeGreaterThan(40);
    const named = new Set([...pages.matchAll(/--([a-z][a-z-]+)/g)].map(([, name]) => name!));
    expect([...options].filter((one) => !named.has(one))).toEqual([]);
    // Those of npm, of VS Code, of git and of `sha256sum` that the guide calls.
    const others = ['global', 'install-extension', 'no-ext-diff', 'check', 'ignore-missing'];
    const known = new Set([...options, ...others, 'help', 'version']);
    expect([...named].filter((one) => !known.has(one))).toEqual([]);
  });
});
