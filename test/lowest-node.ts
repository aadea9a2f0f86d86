import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { projectFolder } from './editors/places.ts';

/** The lowest major version of Node that is promised: package.json names it in `engines`, and everything else after it. */
export function lowestNode(): number {
  const { engines } = JSON.parse(readFileSync(join(projectFolder, 'package.json'), 'utf8')) as {
    engines: { node: string };
  };
  const [, major] = /^>=(\d+)$/.exec(engines.node) ?? [];
  if (major === undefined) throw new Error(`engines.node is to read as >=20; it is ${engines.node}`);
  return Number(major);
}

/**
 * A program `node` of this major version on the path of the machine, past those that npm puts before it; nothing when there
 * is none.
 */
export function nodeOfMajor(major: number, path: string = process.env.PATH ?? ''): string | undefined {
  const name = process.platform === 'win32' ? 'node.exe' : 'node';
  return path
    .split(delimiter)
    .filter((folder) => folder !== '' && !/[\\/]node_modules[\\/]/.test(folder))
    .map((folder) => join(folder, name))
    .find((program) => existsSync(program) && versionOf(program).startsWith(`v${major}.`));
}

/** What a program says of its version, as `v20.1.0`; empty when it says nothing. */
export function versionOf(program: string): string {
  return (spawnSync(program, ['--version'], { encoding: 'utf8' }).stdout ?? '').trim();
}
