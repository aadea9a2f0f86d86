import { findings } from './findings.ts';
import { fixes } from './fixes.ts';
import { mixers } from './mixers.ts';
import { names } from './names.ts';
import { ranges } from './ranges.ts';
import { readingAmounts } from './reading-amounts.ts';
import { readingSections } from './reading-sections.ts';
import { sums } from './sums.ts';

/** The messages by subject; one subject is one file, in every language. */
export const subjects = {
  fixes,
  findings,
  'reading-sections': readingSections,
  'reading-amounts': readingAmounts,
  names,
  sums,
  ranges,
  mixers,
};

/** Every message in English: the list of messages that there are, which every other language follows. */
export const english = {
  ...fixes,
  ...findings,
  ...readingSections,
  ...readingAmounts,
  ...names,
  ...sums,
  ...ranges,
  ...mixers,
};
