import { analyseResolved } from '../../analysis/analyse.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import { scaledMixes, scaledSections } from '../../analysis/scale-analysis.ts';
import type { FormulaInput, YieldInput } from '../../calc/formula/formula-input.ts';
import { bowlBatches, type ScaleTarget, scaleTo } from '../../calc/formula/scaling.ts';
import { foldName } from '../../text/names.ts';
import { type Message, message } from '../../words/message.ts';
import type { SizeRequest } from './sheet-options.ts';

/** A formula at the size asked for, or as it was and why not. */
export interface Sized {
  readonly analysis: Analysis;
  /** The yield in the terms it was asked for; the analysis keeps to the file's pieces where it has some. */
  readonly asked?: YieldInput;
  readonly notDone?: Message;
}

/**
 * The formula at the size asked for: the same percentages, every weight in the file grown by one factor. Gives the
 * analysis back as it is where the file's own size is asked for or the size cannot be reached.
 */
export function sized(analysis: Analysis, size: SizeRequest): Sized {
  if (size.by === 'file') return { analysis };
  const { solved } = analysis;
  const target = targetOf(analysis, size);
  if (solved === undefined || target === undefined) return { analysis, notDone: whyNot(size) };
  const scaled = scaleTo(solved, target);
  if (!scaled.ok) return { analysis, notDone: whyNot(size) };
  const made = inPieces(analysis, scaled.factor) ?? scaled.yield;
  return { analysis: grown(analysis, scaled.factor, made), asked: scaled.yield };
}

/** The file's own pieces, more or fewer of them: 30 kg of dough are still so many pieces of 620 g. */
function inPieces({ resolved }: Analysis, factor: number): YieldInput | undefined {
  const now = resolved.input.yield;
  return now?.kind === 'pieces' ? { ...now, count: now.count * factor } : undefined;
}

/**
 * The dough in equal batches, none above the bowl's most nor below its least: how many, and one of them. One batch
 * where nobody says what the bowl takes, where it all fits, and where no number of equal batches does.
 */
export function inBatches(analysis: Analysis): {
  readonly count: number;
  readonly each: Analysis;
  readonly fits: boolean;
} {
  const { solved, doughMix } = analysis;
  const whole = { count: 1, each: analysis, fits: true };
  if (solved?.doughGrams === undefined || solved.assumedScale || !doughMix.known) return whole;
  const { mostGrams, leastGrams } = doughMix.value.mixer;
  if (mostGrams === undefined) return whole;
  const parted = bowlBatches(solved.doughGrams, { mostGrams, leastGrams: leastGrams ?? 0 });
  if (!parted.ok) return { ...whole, fits: false };
  if (parted.batches === 1) return whole;
  const { pieces, yieldDoughGrams } = solved;
  const target: ScaleTarget =
    pieces === undefined
      ? { kind: 'dough', grams: (yieldDoughGrams ?? 0) / parted.batches }
      : { kind: 'pieces', count: pieces / parted.batches };
  const scaled = scaleTo(solved, target);
  if (!scaled.ok) return { ...whole, fits: false };
  return { count: parted.batches, each: grown(analysis, scaled.factor, scaled.yield), fits: true };
}

function targetOf(analysis: Analysis, size: SizeRequest): ScaleTarget | undefined {
  switch (size.by) {
    case 'file':
      return undefined;
    case 'pieces':
      return { kind: 'pieces', count: size.pieces };
    case 'dough':
      return { kind: 'dough', grams: size.grams };
    case 'baked':
      return { kind: 'baked', grams: size.grams };
    case 'flour':
      return { kind: 'flour', grams: size.grams };
    case 'bowl':
      return bowlTarget(analysis, size.batches);
    case 'onHand': {
      const folded = foldName(size.ingredient);
      const { overall, sections } = analysis.solved ?? { overall: [], sections: [] };
      const isMeant = (one: { readonly name: string }): boolean => foldName(one.name) === folded;
      const key = overall.find(isMeant)?.key ?? sections.slice(1).find(isMeant)?.id;
      if (key !== undefined) return { kind: 'ingredient', key, grams: size.grams };
      return folded === 'flour' ? { kind: 'flour', grams: size.grams } : undefined;
    }
  }
}

/** The dough that reaches the divider out of so many full bowls. */
function bowlTarget({ solved, doughMix }: Analysis, batches: number): ScaleTarget | undefined {
  const most = doughMix.known ? doughMix.value.mixer.mostGrams : undefined;
  if (most === undefined || solved?.doughGrams === undefined || solved.yieldDoughGrams === undefined)
    return undefined;
  return { kind: 'dough', grams: (batches * most * solved.yieldDoughGrams) / solved.doughGrams };
}

function whyNot(size: Exclude<SizeRequest, { by: 'file' }>): Message {
  switch (size.by) {
    case 'pieces':
      return message('asked.not-in-pieces');
    case 'dough':
    case 'flour':
      return message('asked.not-every-weight');
    case 'baked':
      return message('asked.not-baked');
    case 'bowl':
      return message('asked.not-by-bowl');
    case 'onHand':
      return message('asked.not-on-hand', { name: size.ingredient });
  }
}

function grown(
  { resolved, solved }: Analysis,
  factor: number,
  made: NonNullable<FormulaInput['yield']>,
): Analysis {
  const assumed = solved?.assumedScale === true;
  return analyseResolved({
    ...resolved,
    mixes: scaledMixes(resolved, factor),
    input: scaledInput(resolved.input, factor, assumed, made),
  });
}

function scaledInput(
  input: FormulaInput,
  factor: number,
  assumed: boolean,
  made: NonNullable<FormulaInput['yield']>,
): FormulaInput {
  const sections = scaledSections(input, factor);
  // A formula whose flour is written in grams has its scale from there; a yield beside it would be a second one.
  const usesYield = assumed || input.yield !== undefined;
  const { yield: _before, ...rest } = input;
  return usesYield ? { ...rest, sections, yield: made } : { ...rest, sections };
}
