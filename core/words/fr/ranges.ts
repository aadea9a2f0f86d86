import type { Args } from '../args.ts';
import type { ranges as english } from '../en/ranges.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Les proportions hors de l’usage. */
export const ranges: Translation<typeof english> = {
  'salt-range.little': (share, say) =>
    `${say.percent(share.fraction)} de sel sur la farine totale, c’est peu : l’usage est de ${usual(share, say)}.`,
  'salt-range.much': (share, say) =>
    `${say.percent(share.fraction)} de sel sur la farine totale, c’est beaucoup : l’usage est de ${usual(share, say)}.`,

  'no-salt.none': (share, say) =>
    `Cette pâte est sans sel. Si ce n’est pas voulu : l’usage est de ${usual(share, say)} du poids de farine.`,

  'yeast-range.lean': ({ fraction, usualFraction }, say) =>
    `Autant de levure que ${say.percent(fraction)} de levure fraîche sur la farine totale : pour une pâte maigre, l’usage va jusqu’à ${say.percent(usualFraction)}.`,
  'yeast-range.sweet': ({ fraction, usualFraction }, say) =>
    `Autant de levure que ${say.percent(fraction)} de levure fraîche sur la farine totale : pour une pâte sucrée, l’usage va jusqu’à ${say.percent(usualFraction)}.`,
  'yeast-range.overnight': ({ fraction, part, usualFraction, hours }, say) =>
    `Autant de levure que ${say.percent(fraction)} de levure fraîche sur la farine de « ${part} » : pour ${say.number(hours, 0)} h de fermentation, l’usage va jusqu’à ${say.percent(usualFraction)}.`,

  'hydration-range.wet': (water, say) =>
    `${say.percent(water.fraction)} d’eau pour la farine${held(water, say)} : ${say.points(water.apartFraction)} points au-dessus des ${say.percent(water.usualFraction)} qu’elle absorbe. La pâte va s’étaler. Mettre moins d’eau, ou une farine plus forte. (La limite est d’usage courant.)`,
  'hydration-range.dry': (water, say) =>
    `${say.percent(water.fraction)} d’eau pour la farine${held(water, say)} : ${say.points(water.apartFraction)} points au-dessous des ${say.percent(water.usualFraction)} qu’elle absorbe. La pâte restera sèche. Mettre plus d’eau. (La limite est d’usage courant.)`,
  'hydration-range.flour': ({ name }) => `la farine « ${name} »`,
  'hydration-range.flour-absorption': ({ name, fraction }, say) =>
    `la farine « ${name} », absorption ${say.percent(fraction)}`,
};

type Water = Args<'heldFraction'>;

function held({ heldFraction }: Water, say: Speaker): string {
  return heldFraction > 0.005 ? `, sans les ${say.percent(heldFraction)} que retiennent les graines` : '';
}

function usual({ lowFraction, highFraction }: Args<'lowFraction' | 'highFraction'>, say: Speaker): string {
  return `${say.number(lowFraction * 100, 2)} à ${say.percent(highFraction)}`;
}
