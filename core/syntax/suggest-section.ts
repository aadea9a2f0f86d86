import type { SectionKind } from './tree.ts';

/** What bakers call a part, and the word that begins its section. */
const words: Readonly<Record<string, SectionKind>> = {
  ...called(
    'preferment',
    'poolish|biga|sponge|levain|leaven|sour|sourdough|rye sour|starter|pre-ferment|old dough|pâte fermentée',
  ),
  ...called('scald', 'tangzhong|yudane|porridge|roux|brew|mash'),
  ...called('soaker', 'soak|seed soaker|seeds'),
  ...called('part', 'laminated butter|butter block'),
  ...called('topping', 'glaze|egg wash|crumble|streusel'),
};

function called(section: SectionKind, names: string): Record<string, SectionKind> {
  return Object.fromEntries(names.split('|').map((name) => [name, section]));
}

/** The section that a header of this name alone was meant to begin: `poolish:` a preferment. */
export function suggestSection(folded: string): SectionKind | undefined {
  return Object.hasOwn(words, folded) ? words[folded] : undefined;
}

/** Words that stand for a formula in other kitchens. */
export const otherWordsForFormula: ReadonlySet<string> = new Set(['recipe', 'dough', 'bread', 'loaf']);
