import {
  foldName,
  type Message,
  message,
  mostOverlaid,
  type OverlaidFormula,
  overlayPage,
} from '../../core/index.ts';
import type { ExitCode } from './exit-code.ts';
import { type Input, readInput } from './input.ts';
import type { OverlayOutput } from './json-outputs.ts';
import { writtenPages } from './page-formats.ts';
import { say } from './speaker.ts';
import { complain } from './terminal.ts';
import { type FileFormat, formatOf, isData, isTable, writeOut } from './write-out.ts';

export interface OverlayOptions {
  readonly formula?: readonly string[];
  /** A revision of git that each formula is laid over. */
  readonly revision?: string;
  readonly format?: FileFormat | 'text';
  readonly out?: string;
}

/** Lays formulas over each other: 0, 1 where one of them has no curve, 2 when they could not be read. */
export async function overlay(path: string, options: OverlayOptions): Promise<ExitCode> {
  const { revision } = options;
  const format = formatOf(options) ?? 'text';
  const forPrograms = isTable(formatOf(options));
  const input = await readInput([path], { forPrograms });
  if (input.failed) return 2;
  const found = chosen(input, options.formula);
  if ('code' in found) return refused(path, found);
  const before = revision === undefined ? undefined : await readInput([path], { forPrograms, at: revision });
  if (before?.failed) return 2;
  const laid: OverlaidFormula[] = [];
  for (const { uri, name } of found) {
    const now = input.service.overlaid(uri, name);
    if (now !== undefined) laid.push(now);
    if (before === undefined || revision === undefined) continue;
    const then = before.service.overlaid(uri, name, { revision });
    if (then === undefined) return refused(path, message('overlay.not-there', { name, revision }));
    laid.push(then);
  }
  if (laid.length < 2) return refused(path, message('overlay.too-few'));
  if (laid.length > mostOverlaid)
    return refused(path, message('overlay.too-many', { count: laid.length, number: mostOverlaid }));
  const shown = laid.map((one) => ({ ...one, uri: input.shown(one.uri), line: one.line + 1 }));
  const text =
    format === 'json' ? asJson(shown) : writtenPages([overlayPage(shown, input.service.speaker())], format);
  if (!(await writeOut(text, options.out, { isData: isData(format) }))) return 2;
  return laid.every(({ reason }) => reason === undefined) ? 0 : 1;
}

function refused(path: string, why: Message): ExitCode {
  complain(path, say(why));
  return 2;
}

/** The formulas in the order in which they are named, else all there are; or which name is not there. */
function chosen(
  { asked, service }: Input,
  names: readonly string[] | undefined,
): readonly { readonly uri: string; readonly name: string }[] | Message {
  const all = asked.flatMap(({ uri }) =>
    service
      .symbols(uri)
      .filter(({ kind }) => kind === 'formula')
      .map(({ name }) => ({ uri, name })),
  );
  if (all.length === 0) return message('command-files.no-formula');
  const wanted = names?.map((name) => all.find((one) => foldName(one.name) === foldName(name)) ?? name);
  const missing = wanted?.find((one) => typeof one === 'string');
  if (missing !== undefined)
    return message('command-files.no-formula-named', { name: missing, names: all.map(({ name }) => name) });
  return wanted?.filter((one) => typeof one !== 'string') ?? all;
}

function asJson(laid: readonly OverlaidFormula[]): string {
  const told: OverlayOutput = laid.map(({ uri, ...rest }) => ({ file: uri, ...rest }));
  return `${JSON.stringify(told, null, 2)}\n`;
}
