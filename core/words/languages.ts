import { english, type Language } from './language.ts';

/** The languages that messages can be worded in. */
export const languageTags = ['en', 'de', 'fr'] as const;
export type LanguageTag = (typeof languageTags)[number];

/**
 * The language for a locale as BCP 47 writes it (`de`, `de-AT`): that of its first part where there is a catalogue of it,
 * else English.
 */
export function languageTagOf(locale: string): LanguageTag {
  const [first] = locale.toLowerCase().split(/[-_]/);
  return languageTags.find((tag) => tag === first) ?? 'en';
}

/** A language with its words. English is always there; any other is loaded when it is asked for. */
export async function loadLanguage(tag: LanguageTag): Promise<Language> {
  switch (tag) {
    case 'en':
      return english;
    case 'de':
      return (await import('./de/german.ts')).german;
    case 'fr':
      return (await import('./fr/french.ts')).french;
  }
}
