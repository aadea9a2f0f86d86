import type { Analysis } from '../../analysis/analysis.ts';
import type { YieldInput } from '../../calc/formula/formula-input.ts';
import type { FormulaModel } from '../../model/formula-model.ts';
import { propertiesOf } from '../../model/properties.ts';
import type { Definition, Scope } from '../../model/scope.ts';
import { ownEdits } from '../../rules/engine/variant-edits.ts';
import { programmeEdits, trialsToKeep } from '../../rules/trials/kept-programme.ts';
import { wordFor } from '../../syntax/bread-words.ts';
import type { Amount } from '../../syntax/tree.ts';
import type { TextEdit } from '../../text/edits.ts';
import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import type { Refusal } from '../../words/refusal.ts';
import { type Sized, sized } from './batch-size.ts';
import { underToday } from './day-conditions.ts';
import type { SheetOptions, TodayConditions } from './sheet-options.ts';

/** An edit of one file; lines counted in the file, breaks written as `\n`. */
export interface KeepEdit extends TextEdit {
  readonly uri: string;
}

/**
 * The edits that write what was tried on a sheet into the files: the size into the formula's yield (or, where grams of
 * flour give the scale, into every weight), the mixer into the head of the mixing, the day's temperatures and the scale
 * step into the bakery. Clock times have no place in a formula; a plan holds those.
 * `written` is the formula as its file has it, where `analysis` is of it with some of what was tried already in: its trials keep what they ran.
 *
 * @returns what of it cannot be written, if there is any, and then nothing is to be
 */
export function applyOptions(
  uri: string,
  firstLine: number,
  analysis: Analysis,
  scope: Scope,
  asked: SheetOptions,
  written: Analysis = analysis,
): readonly KeepEdit[] | Refusal {
  const today = asked.today ?? {};
  const under = underToday(analysis, today, scope);
  const made = sized(under.analysis, asked.size ?? { by: 'file' });
  const refused = [...under.notDone, ...(made.notDone === undefined ? [] : [made.notDone])];
  if (refused.length > 0) return { refused: message('paragraph.of', { parts: refused }) };
  const own = ownEdits(analysis.resolved.model.block, [
    ...(made.analysis === under.analysis ? [] : sizeEdits(analysis, made)),
    ...(today.mixer === undefined ? [] : mixerEdits(analysis, today.mixer, scope, written)),
  ]);
  if (own === undefined) return { refused: message('asked.not-in-variant') };
  const inFormula = own.map((edit): KeepEdit => ({ ...edit, uri, line: edit.line + firstLine }));
  const edits = [...inFormula, ...bakeryEdits(uri, firstLine, analysis, today)];
  return edits.length === 0 ? { refused: message('asked.stands-already') } : edits;
}

function sizeEdits(analysis: Analysis, { analysis: made, asked }: Sized): TextEdit[] {
  const { model } = analysis.resolved;
  const said = model.said.get('yield')?.[0];
  const wanted = inPieces(analysis, made) ?? (made.resolved.input.yield && asked);
  const factor = (made.solved?.flourGrams ?? Number.NaN) / (analysis.solved?.flourGrams ?? Number.NaN);
  const weights = Number.isFinite(factor) ? weightEdits(model, factor) : [];
  if (wanted === undefined) return weights;
  // Beside a yield stand weights too, such as what is kept back: they grow with it, as they did on the sheet.
  if (said !== undefined) {
    const { start, end } = said.statement.valueSpan;
    const insert = `${start === end ? ' ' : ''}${yieldText(wanted, countWord(model, said.line))}`;
    return [{ line: said.line, start, end, insert }, ...weights];
  }
  const at = model.block.lines[0]!.text.length;
  return [{ line: 0, start: at, end: at, insert: `\n  yield ${yieldText(wanted)}` }, ...weights];
}

/** Every amount that is not a share of anything, so many times as large. */
function weightEdits(model: FormulaModel, factor: number): TextEdit[] {
  return model.sections.flatMap((section) => [
    ...section.lines.flatMap(({ line, statement: { amount } }) => {
      const insert = amountText(amount, factor);
      return insert === undefined ? [] : [{ line, start: amount.start, end: amount.end, insert }];
    }),
    ...(section.said.get('keep back') ?? []).flatMap(({ line, statement: { value, valueSpan } }) =>
      value?.form === 'mass' ? [{ line, ...valueSpan, insert: massText(value.grams * factor) }] : [],
    ),
  ]);
}

function amountText(amount: Amount, factor: number): string | undefined {
  if ('aPiece' in amount && amount.aPiece === true) return undefined;
  switch (amount.kind) {
    case 'mass':
      return massText(amount.grams * factor);
    case 'volume':
      if (amount.cups !== undefined) return `${trimmed(amount.cups * factor, 3)} cups`;
      return `${trimmed(amount.millilitres * factor, 2)} ml`;
    case 'count':
      return `${trimmed(amount.count * factor, 3)} pieces`;
    default:
      return undefined;
  }
}

