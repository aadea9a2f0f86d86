import { additions } from './additions.ts';
import { typedFlours } from './flour-types.ts';
import { flours } from './flours.ts';
import type { CatalogueIngredient } from './ingredient.ts';
import { larder } from './larder.ts';

/** Every ingredient that is known without being defined in a file: flours, the types of four countries, larder, additions. */
export const catalogueIngredients: readonly CatalogueIngredient[] = [
  ...flours,
  ...typedFlours,
  ...larder,
  ...additions,
];

const byName: ReadonlyMap<string, CatalogueIngredient> = new Map(
  catalogueIngredients.flatMap((one) =>
    [one.name, ...one.aliases].map((name) => [name.toLowerCase(), one] as const),
  ),
);

/** The ingredient of this name or alias, folded by the caller; undefined when there is none. */
export function findCatalogue(foldedName: string): CatalogueIngredient | undefined {
  return byName.get(foldedName);
}

/** The names of all ingredients, without their aliases, in the order of the catalogue. */
export function catalogueNames(): readonly string[] {
  return catalogueIngredients.map((one) => one.name);
}
