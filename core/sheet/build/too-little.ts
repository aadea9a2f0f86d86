import { contentsOf } from '../../calc/formula/contents.ts';
import type { FinalMixLine, SolvedFormula } from '../../calc/formula/formula-result.ts';
import { leastWeighedGrams } from '../../text/figures.ts';
import { type Message, message } from '../../words/message.ts';
import type { Weight } from './sheet-rows.ts';

/** Whether a weight is a line of the sheet: known, and no less than anybody weighs; or not known yet, which is told. */
export function isWeighed({ grams }: Pick<Weight, 'grams'>): boolean {
  return grams === undefined || grams >= leastWeighedGrams;
}

/** Whether drawn parts bring so much of a line of the final mix that nothing of it is left to weigh. */
export function isDrawnWhole({ kind, grams, drawnGrams }: FinalMixLine): boolean {
  return kind === 'ingredient' && !isWeighed({ grams }) && (drawnGrams ?? 0) >= leastWeighedGrams;
}

/** `all of the fresh yeast is in the sponge`, for each line of which nothing is left for the bowl. */
export function elsewhere(solved: SolvedFormula): Message[] {
  const parts = solved.sections.slice(1).filter((section) => section.inBowl);
  return solved.finalMix.lines.filter(isDrawnWhole).map(({ key, name }) => {
    const holding = parts.filter((part) => contentsOf(solved, part)?.some((one) => one.key === key));
    return holding.length === 0
      ? message('sheet.elsewhere-parts', { name })
      : message('sheet.elsewhere', { name, names: holding.map((part) => part.name) });
  });
}

/** What is in the formula and too little to weigh, told so that nobody takes it for forgotten. */
export function tooLittle(weights: readonly Weight[]): Message[] {
  return weights.flatMap((weight) => {
    const { name, grams = 0 } = weight;
    return !isWeighed(weight) && grams > hair ? [message('sheet.too-little', { name, grams })] : [];
  });
}

/** Grams that only the rounding of sums leaves. */
const hair = 1e-6;
