import { proteinAt14 } from '../calc/flour.ts';
import { ashOfDry } from '../calc/flour-mix.ts';
import { type FlourType, flourTypeOf, type TypeCountry } from '../catalogue/flour-types.ts';
import type { Ingredient } from '../model/ingredient.ts';
import { percent } from '../text/figures.ts';

const countries: readonly TypeCountry[] = ['Germany', 'Austria', 'France', 'Italy'];
const typedGrains: ReadonlySet<string> = new Set(['wheat', 'rye', 'spelt'] satisfies FlourType['grain'][]);

/** The ash of a flour on dry matter, as laws give it, and the types it falls under; undefined where it is not known. */
export function flourTypeWords({ flour }: Ingredient): string | undefined {
  if (flour === undefined) return undefined;
  const ash = ashOfDry(flour);
  if (!ash.known) return undefined;
  const protein = proteinAt14(flour);
  const ofDry = protein.known ? protein.value / 0.86 : undefined;
  const grain = flour.grain as FlourType['grain'];
  const types = typedGrains.has(flour.grain)
    ? countries.flatMap((country) => {
        const type = flourTypeOf(country, grain, ash.value, ofDry);
        return type === undefined ? [] : [`${type.name} (${country})`];
      })
    : [];
  const told = types.length === 0 ? '' : `: by it ${types.join(', ')}`;
  return `ash ${percent(ash.value)} of dry matter _(${ash.provenance})_${told}`;
}
