import { lineOfId } from '../../model/formula-model.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { numberOf, ownProblems, propertyPlace } from '../engine/rule-places.ts';

export const keepsBackTooMuch: Rule = {
  code: 'keeps-back-too-much',
  level: 'error',
  title: 'More is kept back than is made',
  explanation:
    'The part is made by weight and keeps back more than that. Until it is corrected nothing is taken to be kept back.',
  bad: 'formula Quay Tin:\n  bread flour  1 kg\n  water  640 g\n  levain  remaining\n\npreferment levain:\n  bread flour  100 g\n  water  80 g\n  keep back 300 g\n',
  good: 'formula Quay Tin:\n  bread flour  1 kg\n  water  640 g\n  levain  remaining\n\npreferment levain:\n  bread flour  100 g\n  water  80 g\n  keep back 30 g\n',
  *check(context) {
    for (const problem of ownProblems(context.analysis, 'keep-back-exceeds-made')) {
      yield {
        ...propertyPlace(context, 'keep back', lineOfId(problem.sectionId)),
        message: message('keeps-back-too-much.more', {
          name: String(problem.values.name),
          grams: numberOf(problem.values.keepBackGrams) ?? 0,
          otherGrams: numberOf(problem.values.madeGrams) ?? 0,
        }),
      };
    }
  },
};
