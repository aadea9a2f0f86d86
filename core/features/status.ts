import type { Analysis } from '../analysis/analysis.ts';
import { percent } from '../text/figures.ts';
import { makesWords, shortTotals } from './formula-words.ts';

/** Hydration and weight of a formula in a few words, and in a sentence; undefined while they are not known. */
export function statusOf(
  analysis: Analysis,
): { readonly formula: string; readonly text: string; readonly tooltip: string } | undefined {
  const totals = shortTotals(analysis);
  const { solved } = analysis;
  if (solved === undefined || totals === undefined) return undefined;
  const formula = analysis.resolved.model.name.text;
  const effective =
    solved.effectiveHydration === undefined
      ? ''
      : `, effective hydration ${percent(solved.effectiveHydration)}`;
  return {
    formula,
    text: totals.replace(' hydration', ''),
    tooltip: `${formula}: ${totals}${effective}. ${makesWords(solved).join(', ')}`,
  };
}
