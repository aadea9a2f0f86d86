import type { LanguageTag, Settings } from '../core/index.ts';
import { intlGrammar } from './grammar.ts';

/** What the core is told of the language that it shall word its answers in. */
export type Worded = Pick<Settings, 'language' | 'grammar'>;

/** The words of a language and its grammar as Node or the browser knows it, loaded now where they were not before. */
export async function wordedIn(tag: LanguageTag): Promise<Worded> {
  const { english, loadLanguage, plainGrammar } = await import('../core/index.ts');
  // English needs no grammar of the host, which takes a while to make.
  if (tag === 'en') return { language: english, grammar: plainGrammar };
  return { language: await loadLanguage(tag), grammar: intlGrammar(tag) };
}
