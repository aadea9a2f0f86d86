import type { Analysis } from '../../analysis/analysis.ts';
import { flourMixOf } from '../../analysis/flour-of-mix.ts';
import type { MixAnalysis } from '../../analysis/mix-analysis.ts';
import { type DoughLoad, mostDoughGrams, ratedWaterToFlour, softness } from '../../calc/mixing/bowl-load.ts';
import { allPortions } from '../../calc/mixing/mixing-water.ts';
import { type Message, message } from '../../words/message.ts';
import { paragraph } from '../engine/paragraph.ts';
import type { Rule } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';
import { runMixes } from './mixes.ts';

/** Protein at 14 % moisture of what mixer makers call high-gluten flour; common practice, no source. */
const highGluten = 0.135;
/** Water given colder than this, °C, or ice in it, is cold; common practice, no source. */
const coldCelsius = 4;

export const bowlOverfull: Rule = {
  code: 'bowl-overfull',
  level: 'warning',
  title: 'More dough than the bowl takes',
  explanation:
    'The dough is more than the bowl takes by the mixer’s section. Mix it in equal batches, or in a larger bowl. An overfull bowl mixes ' +
    'unevenly and strains the machine; follow its manual. A stiff dough loads a machine more: what a bowl takes is meant for dough of about ' +
    '60 g of water to 100 g of flour, and makers’ manuals take it down in proportion for less water, by a tenth for high-gluten flour (13.5% of protein ' +
    'and more), and by 15 to 20% for cold water or ice. That is shown as information.',
  bad: 'mixer small spiral:\n  kind spiral\n  bowl 2 kg to 12 kg\n\nformula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n\nmix in small spiral:\n  load flour, water\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  good: 'mixer small spiral:\n  kind spiral\n  bowl 2 kg to 12 kg\n\nformula Quay Tin:\n  yield 10 kg\n  bread flour  100%\n  water  65%\n\nmix in small spiral:\n  load flour, water\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  *check({ analysis, block }) {
    if (analysis?.solved?.assumedScale !== false) return;
    for (const { mix, model } of runMixes(analysis)) {
      const { mixer, doughGrams } = mix;
      if (mixer.mostGrams === undefined || !(mixer.mostGrams > 0)) continue;
      const load = loadOf(analysis, mix);
      const most = mixer.data.kind === 'hand' ? mixer.mostGrams : mostDoughGrams(mixer.mostGrams, load);
      if (doughGrams <= most * (1 + 1e-6)) continue;
      const isSure = doughGrams > mixer.mostGrams * (1 + 1e-6);
      const batches = Math.ceil(doughGrams / most - 1e-6);
      const each = doughGrams / batches;
      const fits = each >= (mixer.leastGrams ?? 0);
      const help = fits
        ? message('bowl-overfull.divide', { count: batches, grams: each })
        : message('bowl-overfull.no-batches');
      const said = isSure
        ? message('bowl-overfull.more', { doughGrams, name: mixer.name, mostGrams: mixer.mostGrams })
        : heavyMessage(load, { doughGrams, name: mixer.name, mostGrams: most });
      yield {
        ...headerPlace(block, model.headerLine),
        message: paragraph(said, help),
        ...(isSure ? {} : { level: 'info' as const }),
        related:
          mixer.definition === undefined
            ? []
            : [{ definition: mixer.definition, message: message('mix.bowl') }],
      };
    }
  },
};

function loadOf(analysis: Analysis, mix: MixAnalysis): DoughLoad {
  const protein = flourMixOf(analysis)?.proteinAt14;
  const ice = mix.water.known ? mix.water.value.ice : undefined;
  return {
    waterToFlour: waterToFlour(mix),
    isHighGluten: protein?.known === true && protein.value >= highGluten,
    isCold:
      ice !== undefined ||
      allPortions(mix.input).some(({ frozen }) => frozen === true) ||
      (mix.givenWaterCelsius ?? 20) < coldCelsius,
  };
}

/** That a dough is too much for a machine since it is stiff, or heavy for other reasons. */
function heavyMessage(
  { waterToFlour: ratio, isHighGluten, isCold }: DoughLoad,
  bowl: { readonly doughGrams: number; readonly name: string; readonly mostGrams: number },
): Message {
  const facts = [
    ...(isHighGluten ? [message('bowl-overfull.high-gluten')] : []),
    ...(isCold ? [message('bowl-overfull.cold')] : []),
  ];
  if (ratio >= ratedWaterToFlour) return message('bowl-overfull.dough-with', { ...bowl, facts });
  const stiff = { ...bowl, waterPerHundred: 100 * ratio };
  return facts.length === 0
    ? message('bowl-overfull.stiff', stiff)
    : message('bowl-overfull.stiff-with', { ...stiff, facts });
}

/** How soft all is that the programme loads; as a rated dough where there is no flour to compare. */
function waterToFlour({ input }: MixAnalysis): number {
  const all = input.phases.flatMap((phase) => ('portions' in phase ? phase.portions : []));
  return softness(all) ?? ratedWaterToFlour;
}
