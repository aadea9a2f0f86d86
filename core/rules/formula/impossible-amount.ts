import { lineOfId } from '../../model/formula-model.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { ownProblems, placeOf, propertyPlace } from '../engine/rule-places.ts';

const words: Readonly<Record<string, string>> = {
  ripeCulture: 'ripe culture',
  keepBack: 'keep back',
  bakeLoss: 'bake loss',
  cookingLoss: 'cooking loss',
};

const moreSteamThanWater = message('impossible-amount.cooking-loss');
const beyond = message('impossible-amount.beyond');

export const impossibleAmount: Rule = {
  code: 'impossible-amount',
  level: 'error',
  title: 'An amount that cannot be',
  explanation:
    'The number is beyond anything that can be weighed, most likely a slip of the keyboard. It is left out of the sums.',
  bad: 'formula Quay Tin:\n  yield 90000 pieces of 880 g\n  bread flour  100%\n  water  65%\n  salt  90 tonnes a piece\n',
  good: 'formula Quay Tin:\n  yield 10 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n',
  *check(context) {
    const { analysis, block } = context;
    const kinds = ['impossible-amount', 'impossible-yield', 'impossible-loss', 'no-piece-weight'] as const;
    for (const problem of ownProblems(analysis, ...kinds)) {
      const { property, drawId } = problem.values;
      if (drawId !== undefined) {
        yield {
          ...placeOf(block, { sectionId: problem.sectionId, lineId: String(drawId) }),
          message: beyond,
        };
      } else if (problem.lineId !== undefined) yield { ...placeOf(block, problem), message: beyond };
      else {
        const word = property === undefined ? 'yield' : (words[String(property)] ?? String(property));
        const said = property === 'cookingLoss' ? moreSteamThanWater : beyond;
        yield { ...propertyPlace(context, word, lineOfId(problem.sectionId)), message: said };
      }
    }
  },
};
