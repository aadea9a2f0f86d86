import { randomUUID } from 'node:crypto';
import { chmod, lstat, realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, extname, join, resolve } from 'node:path';
import { setImmediate as nextTurn } from 'node:timers/promises';
import { type Message, message } from '../../core/index.ts';
import { isWithin } from '../host/paths.ts';
import { say } from './speaker.ts';
import { complain, noOrders, visible } from './terminal.ts';

const endings = { '.html': 'html', '.htm': 'html', '.md': 'md', '.csv': 'csv', '.json': 'json' } as const;

export type FileFormat = (typeof endings)[keyof typeof endings];

/** The format asked for, else the one that the name of the file to be written ends with. */
export function formatOf<Format>({
  format,
  out,
}: {
  readonly format?: Format;
  readonly out?: string;
}): Format | FileFormat | undefined {
  const ending = extname(out ?? '').toLowerCase();
  return format ?? (ending in endings ? endings[ending as keyof typeof endings] : undefined);
}

/** Formats that another program reads, and whose texts are not changed for a terminal. */
export const isData = (format: string | undefined): boolean =>
  format === 'json' || format === 'csv' || format === 'html';

/** Formats whose figures another program reads; a page is read by people. */
export const isTable = (format: string | undefined): boolean => format === 'json' || format === 'csv';

/** How a text is written: what may be written over, and for whom. */
export interface Overwriting {
  /** What is written is a formula, so that it may go into a formula file. */
  readonly isFormula?: boolean;
  /** The user has said that a formula file which is there already may be written over. */
  readonly force?: boolean;
  /** Another program reads it (`isData`), so that it is written as it is. */
  readonly isData?: boolean;
}

/** A text, or its pieces one after another, so that a long one needs no room for all of it. */
export type Written = string | Iterable<string>;

/** Writes pieces to standard output, each when whoever reads them has taken those before. */
export async function writePieces(pieces: Iterable<string>): Promise<void> {
  for (const piece of pieces) {
    if (!process.stdout.write(piece)) await drained();
    // What a weak reference points to is held until the turn ends.
    else await nextTurn();
  }
}

/** Where nobody reads any more or the disk is full the program ends meanwhile, see `main.ts`. */
function drained(): Promise<void> {
  return new Promise((resolve) => process.stdout.once('drain', () => resolve()));
}

/**
 * Writes a text to standard output, or whole or not at all into a file. Answers whether it could; why not is told on
 * standard error. A formula file is never written over by what is no formula, nor by another one unasked.
 */
export async function writeOut(
  text: Written,
  file: string | undefined,
  overwriting: Overwriting = {},
): Promise<boolean> {
  if (file === undefined) {
    const pieces = typeof text === 'string' ? [text] : text;
    if (overwriting.isData === true) await writePieces(pieces);
    else process.stdout.write(noOrders(visible([...pieces].join(''))));
    return true;
  }
  const refusal = await refusalOf(file, overwriting);
  if (refusal !== undefined) {
    complain(file, say(refusal));
    return false;
  }
  try {
    await replaceFile(file, text);
    return true;
  } catch (error) {
    complain(file, say(notWritten(error)));
    return false;
  }
}

/** Why a file is not written over, and what to do instead; nothing where it may be. */
export async function refusalOf(file: string, overwriting: Overwriting): Promise<Message | undefined> {
  const elsewhere = await leadsElsewhere(resolve(file));
  if (elsewhere !== undefined) return elsewhere;
  // What is written goes where a link leads.
  const target = await realpath(file).catch(() => file);
  if (![file, target].some((path) => extname(path).toLowerCase() === '.dough')) return undefined;
  if (!overwriting.isFormula) return message('command-files.is-formula');
  const isThere = (await stat(target).catch(() => undefined)) !== undefined;
  return isThere && !overwriting.force ? message('command-files.formula-there') : undefined;
}

