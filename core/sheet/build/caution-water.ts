import type { Analysis } from '../../analysis/analysis.ts';
import { hottestCelsius } from '../../rules/mixing/hot-water.ts';
import { type Message, message } from '../../words/message.ts';

/** Water that scalds, by what the file says of it, in a scald or a bath too, or by what the dough needs; said once, of the hottest. */
export function waterCautions({ mixes, solved, resolved }: Analysis): Message[] {
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
