import { mass } from '../text/figures.ts';
import { runMixes } from './mixes.ts';
import { headerPlace } from './places.ts';
import type { Rule } from './rule.ts';

export const bowlOverfull: Rule = {
  code: 'bowl-overfull',
  level: 'warning',
  title: 'More dough than the bowl takes',
  explanation:
    'The dough is more than the mixer’s section says the bowl takes. Mix it in equal batches, or in a larger bowl. An overfull bowl mixes ' +
    'unevenly and strains the machine; follow its manual.',
  bad: 'mixer small spiral:\n  kind spiral\n  bowl 2 kg to 12 kg\n\nformula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n\nmix in small spiral:\n  load flour, water\n  speed 1 for 9 min\n  speed 2 for 4 min\n',
  good: 'mixer small spiral:\n  kind spiral\n  bowl 2 kg to 12 kg\n\nformula Quay Tin:\n  yield 10 kg\n  bread flour  100%\n  water  65%\n\nmix in small spiral:\n  load flour, water\n  speed 1 for 9 min\n  speed 2 for 4 min\n',
  *check({ analysis, block }) {
    if (analysis?.solved?.assumedScale !== false) return;
    for (const { mix, model } of runMixes(analysis)) {
      const { mixer, doughGrams } = mix;
      if (
        mixer.mostGrams === undefined ||
        !(mixer.mostGrams > 0) ||
        doughGrams <= mixer.mostGrams * (1 + 1e-6)
      )
        continue;
      const batches = Math.ceil(doughGrams / mixer.mostGrams - 1e-6);
      const each = doughGrams / batches;
      const fits = each >= (mixer.leastGrams ?? 0);
      const cure = fits
        ? `Mix it in ${batches} batches of ${mass(each)}.`
        : 'No number of equal batches fits this bowl.';
      yield {
        ...headerPlace(block, model.headerLine),
        message: `${mass(doughGrams)} of dough, and the bowl of “${mixer.name}” takes ${mass(mixer.mostGrams)}. ${cure}`,
        related:
          mixer.definition === undefined ? [] : [{ definition: mixer.definition, message: 'its bowl' }],
      };
    }
  },
};
