import { type Analysis, solutionOf } from '../../analysis/analysis.ts';
import { floursOf } from '../../analysis/mix-analysis.ts';
import { blendCurve } from '../../calc/flour/flour.ts';
import { doughOf } from '../../calc/formula/formula-input.ts';
import { eggBeyond } from '../../calc/mixing/bowl-load.ts';
import { message } from '../../words/message.ts';
import { canBeJudged, heaviestPlace, isLeavened } from '../engine/ranges.ts';
import type { RelatedLine, Rule } from '../engine/rule.ts';

/** Points above and below the absorption that are told; our own choice on common practice, no source. */
const wetPoints = { strong: 0.25, weak: 0.18 };
const dryPoints = 0.18;
/** Wider where the protein of the flour had to be assumed. */
const assumedPoints = 0.1;
/** Farinograph stability, minutes, between which the wet limit moves from weak to strong. */
const weakMinutes = 3;
const strongMinutes = 8;
/** Fat and sugar of a pastry: it is short of water on purpose. */
const richFraction = 0.25;

export const hydrationRange: Rule = {
  code: 'hydration-range',
  level: 'warning',
  title: 'More or less water than the flour takes',
  explanation:
    'The water that is free for the flour (that of milk, eggs and butter counted, what soaked seeds hold not) is measured against the absorption of ' +
    'the flours. More than 25 points above it, 18 for weak flour, the dough runs; more than 18 below, it stays dry. Both limits are common practice. ' +
    'Egg, which is poured, counts whole before a dough is called dry. Nothing is said of doughs that are mostly rye, and nothing of dry pastry without yeast or rich in fat and sugar, ' +
    'and nothing of a formula without salt and mix: that is a levain.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  95%\n  salt  2%\n  fresh yeast  1%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  68%\n  salt  2%\n  fresh yeast  1%\n',
  *check(context) {
    const { analysis } = context;
    const solved = analysis?.solved;
    if (
      analysis === undefined ||
      solved?.effectiveHydration === undefined ||
      !canBeJudged(analysis) ||
      !isDough(analysis)
    )
      return;
    const curve = blendCurve(floursOf(analysis.resolved, solved, doughOf(analysis.resolved.input).id));
    if (!curve.known || !curve.value.absorptionAsIs.known) return;
    const held = solved.overall.reduce(
      (sum, line) =>
        sum + (line.fraction ?? 0) * (analysis.resolved.ingredients.get(line.key)?.holdsWater ?? 0),
      0,
    );
    const free = solved.effectiveHydration - held;
    const takes = curve.value.absorptionAsIs.value;
    const more = curve.value.assumed ? assumedPoints : 0;
    const stability = curve.value.stabilityMinutes.known ? curve.value.stabilityMinutes.value : strongMinutes;
    const strength = Math.min(1, Math.max(0, (stability - weakMinutes) / (strongMinutes - weakMinutes)));
    const wettest = takes + wetPoints.weak + (wetPoints.strong - wetPoints.weak) * strength + more;
    const driest = takes - dryPoints - more;
    const { fat = 0, sugar = 0 } = solved.fractionByRole;
    const isBread = isLeavened(analysis) && fat + sugar <= richFraction;
    const tooDry =
      isBread &&
      solved.effectiveHydration > 0 &&
      solved.waterUnknown.length === 0 &&
      free + eggFraction(analysis) < driest;
    if (free <= wettest && !tooDry) return;
    yield {
      ...heaviestPlace(context, 'water'),
      message: message(free > takes ? 'hydration-range.wet' : 'hydration-range.dry', {
        fraction: free,
        heldFraction: held,
        apartFraction: Math.abs(free - takes),
        usualFraction: takes,
      }),
      related: flourDefinitions(analysis),
    };
  },
};

/** What liquid egg softens the dough by beyond its water, of flour: it is poured, and a dough of egg alone is no dry one. */
function eggFraction(analysis: Analysis): number {
  const { ingredients } = analysis.resolved;
  return solutionOf(analysis).overall.reduce((sum, { key, role, fraction = 0 }) => {
    const composition = role === 'egg' ? ingredients.get(key)?.composition : undefined;
    return composition === undefined ? sum : sum + eggBeyond(fraction, composition);
  }, 0);
}

/** A levain or poolish written as a formula of its own is wet or firm on purpose: it has no salt and no mix. */
function isDough({ solved, resolved }: Analysis): boolean {
  return (solved?.saltFraction ?? 0) > 0 || resolved.model.mixes.length > 0;
}

function flourDefinitions({ solved, resolved }: Analysis): RelatedLine[] {
  return (solved?.overall ?? []).flatMap((line): RelatedLine[] => {
    const ingredient = resolved.ingredients.get(line.key);
    if (!line.isFlour || ingredient?.definition === undefined) return [];
    const { absorption } = ingredient.flour ?? {};
    const { name, definition } = ingredient;
    const said =
      absorption === undefined
        ? message('hydration-range.flour', { name })
        : message('hydration-range.flour-absorption', { name, fraction: absorption });
    return [{ definition, message: said }];
  });
}