/**
 * Why a path is not what it seems: it leads out by a link, of the current folder where its words lie in that, else of its own; or it
 * is a pipe or a device that only somebody who wants to be waited for has put there. The system's own of those are what they are.
 */
async function leadsElsewhere(path: string): Promise<Message | undefined> {
  if (/^\/(?:dev|proc)\//.test(path)) return undefined;
  const folder = dirname(path);
  const top = await realpath(isWithin(path, resolve('.')) ? resolve('.') : folder).catch(() => undefined);
  const place = await realpath(folder).catch(() => undefined);
  if (top === undefined || place === undefined) return undefined;
  const isLink = (await lstat(path).catch(() => undefined))?.isSymbolicLink() ?? false;
  const target = isLink ? await realpath(path).catch(() => undefined) : join(place, basename(path));
  if (target === undefined || !isWithin(target, top)) return message('command-files.leads-out');
  const about = await stat(target).catch(() => undefined);
  return about === undefined || about.isFile() || about.isDirectory()
    ? undefined
    : message('command-files.no-ordinary-file');
}

/** That a file could not be written, why, and what to do about it. */
export function notWritten(error: unknown): Message {
  return message('command-files.not-written', { reason: writeTrouble(error) });
}

/** The same of standard output, in words. */
export function outputTrouble(error: unknown): string {
  return say(message('command-files.output-not-written', { reason: writeTrouble(error) }));
}

/** Why a file could not be written, and what to do about it; `here` where it is that file and no other that is wanted. */
export function writeTrouble(error: unknown, here = false): Message {
  switch ((error as NodeJS.ErrnoException).code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return message(here ? 'command-files.no-folder-here' : 'command-files.no-folder');
    case 'EISDIR':
      return message('command-files.is-folder');
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return message(here ? 'command-files.no-right-here' : 'command-files.no-right');
    case 'ENOSPC':
    case 'EDQUOT':
      return message('command-files.disk-full');
    default:
      return message(here ? 'command-files.disk-trouble-here' : 'command-files.disk-trouble');
  }
}

/**
 * Puts a text in the place of a file, or makes one, whole or not at all: it is written beside the file and takes its
 * name when it is complete. A link stays one, and a file keeps its mode.
 */
export async function replaceFile(path: string, text: Written): Promise<void> {
  const target = await realpath(path).catch(() => path);
  const about = await stat(target).catch(() => undefined);
  // What is no ordinary file, such as a device or a pipe, cannot be put in another's place.
  if (about !== undefined && !about.isFile()) return writeFile(target, text);
  const beside = join(dirname(target), `.${randomUUID()}.tmp`);
  waitToBeStopped();
  unfinished++;
  try {
    await writeFile(beside, untilStopped(text), { flag: 'wx', flush: true });
    if (about !== undefined) await chmod(beside, about.mode);
    await rename(beside, target);
  } catch (error) {
    await rm(beside, { force: true }).catch(() => undefined);
    throw error;
  } finally {
    unfinished--;
    if (unfinished === 0 && stopped !== undefined) process.exit(stopped);
  }
}

/** How many files are being written and have no name of their own yet. */
let unfinished = 0;
let waits = false;
/** The exit code of a program that was told to stop. */
let stopped: number | undefined;

/**
 * A program that is stopped while it writes leaves nothing half done behind: it ends once what is on its way to the disk is there,
 * or is taken back, for until then nobody can. Stopped twice it ends at once.
 */
function waitToBeStopped(): void {
  if (waits) return;
  waits = true;
  const stop = (code: number) => () => {
    stopped ??= code;
    if (unfinished === 0) process.exit(stopped);
  };
  process.once('SIGINT', stop(130));
  process.once('SIGTERM', stop(143));
}

function untilStopped(text: Written): Written {
  if (typeof text === 'string') return text;
  return (function* () {
    for (const part of text) {
      if (stopped !== undefined) throw new Error('The program was told to stop.');
      yield part;
    }
  })();
}
