import * as german from '../../core/words/de/german.ts';
import * as english from '../../core/words/en/english.ts';
import { english as englishLanguage, type Language } from '../../core/words/language.ts';

/** Every language with its sentences by subject; English comes first. */
export const languages: readonly (Language & { readonly subjects: Readonly<Record<string, object>> })[] = [
  { ...englishLanguage, subjects: english.subjects },
  { ...german.german, subjects: german.subjects },
];
