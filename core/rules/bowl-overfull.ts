import type { MixAnalysis } from '../analysis/mixing.ts';
import { mass, trimmed } from '../text/figures.ts';
import { runMixes } from './mixes.ts';
import { headerPlace } from './places.ts';
import type { Rule } from './rule.ts';

/** Water to flour of the dough that a bowl is rated for: a medium bread dough, by makers’ manuals of dough mixers. */
const ratedRatio = 0.6;

export const bowlOverfull: Rule = {
  code: 'bowl-overfull',
  level: 'warning',
  title: 'More dough than the bowl takes',
  explanation:
    'The dough is more than the mixer’s section says the bowl takes. Mix it in equal batches, or in a larger bowl. An overfull bowl mixes ' +
    'unevenly and strains the machine; follow its manual. A stiff dough loads a machine more: what a bowl takes is meant for dough of about ' +
    '60 g of water to 100 g of flour, and makers’ manuals take it down in proportion for less water. That is told as information.',
  bad: 'mixer small spiral:\n  kind spiral\n  bowl 2 kg to 12 kg\n\nformula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n\nmix in small spiral:\n  load flour, water\n  speed 1 for 9 min\n  speed 2 for 4 min\n',
  good: 'mixer small spiral:\n  kind spiral\n  bowl 2 kg to 12 kg\n\nformula Quay Tin:\n  yield 10 kg\n  bread flour  100%\n  water  65%\n\nmix in small spiral:\n  load flour, water\n  speed 1 for 9 min\n  speed 2 for 4 min\n',
  *check({ analysis, block }) {
    if (analysis?.solved?.assumedScale !== false) return;
    for (const { mix, model } of runMixes(analysis)) {
      const { mixer, doughGrams } = mix;
      if (mixer.mostGrams === undefined || !(mixer.mostGrams > 0)) continue;
      const ratio = waterToFlour(mix);
      const most = mixer.mostGrams * (mixer.data.kind === 'hand' ? 1 : Math.min(1, ratio / ratedRatio));
      if (doughGrams <= most * (1 + 1e-6)) continue;
      const isSure = doughGrams > mixer.mostGrams * (1 + 1e-6);
      const batches = Math.ceil(doughGrams / most - 1e-6);
      const each = doughGrams / batches;
      const fits = each >= (mixer.leastGrams ?? 0);
      const cure = fits
        ? `Mix it in ${batches} batches of ${mass(each)}.`
        : 'No number of equal batches fits this bowl.';
      yield {
        ...headerPlace(block, model.headerLine),
        message: isSure
          ? `${mass(doughGrams)} of dough, and the bowl of “${mixer.name}” takes ${mass(mixer.mostGrams)}. ${cure}`
          : `${mass(doughGrams)} of stiff dough, ${trimmed(100 * ratio, 0)} g of water to 100 g of flour: of that the machine of “${mixer.name}” is good for about ${mass(most)}. ${cure}`,
        ...(isSure ? {} : { level: 'info' as const }),
        related:
          mixer.definition === undefined ? [] : [{ definition: mixer.definition, message: 'its bowl' }],
      };
    }
  },
};

/** Free water to flour of all that the programme loads; that of a rated dough where there is no flour to compare. */
function waterToFlour({ input }: MixAnalysis): number {
  let [flour, water] = [0, 0];
  for (const phase of input.phases) {
    if (!('portions' in phase)) continue;
    for (const portion of phase.portions) {
      flour += portion.flourGrams;
      water += Math.max(0, portion.freeWaterGrams);
    }
  }
  return flour > 0 && water > 0 ? water / flour : ratedRatio;
}
