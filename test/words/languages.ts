import { german } from '../../core/words/de/german.ts';
import { french } from '../../core/words/fr/french.ts';
import { english, type Language } from '../../core/words/language.ts';

/** A language; `whole` where it has a sentence for every message. */
export type Worded = Language & { readonly whole: boolean };

/** Every language; English comes first. */
export const languages: readonly Worded[] = [
  { ...english, whole: true },
  { ...german, whole: true },
  { ...french, whole: false },
];
