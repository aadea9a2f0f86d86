import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';
import { runMixes } from './mixes.ts';

export const bowlTooLittle: Rule = {
  code: 'bowl-too-little',
  level: 'warning',
  title: 'Too little dough for the bowl',
  explanation:
    'The dough is less than the mixer’s section says it picks up. The hook runs past it and mixes little. Make more, or take a smaller mixer.',
  bad: 'mixer big spiral:\n  kind spiral\n  bowl 12 kg to 60 kg\n\nformula Quay Tin:\n  yield 5 kg\n  bread flour  100%\n  water  65%\n\nmix in big spiral:\n  load flour, water\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  good: 'mixer big spiral:\n  kind spiral\n  bowl 12 kg to 60 kg\n\nformula Quay Tin:\n  yield 25 kg\n  bread flour  100%\n  water  65%\n\nmix in big spiral:\n  load flour, water\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  *check({ analysis, block }) {
    if (analysis?.solved?.assumedScale !== false) return;
    for (const { mix, model } of runMixes(analysis)) {
      const { mixer, doughGrams } = mix;
      if (mixer.leastGrams === undefined || doughGrams >= mixer.leastGrams * (1 - 1e-6)) continue;
      yield {
        ...headerPlace(block, model.headerLine),
        message: message('bowl-too-little.less', {
          doughGrams,
          name: mixer.name,
          leastGrams: mixer.leastGrams,
        }),
        related:
          mixer.definition === undefined
            ? []
            : [{ definition: mixer.definition, message: message('mix.bowl') }],
      };
    }
  },
};
