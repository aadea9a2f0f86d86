import type { Analysis } from '../analysis/analysis.ts';
import { totalsOf } from '../facts/totals-of.ts';
import { trialFactsOf } from '../facts/trial-facts.ts';
import { figureAt } from '../history/figure-at.ts';
import {
  type FormulaFigures,
  type FormulaMoment,
  figuresOf,
  type TrialPoint,
  trialPoints,
} from '../history/formula-figures.ts';
import { foldName } from '../text/names.ts';
import type { View } from './snapshot-view.ts';

/** What was worked out of an analysis; the same one is answered for every revision that changed nothing of it. */
const kept = new WeakMap<
  Analysis,
  { readonly figures: FormulaFigures; readonly trials: readonly TrialPoint[] }
>();

/** Which figure of which formula a line of a file is about; `undefined` where it is about none. */
export function figureIn(
  view: View,
  uri: string,
  line: number,
): { readonly formula: string; readonly figure: string } | undefined {
  const at = view.read(uri)?.source.blocks.findLast(({ firstLine }) => firstLine <= line);
  const analysis = at === undefined ? undefined : view.analysisOf(uri, at.block);
  if (at === undefined || analysis === undefined) return undefined;
  const figure = figureAt(at.block, line - at.firstLine, analysis);
  return figure === undefined ? undefined : { formula: analysis.resolved.model.name.text, figure };
}

/** A formula of a file by its name, at the state of a view; `undefined` where the file has none of it. */
export function momentIn(view: View, uri: string, formula: string, shown: string): FormulaMoment | undefined {
  const found = view.read(uri);
  const folded = foldName(formula);
  for (const { block, firstLine } of found?.source.blocks ?? []) {
    const name = block.top?.kind === 'formula' ? block.top.header.name : undefined;
    if (name?.folded !== folded) continue;
    const analysis = view.analysisOf(uri, block);
    if (analysis === undefined) return undefined;
    let worked = kept.get(analysis);
    if (worked === undefined) {
      worked = {
        figures: figuresOf(totalsOf(shown, analysis, [], firstLine)),
        trials: trialPoints(trialFactsOf(analysis, view.scopeOf(uri))),
      };
      kept.set(analysis, worked);
    }
    const merging = analysis.resolved.unfinishedMerge === true ? { unfinishedMerge: true as const } : {};
    return { file: shown, formula: name.text, line: firstLine, ...worked, ...merging };
  }
  return undefined;
}
