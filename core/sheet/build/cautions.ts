import type { Analysis } from '../../analysis/analysis.ts';
import { hottestCelsius } from '../../rules/mixing/hot-water.ts';
import { type Message, message } from '../../words/message.ts';
import { bakingCautions } from './caution-baking.ts';
import { namedCautions } from './caution-named.ts';
import { standingCautions } from './caution-standing.ts';

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

/** Water that scalds, by what the file says of it, in a scald or a bath too, or by what the dough needs; said once, of the hottest. */
function waterCautions({ mixes, solved, resolved }: Analysis): Message[] {
  const poured = (solved?.sections ?? []).flatMap(({ lines }) =>
    lines.flatMap(({ id, role }) => (role === 'water' ? (resolved.statements.get(id)?.celsius ?? []) : [])),
  );
  const mixed = mixes.flatMap((mix) => {
    if (!mix.known) return [];
    const { water, givenWaterCelsius } = mix.value;
    return [(water.known ? water.value.waterCelsius : undefined) ?? 0, givenWaterCelsius ?? 0];
  });
  const hottest = Math.max(0, ...poured, ...mixed);
  if (hottest <= hottestCelsius) return [];
  return [message('caution.hot-water', { waterCelsius: hottest })];
}
