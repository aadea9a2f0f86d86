import { copyFileSync, mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { onTestFinished } from 'vitest';
import type { Position, TextEdit } from 'vscode-languageserver-protocol';
import { commandLineProgram } from '../editors/places.ts';
import { Client, type ClientOptions } from './client.ts';

/** A folder of files that lives as long as the test. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>> = {}): Folder {
  const path = realpathSync(mkdtempSync(join(tmpdir(), 'doughwright-')));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  const folder = folderAt(path);
  for (const [name, content] of Object.entries(files)) folder.write(name, content);
  return folder;
}

/** A folder at a place, made where there is none; who asks for it takes it away. */
export function folderAt(path: string): Folder {
  mkdirSync(path, { recursive: true });
  return {
    path,
    uri: pathToFileURL(path).href,
    uriOf: (name) => pathToFileURL(join(path, name)).href,
    write: (name, content) => {
      mkdirSync(dirname(join(path, name)), { recursive: true });
      writeFileSync(join(path, name), content);
    },
    remove: (name) => rmSync(join(path, name), { recursive: true }),
  };
}

export interface Folder {
  readonly path: string;
  readonly uri: string;
  uriOf(name: string): string;
  write(name: string, content: string | Uint8Array): void;
  remove(name: string): void;
}

/** A client that has said `initialized`; its server ends with the test. */
export async function startClient(options: ClientOptions = {}): Promise<Client> {
  const client = await Client.start(options);
  onTestFinished(() => client.end());
  return client;
}

/**
 * Runs the program as it is where the files of its languages were lost; with `left` they are there and hold that. The command
 * line and the server are one program.
 */
export async function withoutLanguages<T>(work: () => Promise<T>, left?: string): Promise<T> {
  const program = commandLineProgram();
  const lost = folderWith(left === undefined ? {} : { 'german.cjs': left });
  for (const name of [basename(program), 'doughwright-main.cjs', 'language-server.cjs', 'core.cjs'])
    copyFileSync(join(dirname(program), name), join(lost.path, name));
  const before = process.env.DOUGHWRIGHT_CLI;
  process.env.DOUGHWRIGHT_CLI = join(lost.path, basename(program));
  try {
    return await work();
  } finally {
    if (before === undefined) delete process.env.DOUGHWRIGHT_CLI;
    else process.env.DOUGHWRIGHT_CLI = before;
  }
}

/** What an editor makes of a text with edits of the protocol. */
export function applyEdits(text: string, edits: readonly TextEdit[]): string {
  const placed = edits.map(({ range, newText }) => ({
    start: offsetAt(text, range.start),
    end: offsetAt(text, range.end),
    newText,
  }));
  return placed
    .toSorted((one, other) => other.start - one.start)
    .reduce((all, { start, end, newText }) => all.slice(0, start) + newText + all.slice(end), text);
}

function offsetAt(text: string, { line, character }: Position): number {
  let start = 0;
  for (let at = 0; at < line; at++)
    start = /\r\n|\r|\n/g.exec(text.slice(start))!.index + start + lineBreak(text, start);
  return start + character;
}

function lineBreak(text: string, from: number): number {
  return /\r\n|\r|\n/.exec(text.slice(from))![0].length;
}
