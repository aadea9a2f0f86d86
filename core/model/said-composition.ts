import type { FlourData } from '../calc/flour/flour.ts';
import type { Composition } from '../calc/formula/composition.ts';
import { findCatalogue } from '../catalogue/catalogue.ts';
import type { CatalogueIngredient } from '../catalogue/catalogue-ingredient.ts';
import { fractionOf, type SaidProperties } from './properties.ts';

/** The usual flour of a grain, white or medium and wholemeal; what is not here is taken for wheat. */
const usualFlours: Readonly<Record<string, readonly [white: string, wholemeal: string]>> = {
  wheat: ['bread flour', 'wholemeal wheat'],
  rye: ['medium rye', 'dark rye'],
  spelt: ['wholemeal spelt', 'wholemeal spelt'],
  khorasan: ['khorasan', 'khorasan'],
  durum: ['semolina', 'wholemeal wheat'],
  barley: ['barley flour', 'barley flour'],
  oats: ['rolled oats', 'rolled oats'],
  buckwheat: ['buckwheat flour', 'buckwheat flour'],
  rice: ['rice flour', 'rice flour'],
  maize: ['cornmeal', 'cornmeal'],
};

/** Where a flour states no composition, the usual flour of its grain and milling lends its own. */
export function usualOfGrain({ grain, milling }: FlourData): CatalogueIngredient | undefined {
  const [white, wholemeal] = usualFlours[grain] ?? usualFlours.wheat!;
  return findCatalogue(milling === 'wholemeal' ? wholemeal : white);
}

const saidShares: readonly (readonly [string, keyof Composition])[] = [
  ['water', 'water'],
  ['protein', 'protein'],
  ['fat', 'fat'],
  ['carbohydrate', 'carbohydrate'],
  ['fibre', 'fibre'],
  ['ash', 'ash'],
  ['saturates', 'saturates'],
  ['sugars', 'sugars'],
  ['starch', 'starch'],
  ['alcohol', 'alcohol'],
  ['salt', 'saltFraction'],
];

/** What a label prints of a flour, by the words of the notation. */
const labelShares = ['protein', 'fat', 'carbohydrate', 'sugars', 'saturates', 'fibre', 'salt'] as const;

function shareKey(word: (typeof labelShares)[number]): keyof Composition {
  return word === 'salt' ? 'saltFraction' : word;
}

/** Whether a section says anything of what its ingredient consists of. */
export function saysComposition(said: SaidProperties): boolean {
  return saidShares.some(([word]) => fractionOf(said, word) !== undefined);
}

/**
 * What is said over what was there. Where some main part changes and carbohydrate is not said, it takes up the
 * difference, so that the parts still make the whole.
 */
export function overlaid(
  start: Composition,
  said: SaidProperties,
  flour: FlourData | undefined,
): Composition {
  const mixed: { -readonly [K in keyof Composition]: number } = { ...start };
  let changed = false;
  for (const [word, key] of saidShares) {
    const value = fractionOf(said, word);
    if (value === undefined) continue;
    mixed[key] = value;
    if (key !== 'saltFraction') changed = true;
  }
  if (flour?.moisture !== undefined) {
    mixed.water = flour.moisture;
    changed = true;
  }
  const { water, protein, fat, ash } = mixed;
  if (!changed || fractionOf(said, 'carbohydrate') !== undefined) return mixed;
  if (water === undefined || protein === undefined || fat === undefined || ash === undefined) return mixed;
  return { ...mixed, carbohydrate: Math.max(0, 1 - water - protein - fat - ash) };
}

/** Whether anything that a label prints comes from the lender, and not from the section itself. */
export function lends(lender: CatalogueIngredient, said: SaidProperties): boolean {
  const { composition } = lender;
  return labelShares.some((word) => composition[shareKey(word)] !== undefined && !said.has(word));
}
