import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cacheFolder } from '../editors/places.ts';

/**
 * The folder of the program `node` of another major version. It is installed into the user's cache when it is not there:
 * about 190 MB, once.
 */
export function otherNode(major: number): string {
  const name = `node-${process.platform}-${process.arch}`;
  const folder = join(cacheFolder(), `node-${major}`);
  const programs = join(folder, 'node_modules', name, 'bin');
  if (existsSync(join(programs, 'node'))) return programs;
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), '{ "private": true }\n');
  execFileSync('npm', ['install', '--prefix', folder, '--no-audit', '--no-fund', `${name}@${major}`], {
    stdio: 'ignore',
  });
  return programs;
}
