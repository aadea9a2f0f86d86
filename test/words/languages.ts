import * as german from '../../core/words/de/german.ts';
import * as english from '../../core/words/en/english.ts';
import * as french from '../../core/words/fr/french.ts';
import { english as englishLanguage, type Language } from '../../core/words/language.ts';

/** A language with its sentences by subject; `whole` where it has all of them. */
export type Worded = Language & {
  readonly subjects: Readonly<Record<string, object>>;
  readonly whole: boolean;
};

/** Every language; English comes first. */
export const languages: readonly Worded[] = [
  { ...englishLanguage, subjects: english.subjects, whole: true },
  { ...german.german, subjects: german.subjects, whole: true },
  { ...french.french, subjects: french.subjects, whole: false },
];
