import { dirname, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { message } from '../../core/index.ts';
import { type DoughFile, readBytes } from '../host/disk.ts';
import { largestFileBytes } from '../host/host.ts';
import { canonicalUri } from '../host/uris.ts';
import type { ExitCode } from './exit-code.ts';
import { readSurroundings } from './input.ts';
import { cureOf, shownPath } from './shown-path.ts';
import { say } from './speaker.ts';
import { complain } from './terminal.ts';
import { writeOut } from './write-out.ts';

export interface ImportOptions {
  readonly name?: string;
  readonly out?: string;
  readonly force?: boolean;
}

/**
 * Makes a formula of a table, in a file or on standard input: 0, 1 where something of it wants a look, 2 where none could
 * be made. What was guessed and left out is told on standard error.
 */
export async function importFile(file: string, options: ImportOptions): Promise<ExitCode> {
  const shown = file === '-' ? say(message('command-files.standard-input')) : shownPath(resolve(file));
  const read = file === '-' ? await readStandardInput() : await readTable(file);
  if (read.text === undefined) {
    complain(shown, say(read.why === 'binary' ? message('command-files.binary-table') : cureOf(read.why)));
    return 2;
  }
  const place = resolve(options.out ?? 'imported.dough');
  const service = await readSurroundings(dirname(place));
  const made = service.importTable(canonicalUri(pathToFileURL(place).href), read.text, options.name);
  const look = say(message('command-files.to-look-at'));
  for (const note of made.notes) complain(shown, ...(note.doubtful ? [look] : []), note.message);
  if (made.text === '') return 2;
  if (!(await writeOut(made.text, options.out, { isFormula: true, force: options.force === true }))) return 2;
  return made.notes.some(({ doubtful }) => doubtful) ? 1 : 0;
}

async function readTable(path: string): Promise<DoughFile> {
  const { bytes, why } = await readBytes(path);
  return bytes === undefined ? { why } : textOf(bytes);
}

async function readStandardInput(): Promise<DoughFile> {
  const pieces: Buffer[] = [];
  let size = 0;
  for await (const piece of process.stdin) {
    pieces.push(piece as Buffer);
    size += (piece as Buffer).length;
    if (size > largestFileBytes) return { why: 'too large' };
  }
  return textOf(Buffer.concat(pieces));
}

/** Spreadsheets save text as UTF-8, as UTF-16 with its mark, or in the letters of western Europe of old. */
function textOf(bytes: Buffer): DoughFile {
  const mark = bytes.subarray(0, 2).toString('hex');
  if (mark === 'fffe') return { text: new TextDecoder('utf-16le').decode(bytes) };
  if (mark === 'feff') return { text: new TextDecoder('utf-16be').decode(bytes) };
  if (bytes.subarray(0, 8192).includes(0)) return { why: 'binary' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes) };
  }
}
