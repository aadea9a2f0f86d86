import { entryOf } from '../../text/element.ts';
/** How much of each kind of yeast raises alike, by weight: Hamelman, Bread (2004), yeast conversions; packets differ. */
export const yeastAlike: ReadonlyMap<string, number> = new Map([
  ['fresh yeast', 1],
  ['active dry yeast', 0.4],
  ['instant yeast', 0.33],
]);

/** How many times its weight of fresh yeast a yeast counts for, by its name and its fraction of water. */
export function asFreshYeast(name: string, water: number | undefined): number {
  if ((water ?? 0) > 0.4) return 1;
  const words = name.toLowerCase();
  if (words.includes('instant')) return 1 / entryOf(yeastAlike, 'instant yeast');
  return words.includes('dry') || words.includes('dried') || water !== undefined
    ? 1 / entryOf(yeastAlike, 'active dry yeast')
    : 1;
}
