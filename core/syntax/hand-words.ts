/** How bakers write what their hands do, and the word of the notation for it. Common practice, no source. */

export type HandVerb = 'knead' | 'fold' | 'stir';

/** At the start of a line or a clause, in lower or upper case; longer ones first where one begins another. */
const verbs: readonly (readonly [RegExp, HandVerb])[] = [
  [
    /^(?:(?:stretch|turn|pull) (?:and|&|\+) folds?|stretch & folds?|(?:coil|letter|gentle|book) folds?|fold(?:s|ing)?)\b/i,
    'fold',
  ],
  [/^(?:stir(?:ring)?|combine|blend|whisk|toss|rub(?:bing)?(?: in)?)\b/i, 'stir'],
  [
    /^(?:(?:slap (?:and|&|\+)|french) folds?|(?:by )?hands?(?: |-)?(?:knead(?:ing)?|mix(?:ing)?|work(?:ing)?)?|mix(?:ing)?|knead(?:ing)?|work(?:ing)?|beat(?:ing)?|rubaud(?: mix(?:ing)?)?|squeeze(?: in)?|pinch(?: in)?|massage|run)(?![\p{L}])/iu,
    'knead',
  ],
];

/** What a clause of a mix by hand begins with. */
export function handVerb(text: string): { readonly verb: HandVerb; readonly length: number } | undefined {
  for (const [pattern, verb] of verbs) {
    const found = pattern.exec(text);
    if (found !== null) return { verb, length: found[0].length };
  }
  return undefined;
}

/** What only hands do, beside a machine too. */
export const byHandAlone = /^(?:slap|stretch|coil|french|(?:by )?hand)\b/i;

/** `slap and fold`: words of joining that join nothing, as they stand in a text. */
export const handPhrase = /\b(?:slap|stretch|turn|pull)\s+(?:and|&|\+)\s+folds?\b/giu;
