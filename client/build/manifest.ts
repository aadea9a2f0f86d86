import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Folder of the whole project. */
export const projectFolder = resolve(fileURLToPath(new URL('../..', import.meta.url)));

export interface Manifest {
  readonly version: string;
  main?: string;
  readonly browser?: string;
  scripts?: Readonly<Record<string, string>>;
}

export function readManifest(): Manifest {
  return JSON.parse(readFileSync(resolve(projectFolder, 'package.json'), 'utf8')) as Manifest;
}

/** Says what was packaged and how large it is: `doughwright-0.1.0.vsix: 412 kB`. */
export function sizeLine(name: string, bytes: number): string {
  return `${name}: ${Math.ceil(bytes / 1000)} kB`;
}
