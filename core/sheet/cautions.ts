import type { Analysis } from '../analysis/analysis.ts';
import { stopFirst } from '../text/stop-first.ts';
import { bakingCautions } from './caution-baking.ts';
import { namedCautions } from './caution-named.ts';
import { standingCautions } from './caution-standing.ts';
import { waterCautions } from './caution-water.ts';

/**
 * The usual cautions of the work, once a sheet, and those of this dough with what they are about. They advise and never
 * stand in the way; where machine manual, local food law or licensed advice say otherwise, those are right.
 */
export function cautionsOf(analysis: Analysis): string[] {
  const roles = new Set(analysis.solved?.overall.map((line) => line.role) ?? []);
  const byHand = analysis.mixes.every((mix) => !mix.known || mix.value.mixer.data.kind === 'hand');
  return [
    ...waterCautions(analysis),
    ...standingCautions(analysis),
    ...bakingCautions(analysis),
    ...namedCautions(analysis),
    roles.has('egg')
      ? 'Raw flour, raw dough and raw egg are not to be tasted.'
      : 'Raw flour and raw dough are not to be tasted.',
    ...(byHand
      ? [`Pour flour low and slowly: ${dust}`]
      : [
          `No hands in a running bowl; guards stay shut. ${stopFirst} Start slow, so that no flour flies: ${dust}`,
        ]),
    'Oven, trays and steam burn. Sacks, bowls and full trays are heavy: use the aids there are.',
    'Allergens are what the files say; the producer answers for the label. Follow your machine’s manual, local food law and licensed advice.',
  ];
}

/** What flour dust does: common practice, as the authorities for safety at work have it. */
const dust = 'its dust causes bakers’ asthma, and a cloud of it can explode.';
