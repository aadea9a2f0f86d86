import { lineId } from '../../model/formula-model.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { amountPlace } from '../engine/rule-places.ts';

export const noDensity: Rule = {
  code: 'no-density',
  level: 'error',
  title: 'A volume of something whose density is not known',
  explanation:
    'A volume is turned into a weight by the density, and for this ingredient none is known. Weigh it and write the weight, or ' +
    'define the ingredient with its `density`, in g/ml.',
  bad: 'ingredient toffee:\n  water 20%\n\nformula Quay Tin:\n  bread flour  1 kg\n  water  640 g\n  toffee  20 ml\n',
  good: 'ingredient toffee:\n  water 20%\n  density 1.4 g/ml\n\nformula Quay Tin:\n  bread flour  1 kg\n  water  640 g\n  toffee  20 ml\n',
  *check(context) {
    for (const problem of context.analysis?.resolved.problems ?? []) {
      if (problem.kind !== 'no-density') continue;
      const { line, span } = amountPlace(context, lineId(problem.line));
      const said = message('no-density.unknown', { name: problem.name.text, example: 'density 1.03 g/ml' });
      yield { line, span, message: said };
    }
  },
};
