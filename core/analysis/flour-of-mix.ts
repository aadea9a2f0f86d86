import { type FlourMix, type FlourPortion, flourMix } from '../calc/flour/flour-mix.ts';
import type { Analysis } from './analysis.ts';

/** What all flour in the bowl is together; `undefined` where no flour is weighed yet. */
export function flourMixOf({ resolved, solved }: Analysis): FlourMix | undefined {
  const portions = (solved?.overall ?? []).flatMap((line): FlourPortion[] => {
    if (!line.isFlour || line.grams === undefined) return [];
    // What only counts as flour, such as starch, says nothing of its own but is in the mix.
    const flour = resolved.ingredients.get(line.key)?.flour ?? { grain: '' };
    return [{ name: line.name, grams: line.grams, flour }];
  });
  return portions.some(({ grams }) => grams > 0) ? flourMix(portions) : undefined;
}
