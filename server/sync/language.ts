import type { Language, LanguageTag, Settings } from '../../core/index.ts';
import { intlGrammar } from '../host/grammar.ts';

/** What the core is told of the language that it shall word its answers in. */
export type Worded = Pick<Settings, 'language' | 'grammar'>;

/**
 * The words of a language and its grammar as Node or the browser knows it, loaded now where they were not before. Where they
 * cannot be loaded it is English, and `failed` is told so in a sentence. Never fails.
 */
export async function wordedIn(
  tag: LanguageTag,
  failed: (sentence: string) => void = () => undefined,
): Promise<Worded> {
  const { english, loadLanguage, message, plainGrammar, plainSpeaker } = await import('../../core/index.ts');
  // English needs no grammar of the host, which takes a while to make.
  const inEnglish: Worded = { language: english, grammar: plainGrammar };
  if (tag === 'en') return inEnglish;
  try {
    const language: Language | undefined = await loadLanguage(tag);
    // What is left of a file that was cut short may hold nothing.
    if (language?.tag === tag) return { language, grammar: intlGrammar(tag) };
  } catch {
    // Told below.
  }
  failed(plainSpeaker.say(message('session.language-not-loaded', { code: tag })));
  return inEnglish;
}
