import type { Args } from '../args.ts';
import type { ranges as english } from '../en/ranges.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Anteile außerhalb des Üblichen. */
export const ranges: Translation<typeof english> = {
  'salt-range.little': (share, say) =>
    `${say.percent(share.fraction)} Salz auf das gesamte Mehl ist ungewöhnlich wenig: üblich sind ${usual(share, say)}.`,
  'salt-range.much': (share, say) =>
    `${say.percent(share.fraction)} Salz auf das gesamte Mehl ist ungewöhnlich viel: üblich sind ${usual(share, say)}.`,

  'no-salt.none': (share, say) =>
    `In diesem Teig ist kein Salz. Falls das nicht beabsichtigt ist: üblich sind ${usual(share, say)} vom Mehl.`,

  'yeast-range.lean': ({ fraction, usualFraction }, say) =>
    `Hefe wie ${say.percent(fraction)} Frischhefe auf das gesamte Mehl: bei einem mageren Teig sind bis zu ${say.percent(usualFraction)} üblich.`,
  'yeast-range.sweet': ({ fraction, usualFraction }, say) =>
    `Hefe wie ${say.percent(fraction)} Frischhefe auf das gesamte Mehl: bei einem süßen Teig sind bis zu ${say.percent(usualFraction)} üblich.`,
  'yeast-range.overnight': ({ fraction, part, usualFraction, hours }, say) =>
    `Hefe wie ${say.percent(fraction)} Frischhefe auf das Mehl von „${part}“: bei ${say.number(hours, 0)} h Standzeit sind bis zu ${say.percent(usualFraction)} üblich.`,

  'hydration-range.wet': (water, say) =>
    `${say.percent(water.fraction)} Wasser auf das Mehl${held(water, say)}: ${say.points(water.apartFraction)} Prozentpunkte über den ${say.percent(water.usualFraction)}, die es bindet. Der Teig läuft breit. Weniger Wasser nehmen oder ein stärkeres Mehl. (Die Grenze ist gängige Praxis.)`,
  'hydration-range.dry': (water, say) =>
    `${say.percent(water.fraction)} Wasser auf das Mehl${held(water, say)}: ${say.points(water.apartFraction)} Prozentpunkte unter den ${say.percent(water.usualFraction)}, die es bindet. Der Teig bleibt trocken. Mehr Wasser nehmen. (Die Grenze ist gängige Praxis.)`,
  'hydration-range.flour': ({ name }) => `das Mehl „${name}“`,
  'hydration-range.flour-absorption': ({ name, fraction }, say) =>
    `das Mehl „${name}“, Wasseraufnahme ${say.percent(fraction)}`,
};

type Water = Args<'heldFraction'>;

function held({ heldFraction }: Water, say: Speaker): string {
  return heldFraction > 0.005 ? `, ohne die ${say.percent(heldFraction)}, die in Saaten gebunden sind` : '';
}

function usual({ lowFraction, highFraction }: Args<'lowFraction' | 'highFraction'>, say: Speaker): string {
  return `${say.number(lowFraction * 100, 2)} bis ${say.percent(highFraction)}`;
}
