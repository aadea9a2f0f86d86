import { usualBakeLoss } from '../../calc/product/bake-loss.ts';
import { saidValue } from '../../model/properties.ts';
import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import { lineBelowFix } from '../engine/fixes.ts';
import { formulaOf, type Rule, type RuleContext } from '../engine/rule.ts';
import { ownProblems, propertyPlace } from '../engine/rule-places.ts';

export const bakeLossUnknown: Rule = {
  code: 'bake-loss-unknown',
  level: 'error',
  title: 'A baked weight, and no bake loss',
  explanation:
    'To divide for a baked weight one must know what the oven takes. Weigh a few loaves before and after and write `bake loss`: about 9% for large loaves in ' +
    'tins to 15% and more for small hearth loaves (common practice). The fix writes what is usual for the weight of a piece and its `form`, tin or hearth.',
  bad: 'formula Quay Tin:\n  yield 24 pieces of 800 g baked\n  bread flour  100%\n  water  65%\n',
  good: 'formula Quay Tin:\n  yield 24 pieces of 800 g baked\n  bake loss 11%\n  bread flour  100%\n  water  65%\n',
  *check(context) {
    // A bake loss that stands there and cannot be is told on its own line.
    if (propertyPlace(context, 'bake loss').line > 0) return;
    for (const _problem of ownProblems(context.analysis, 'bake-loss-unknown')) {
      const place = propertyPlace(context, 'yield');
      const usual = `bake loss ${usualPercent(context)}`;
      yield {
        ...place,
        message: message('bake-loss-unknown.not-stated'),
        fixes: [
          lineBelowFix(
            message('bake-loss-unknown.fix', { meant: usual }),
            context.block,
            place.line,
            `  ${usual}`,
          ),
        ],
      };
    }
  },
};

/** What a loaf of a kilogram loses is taken where no piece is said. */
const usualPieceGrams = 1000;

function usualPercent(context: RuleContext): string {
  const { input, model } = formulaOf(context).resolved;
  const made = input.yield;
  const baked = made?.kind === 'pieces' && made.baked ? made.pieceGrams : undefined;
  const form = saidValue(model.said, 'form', 'word')?.word === 'tin' ? 'tin' : 'hearth';
  // The table is by the weight of the dough, which is not far from the baked weight.
  const dough = baked === undefined ? usualPieceGrams : baked / (1 - usualBakeLoss(baked, form));
  return `${trimmed(Math.round(usualBakeLoss(dough, form) * 200) / 2, 1)}%`;
}
