import type { Language } from '../language.ts';
import type { Catalogue } from '../message.ts';
import { comparison } from './comparison.ts';
import { findings } from './findings.ts';
import { fixes } from './fixes.ts';
import { mixers } from './mixers.ts';
import { names } from './names.ts';
import { ranges } from './ranges.ts';
import { readingAmounts } from './reading-amounts.ts';
import { readingSections } from './reading-sections.ts';
import { rulePages } from './rule-pages.ts';
import { sums } from './sums.ts';

/** The messages by subject, as English has them. */
export const subjects = {
  fixes,
  findings,
  'reading-sections': readingSections,
  'reading-amounts': readingAmounts,
  names,
  sums,
  ranges,
  mixers,
  comparison,
};

const catalogue: Catalogue = {
  ...fixes,
  ...findings,
  ...readingSections,
  ...readingAmounts,
  ...names,
  ...sums,
  ...ranges,
  ...mixers,
  ...comparison,
};

/** German; a blank that does not break stands before the percent sign (DIN 5008). */
export const german: Language = { tag: 'de', catalogue, percentSign: '\u00a0%', rulePages };
