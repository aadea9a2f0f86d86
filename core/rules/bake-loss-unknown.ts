import { lineBelowFix } from './fixes.ts';
import { ownProblems, propertyPlace } from './places.ts';
import type { Rule } from './rule.ts';

export const bakeLossUnknown: Rule = {
  code: 'bake-loss-unknown',
  level: 'error',
  title: 'A baked weight, and no bake loss',
  explanation:
    'To divide for a baked weight one must know what the oven takes. Weigh a few loaves before and after and write `bake loss`: about 9% for large loaves in ' +
    'tins to 15% and more for small hearth loaves (common practice).',
  bad: 'formula Quay Tin:\n  yield 24 pieces of 800 g baked\n  bread flour  100%\n  water  65%\n',
  good: 'formula Quay Tin:\n  yield 24 pieces of 800 g baked\n  bake loss 11%\n  bread flour  100%\n  water  65%\n',
  *check(context) {
    for (const _problem of ownProblems(context.analysis, 'bake-loss-unknown')) {
      const place = propertyPlace(context, 'yield');
      yield {
        ...place,
        message:
          'The yield is a baked weight, and how much the oven takes is not said. Write a bake loss, better one you have weighed.',
        fixes: [
          lineBelowFix(
            'Write bake loss 12% (common practice; weigh yours)',
            context.block,
            place.line,
            '  bake loss 12%',
          ),
        ],
      };
    }
  },
};
