import type { SectionKind } from './tree.ts';

/** What bakers call a part, and the word that begins its section. */
const words: Readonly<Record<string, SectionKind>> = {
  ...called(
    'preferment',
    'poolish|biga|sponge|levain|leaven|sour|sourdough|rye sour|starter|pre-ferment|old dough|pâte fermentée|first dough|night dough|pre-dough|sauerteig|vorteig|madre|lievito madre',
  ),
  ...called('scald', 'tangzhong|yudane|porridge|roux|brew|mash|kochstück|brühstück'),
  ...called('soaker', 'soak|seed soaker|seeds|quellstück'),
  ...called('part', 'laminated butter|butter block'),
  ...called('topping', 'glaze|egg wash|crumble|streusel'),
};

function called(section: SectionKind, names: string): Record<string, SectionKind> {
  return Object.fromEntries(names.split('|').map((name) => [name, section]));
}

/** A share behind the name of a part: `poolish 33%`, `sponge 30% flour`. */
const shareBehind = /^(.*\p{L})\s+\d+(?:[.,]\d+)? ?%.*$/u;

/**
 * The section that a header of this name alone was meant to begin: `poolish:`, `rye sour 30%:` and `liquid levain:` a preferment.
 */
export function suggestSection(folded: string): SectionKind | undefined {
  const name = withoutShare(folded);
  const own = (word: string): SectionKind | undefined =>
    Object.hasOwn(words, word) ? words[word] : undefined;
  const last = name.slice(name.lastIndexOf(' ') + 1);
  return own(name) ?? (last === 'seeds' ? undefined : own(last));
}

/** The name of a part without the share that may stand behind it. */
export function withoutShare(name: string): string {
  const plain = name.replace(/ (?:\([^()]*\)|build)$/i, '');
  return shareBehind.exec(plain)?.[1] ?? plain;
}

/** What other kitchens call the sections of a formula that carry no name. Common practice, no source. */
const namelessSections: Readonly<Record<string, 'dough' | 'mix' | 'process'>> = {
  ...Object.fromEntries(
    'dough|final dough|main dough|the dough|bread dough|hauptteig|ingredients'
      .split('|')
      .map((word) => [word, 'dough' as const]),
  ),
  ...Object.fromEntries('mixing|kneading|knead'.split('|').map((word) => [word, 'mix' as const])),
  ...Object.fromEntries(
    'method|steps|directions|instructions|procedure|make-up|makeup|baking|process steps|fermentation'
      .split('|')
      .map((word) => [word, 'process' as const]),
  ),
};

/** Whether a header means the dough itself, its mixing or its process. */
export function namelessSection(folded: string): 'dough' | 'mix' | 'process' | undefined {
  return Object.hasOwn(namelessSections, folded) ? namelessSections[folded] : undefined;
}

/** Words that stand for a formula in other kitchens. */
export const otherWordsForFormula: ReadonlySet<string> = new Set(['recipe', 'dough', 'bread', 'loaf']);
