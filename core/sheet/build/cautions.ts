import type { Analysis } from '../../analysis/analysis.ts';
import { type Message, message } from '../../words/message.ts';
import { bakingCautions } from './caution-baking.ts';
import { namedCautions } from './caution-named.ts';
import { standingCautions } from './caution-standing.ts';
import { waterCautions } from './caution-water.ts';

/**
 * The usual cautions of the work, once a sheet, and those of this dough with what they are about. They advise and never
 * stand in the way; where machine manual, local food law or licensed advice say otherwise, those are right.
 */
export function cautionsOf(analysis: Analysis): Message[] {
  const roles = new Set(analysis.solved?.overall.map((line) => line.role) ?? []);
  const byHand = analysis.mixes.every((mix) => !mix.known || mix.value.mixer.data.kind === 'hand');
  return [
    ...waterCautions(analysis),
    ...standingCautions(analysis),
    ...bakingCautions(analysis),
    ...namedCautions(analysis),
    message(roles.has('egg') ? 'caution.raw-egg' : 'caution.raw'),
    message(byHand ? 'caution.by-hand' : 'caution.machine'),
    message('caution.heat-and-weight'),
    message('caution.allergens'),
  ];
}
