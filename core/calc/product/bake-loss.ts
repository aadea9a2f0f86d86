import { elementAt, firstOf, lastOf } from '../../text/element.ts';
/** Bread baked in a tin, or on the hearth where all of its crust meets the heat. */
export type DoughForm = 'tin' | 'hearth';

/** Bake loss of hearth bread by the weight of a piece of dough in grams. Handbook ranges, from memory. */
const hearthLosses: readonly (readonly [grams: number, fraction: number])[] = [
  [55, 0.2],
  [500, 0.145],
  [1000, 0.125],
  [2000, 0.095],
];

/** In a tin less dries out: bread of square tins loses 10 to 11 % (a Japanese tin maker’s page, tenpos.com). */
const tinShare = 0.85;

/**
 * What a piece of dough loses in the oven, as a fraction of its weight: small pieces more than large ones, tins less than
 * the hearth. Common practice, to be replaced by a weighing. Pieces beyond the table are taken as its ends.
 */
export function usualBakeLoss(pieceGrams: number, form: DoughForm = 'hearth'): number {
  const [first, last] = [firstOf(hearthLosses), lastOf(hearthLosses)];
  const share = form === 'tin' ? tinShare : 1;
  if (!(pieceGrams > first[0])) return first[1] * share;
  if (pieceGrams >= last[0]) return last[1] * share;
  const after = hearthLosses.findIndex(([grams]) => grams >= pieceGrams);
  const [[lightGrams, light], [heavyGrams, heavy]] = [
    elementAt(hearthLosses, after - 1),
    elementAt(hearthLosses, after),
  ];
  const part = Math.log(pieceGrams / lightGrams) / Math.log(heavyGrams / lightGrams);
  return (light + part * (heavy - light)) * share;
}
