import type { IToken } from 'chevrotain';
import { nameBetween } from './name-reading.ts';
import { endOf, quantityOf } from './tokens.ts';
import type { Name, RunPart, Value } from './tree.ts';

/** What stands between two commas of a dough line: words, and a time behind them. */
export interface DoughPart {
  readonly words: Name;
  readonly time: IToken | undefined;
}

type TestedDough = Extract<Value, { form: 'testedDough' }>;

/** Reads the parts of a dough line: `in MIXER`, `by hand`, `speed 1 for 60 min`, `knead 12 min`; the first that is none of them is told. */
export function testedDoughOf(line: string, name: Name, parts: readonly DoughPart[]): Value {
  let where: Pick<TestedDough, 'mixer' | 'byHand'> = {};
  const run: RunPart[] = [];
  let unread: Name | undefined;
  for (const { words, time } of parts) {
    const text = line.slice(words.start, words.end);
    const worked = time === undefined ? undefined : runPart(words, time);
    if (worked !== undefined) run.push(worked);
    else if (time === undefined && words.folded === 'by hand') where = { byHand: true };
    else if (time === undefined && /^in\s+\S/i.test(text)) {
      const start = words.start + /^in\s+/i.exec(text)![0].length;
      where = { mixer: nameBetween(line, start, words.end) };
    } else unread ??= words;
  }
  return { form: 'testedDough', name, ...where, run, ...(unread === undefined ? {} : { unread }) };
}

function runPart(words: Name, time: IToken): RunPart | undefined {
  const quantity = quantityOf(time);
  if (quantity?.kind !== 'duration') return undefined;
  const span = { start: words.start, end: endOf(time), seconds: quantity.seconds };
  const speed = /^speed (\d+)(?: for)?$/.exec(words.folded);
  if (speed !== null) return { ...span, kind: 'speed', number: Number(speed[1]) };
  const kind = /^(knead|fold|stir|rest)(?: for)?$/.exec(words.folded)?.[1];
  return kind === undefined ? undefined : { ...span, kind: kind as 'knead' | 'fold' | 'stir' | 'rest' };
}
