import { type Analysis, solutionOf } from '../../analysis/analysis.ts';
import { asFreshYeast } from '../../calc/fermentation/yeast.ts';
import type { SolvedLine, SolvedSection } from '../../calc/formula/formula-result.ts';
import type { Ingredient } from '../../model/found-ingredient.ts';
import { saidValue } from '../../model/properties.ts';
import { message } from '../../words/message.ts';
import { canBeJudged, heaviestPlace, tenthFix } from '../engine/ranges.ts';
import type { Rule, RuleContext } from '../engine/rule.ts';

/** As fresh yeast, of flour; common practice, no source. */
const mostLean = 0.05;
const mostSweet = 0.08;
const sweetFrom = 0.08;
const mostOvernight = 0.01;
const overnightSeconds = 8 * 3600;
const coldCelsius = 12;

export const yeastRange: Rule = {
  code: 'yeast-range',
  level: 'warning',
  title: 'More yeast than is usual',
  explanation:
    'Counted as fresh yeast (1 : 0.4 : 0.33 for fresh, active dry and instant) a lean dough has up to 5% of flour, a sweet one up to 8%; a ' +
    'preferment that stands eight hours or more at room temperature up to 1%. All of it is common practice. Most often the decimal point has slipped.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n  fresh yeast  15%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n  fresh yeast  1.5%\n',
  *check(context) {
    const { analysis } = context;
    if (analysis?.solved === undefined || !canBeJudged(analysis)) return;
    const { overall, fractionByRole } = analysis.solved;
    const fresh = overall.reduce(
      (sum, line) => sum + (line.fraction ?? 0) * asFresh(analysis.resolved.ingredients.get(line.key)),
      0,
    );
    const isSweet = (fractionByRole.sugar ?? 0) >= sweetFrom;
    const most = isSweet ? mostSweet : mostLean;
    if (fresh > most + 1e-9) {
      const { line, span, solved } = heaviestPlace(context, 'yeast', mostYeastAt(analysis));
      yield {
        line,
        span,
        message: message(isSweet ? 'yeast-range.sweet' : 'yeast-range.lean', {
          fraction: fresh,
          usualFraction: most,
        }),
        fixes: tenthFix(context, solved, 0.001, 0.03, slipOf(analysis, solved, fresh, most)),
      };
      return;
    }
    yield* overnight(context, analysis);
  },
};

function* overnight(context: RuleContext, analysis: Analysis) {
  for (const [index, section] of solutionOf(analysis).sections.entries()) {
    const model = analysis.resolved.model.sections.find((one) => one.id === section.id);
    const { flourGrams } = section;
    if (section.kind !== 'preferment' || model === undefined || flourGrams === undefined || !(flourGrams > 0))
      continue;
    const ferment = saidValue(model.said, 'ferment', 'duration');
    if (
      ferment === undefined ||
      ferment.seconds < overnightSeconds ||
      (ferment.celsius ?? coldCelsius) < coldCelsius
    )
      continue;
    const fresh = freshGrams(analysis, section) / flourGrams;
    if (fresh <= mostOvernight + 1e-9) continue;
    const { line, span, solved } = heaviestPlace(context, 'yeast', index);
    yield {
      line,
      span,
      message: message('yeast-range.overnight', {
        fraction: fresh,
        part: section.name,
        usualFraction: mostOvernight,
        hours: ferment.seconds / 3600,
      }),
      fixes: tenthFix(context, solved, 0.0002, 0.005),
    };
  }
}

/** By how much a decimal point has slipped, so that what is meant brings the yeast to what is usual: ten or a hundred. */
function slipOf(analysis: Analysis, line: SolvedLine | undefined, fresh: number, most: number): number {
  const { ingredients } = analysis.resolved;
  const { flourGrams = Number.NaN } = solutionOf(analysis);
  const share = ((line?.grams ?? 0) * asFresh(ingredients.get(line?.key ?? ''))) / flourGrams;
  return fresh - 0.9 * share <= most ? 10 : 100;
}

/** The section of this file in which most of the yeast is written, by its place among the sections. */
function mostYeastAt(analysis: Analysis): number {
  const grams = solutionOf(analysis).sections.map((section) =>
    section.id.startsWith('F') ? 0 : freshGrams(analysis, section),
  );
  return grams.indexOf(Math.max(...grams));
}

/** The yeast on the lines of a section, in grams of fresh yeast. */
function freshGrams({ resolved }: Analysis, section: SolvedSection): number {
  return section.lines.reduce(
    (sum, line) => sum + (line.grams ?? 0) * asFresh(resolved.ingredients.get(line.key)),
    0,
  );
}

function asFresh(ingredient: Ingredient | undefined): number {
  return ingredient?.role === 'yeast' ? asFreshYeast(ingredient.name, ingredient.composition.water) : 0;
}
