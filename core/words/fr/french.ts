import { rulePageWords } from '../en/rule-page-words.ts';
import type { Language } from '../language.ts';
import { findings } from './findings.ts';
import { fixes } from './fixes.ts';
import { mixingHeat } from './mixing-heat.ts';
import { mixingHints } from './mixing-hints.ts';
import { mixingOutlook } from './mixing-outlook.ts';
import { mixingWarmth } from './mixing-warmth.ts';
import { mixingWork } from './mixing-work.ts';
import { names } from './names.ts';
import { paragraphs } from './paragraphs.ts';
import { ranges } from './ranges.ts';
import { sums } from './sums.ts';

/** Les messages par sujet, comme en anglais ; ce qui n’y est pas encore est dit en anglais. */
const subjects: Language['subjects'] = {
  fixes,
  findings,
  names,
  sums,
  ranges,
  'mixing-heat': mixingHeat,
  'mixing-hints': mixingHints,
  'mixing-outlook': mixingOutlook,
  'mixing-warmth': mixingWarmth,
  'mixing-work': mixingWork,
  paragraphs,
};

/**
 * French; a blank that does not break stands before the percent sign, and a comma before decimals. The pages of the rules are
 * English.
 */
export const french: Language = {
  tag: 'fr',
  subjects,
  percentSign: '\u00a0%',
  decimalSign: 'comma',
  lessThan: (figure) => `moins de ${figure}`,
  rulePageWords,
};
