import type { SaidProperties } from './properties.ts';

/** What the `contains` lines of a section name, `none` included. */
export function saidAllergens(said: SaidProperties): readonly string[] {
  return (said.get('contains') ?? []).flatMap((one) =>
    one.statement.value?.form === 'names' ? one.statement.value.names.map((name) => name.text) : [],
  );
}

/**
 * The allergens of an ingredient: those of what it is like, and on top what its `contains` lines say. `contains none`
 * takes the former away. Adding is the safe reading: an allergen is never lost by a line that names another.
 */
export function allergensOf(said: SaidProperties, inherited: readonly string[]): readonly string[] {
  const words = saidAllergens(said);
  const own = words.filter((word) => word.toLowerCase() !== 'none');
  return [...new Set([...(own.length === words.length ? inherited : []), ...own])];
}
