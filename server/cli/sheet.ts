import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  type AskedWords,
  askedFromWords,
  type FiledSheet,
  foldName,
  type MapAxis,
  type Message,
  message,
  type SheetDocument,
  writeSheets,
} from '../../core/index.ts';
import { stateAt, stateOf } from '../host/git-state.ts';
import type { ExitCode } from './exit-code.ts';
import { readInput } from './input.ts';
import { say } from './speaker.ts';
import { complain } from './terminal.ts';
import { type FileFormat, formatOf, isData, isTable, writeOut } from './write-out.ts';

export interface SheetOptions extends AskedWords {
  readonly formula?: string;
  /** Shows the map of the gap too. */
  readonly map?: MapAxis;
  /** A revision of git to read the formulas from. */
  readonly at?: string;
  readonly format?: FileFormat | 'text';
  readonly out?: string;
}

/**
 * Writes the batch sheets of a file or folder: 0, 1 where a formula does not resolve or could not be made as asked for,
 * 2 when nothing could be written.
 */
export async function sheet(path: string, options: SheetOptions): Promise<ExitCode> {
  const read = askedFromWords(options);
  if ('cure' in read) {
    complain(`${optionName(read.word)} ${options[read.word]}`, say(read.cure));
    return 2;
  }
  const asked = { ...read.asked, ...(options.map === undefined ? {} : { map: { against: options.map } }) };
  const input = await readInput([path], {
    forPrograms: isTable(formatOf(options)),
    at: options.at,
  });
  const all = input.asked.flatMap(({ uri }) =>
    input.service
      .symbols(uri)
      .filter(({ kind }) => kind === 'formula')
      .flatMap(({ place }) => input.service.sheet(uri, place.line, asked) ?? []),
  );
  const wanted = options.formula === undefined ? undefined : foldName(options.formula);
  const views = all.filter(({ formula }) => wanted === undefined || foldName(formula) === wanted);
  if (views.length === 0) {
    if (!input.failed) complain(path, say(missing(all, options.formula)));
    return 2;
  }
  const date = today();
  const states = new Map<string, ReturnType<typeof stateOf>>();
  const sheets: FiledSheet[] = [];
  for (const view of views) {
    const folder = dirname(fileURLToPath(view.uri));
    if (!states.has(folder))
      states.set(folder, options.at === undefined ? stateOf(folder) : stateAt(path, options.at));
    sheets.push({ view, origin: { file: input.shown(view.uri), ...(await states.get(folder)), date } });
  }
  const format = formatOf(options);
  const text = writeSheets(sheets, format ?? 'text', input.service.speaker());
  if (!(await writeOut(text, options.out, { isData: isData(format) }))) return 2;
  const troubled = sheets.filter(tellTrouble).length;
  if (input.failed) return 2;
  return troubled === 0 ? 0 : 1;
}

/** Tells what keeps a sheet from being what it should be; answers whether anything does. */
function tellTrouble({ view, origin }: FiledSheet): boolean {
  const tell = (line: number, words: string): void =>
    complain(`${origin.file}:${line + 1}`, view.formula, words);
  for (const words of view.notDone) tell(view.line, words);
  if (view.heldBy !== undefined) tell(view.heldBy.line, view.heldBy.message);
  if (view.state === 'empty') tell(view.line, say(message('command-files.nothing-to-weigh')));
  return view.notDone.length > 0 || view.state !== 'ready';
}

function missing(there: readonly SheetDocument[], name: string | undefined): Message {
  if (name === undefined || there.length === 0) return message('command-files.no-formula');
  return message('command-files.no-formula-named', { name, names: there.map(({ formula }) => formula) });
}

function optionName(word: keyof AskedWords): string {
  return `--${word.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
}

/** The day by the clock of this machine: `2026-03-14`. */
function today(): string {
  const now = new Date();
  const two = (figure: number): string => String(figure).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
