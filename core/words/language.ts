import type { Display } from '../text/display.ts';
import { subjects } from './en/english.ts';
import { rulePageWords } from './en/rule-page-words.ts';
import type { Subjects } from './message.ts';
import type { RulePages, RulePageWords } from './rule-page-words.ts';

/** A language that messages can be worded in. */
export interface Language {
  /** BCP 47: `en`, `de`, `fr`. */
  readonly tag: string;
  /** Its sentences, whole in English and German; what a language does not have yet is said in English, message by message. */
  readonly subjects: { readonly [S in keyof Subjects]?: Partial<Subjects[S]> };
  /** What stands behind a figure in percent, with the blank before it that the language wants. */
  readonly percentSign: string;
  /** What stands before the decimals of a figure, where its reader has not asked for another. */
  readonly decimalSign: Display['decimalSign'];
  /** A figure that something stays below: `less than 0.01 EUR`. */
  readonly lessThan: (figure: string) => string;
  /** The rules by code; absent in English, where a rule says them itself, and where they are not translated. */
  readonly rulePages?: RulePages;
  readonly rulePageWords: RulePageWords;
}

/** How a language forms plurals and lists. The core knows no locale: whoever runs it may give what its host knows. */
export interface Grammar {
  /** The form that a number takes, as `Intl.PluralRules` names it. */
  plural(count: number): 'zero' | 'one' | 'two' | 'few' | 'many' | 'other';
  /** A list, joined by *and* or by *or*, as `Intl.ListFormat` does. */
  list(words: readonly string[], kind: 'and' | 'or'): string;
}

export const english: Language = {
  ...{ tag: 'en', subjects, rulePageWords },
  ...{ percentSign: '%', decimalSign: 'point', lessThan: (figure) => `less than ${figure}` },
};

/** Plain English, for who runs the core without a grammar of its own. */
export const plainGrammar: Grammar = {
  plural: (count) => (count === 1 ? 'one' : 'other'),
  list: (words, kind) => {
    const last = words[words.length - 1] ?? '';
    return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${kind} ${last}`;
  },
};
