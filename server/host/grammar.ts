import type { Grammar } from '../../core/index.ts';

/** Plurals and lists of a language as the host knows them; `tag` is BCP 47. */
export function intlGrammar(tag: string): Grammar {
  const plurals = new Intl.PluralRules(tag);
  const lists = {
    // The form without a comma before the last word, which all catalogues are written with.
    and: new Intl.ListFormat(british(tag), { type: 'conjunction' }),
    or: new Intl.ListFormat(british(tag), { type: 'disjunction' }),
  };
  return {
    plural: (count) => plurals.select(count),
    list: (words, kind) => lists[kind].format(words),
  };
}

/** American English has a comma before the last word of a list, British has none. */
function british(tag: string): string {
  return tag === 'en' ? 'en-GB' : tag;
}