/**
 * The yield in the file's own pieces, where the size makes whole ones of them, or where something is weighed by the piece: without
 * pieces there would be none of it.
 */
function inPieces(analysis: Analysis, made: Analysis): YieldInput | undefined {
  const now = analysis.resolved.input.yield;
  const [before, after] = [analysis.solved?.flourGrams, made.solved?.flourGrams];
  if (now?.kind !== 'pieces' || before === undefined || after === undefined) return undefined;
  const count = (now.count * after) / before;
  if (Math.abs(count - Math.round(count)) < 1e-6) return { ...now, count: Math.round(count) };
  const byThePiece = analysis.resolved.model.sections.some(({ lines }) =>
    lines.some(({ statement: { amount } }) => 'aPiece' in amount && amount.aPiece === true),
  );
  return byThePiece ? { ...now, count } : undefined;
}

/** What a yield counts in, as the baker wrote it. */
function countWord({ block }: FormulaModel, line: number): string | undefined {
  return block.lines[line]?.tokens.find(({ quantity }) => quantity?.kind === 'count')?.quantity?.unit;
}

function yieldText(made: YieldInput, word = 'pieces'): string {
  switch (made.kind) {
    case 'pieces': {
      const count = trimmed(made.count, made.count < 10 ? 6 : 4);
      const each = made.pieceGrams === undefined ? '' : ` of ${massText(made.pieceGrams)}`;
      return `${count} ${wordFor(made.count, word)}${each}${made.baked ? ' baked' : ''}`;
    }
    case 'dough':
      return massText(made.grams);
    case 'baked':
      return `${massText(made.grams)} baked`;
    case 'flour':
      return `from ${massText(made.grams)} flour`;
  }
}

/** A mass as a baker writes it into a formula: no figure is left out that a scale of a tenth of a gram would show. */
export function massText(grams: number): string {
  return grams >= 1000 ? `${trimmed(grams / 1000, 5)} kg` : `${trimmed(grams, grams < 10 ? 4 : 2)} g`;
}

/** The dough's own mix is the one that names no part. Trials that do not say what they ran keep the mixer as it was. */
function mixerEdits(analysis: Analysis, mixer: string, scope: Scope, written: Analysis): TextEdit[] {
  const { model } = analysis.resolved;
  const mix = model.mixes.find(({ header }) => header.part === undefined);
  if (mix === undefined) return [];
  const { header, headerLine } = mix;
  const words = /^mix(\s+by\s+hand|\s+in)?/i.exec(
    model.block.lines[headerLine]!.text.slice(header.keyword.start),
  );
  const end = header.mixer?.end ?? header.keyword.start + (words?.[0].length ?? 0);
  const insert = mixer === 'by hand' ? 'mix by hand' : `mix in ${quoted(mixer)}`;
  return [
    { line: headerLine, start: header.keyword.start, end, insert },
    ...programmeEdits(written, trialsToKeep(written, scope)),
  ];
}

function quoted(name: string): string {
  return /^[\p{L}\p{M}\d][\p{L}\p{M}\d'’ -]*$/u.test(name) ? name : `"${name.replaceAll('"', '')}"`;
}

function bakeryEdits(uri: string, firstLine: number, analysis: Analysis, today: TodayConditions): KeepEdit[] {
  const lines = (
    [
      ['room', today.roomCelsius, '°C'],
      ['flour', today.flourCelsius, '°C'],
      ['tap water', today.tapCelsius, '°C'],
      ['scale step', today.scaleStepGrams, 'g'],
    ] as const
  ).flatMap(([word, figure, unit]) =>
    figure === undefined ? [] : [{ word, value: `${trimmed(figure, 2)} ${unit}` }],
  );
  if (lines.length === 0) return [];
  const { definition } = analysis.resolved.bakery;
  if (definition !== undefined) return lines.map(({ word, value }) => bakeryEdit(definition, word, value));
  const text = lines.map(({ word, value }) => `  ${word} ${value}\n`).join('');
  return [{ uri, line: firstLine, start: 0, end: 0, insert: `bakery Our Bakery:\n${text}\n` }];
}

function bakeryEdit({ uri, firstLine, block }: Definition, word: string, value: string): KeepEdit {
  const top = block.top!;
  const said = propertiesOf(block, top).get(word)?.[0];
  if (said === undefined) {
    const at = block.lines[top.headerLine]!.text.length;
    return { uri, line: firstLine + top.headerLine, start: at, end: at, insert: `\n  ${word} ${value}` };
  }
  const { start, end } = said.statement.valueSpan;
  const gap = start === said.statement.keyword.end ? ' ' : '';
  return { uri, line: firstLine + said.line, start, end, insert: `${gap}${value}` };
}
