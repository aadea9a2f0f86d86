import type { Language } from '../language.ts';
import type { Subjects } from '../message.ts';
import { actions } from './actions.ts';
import { allergens } from './allergens.ts';
import { amounts } from './amounts.ts';
import { asked } from './asked.ts';
import { blends } from './blends.ts';
import { calibration } from './calibration.ts';
import { cautions } from './cautions.ts';
import { charts } from './charts.ts';
import { commandCheck } from './command-check.ts';
import { commandFiles } from './command-files.ts';
import { commandGit } from './command-git.ts';
import { commandTotals } from './command-totals.ts';
import { comparison } from './comparison.ts';
import { comparisonPage } from './comparison-page.ts';
import { completion } from './completion.ts';
import { cost } from './cost.ts';
import { editing } from './editing.ts';
import { experiments } from './experiments.ts';
import { findings } from './findings.ts';
import { fixes } from './fixes.ts';
import { foodSources } from './food-sources.ts';
import { glance } from './glance.ts';
import { history } from './history.ts';
import { hover } from './hover.ts';
import { imports } from './imports.ts';
import { label } from './label.ts';
import { mixers } from './mixers.ts';
import { mixingHeat } from './mixing-heat.ts';
import { mixingHints } from './mixing-hints.ts';
import { mixingMap } from './mixing-map.ts';
import { mixingOutlook } from './mixing-outlook.ts';
import { mixingReasons } from './mixing-reasons.ts';
import { mixingTrials } from './mixing-trials.ts';
import { mixingWarmth } from './mixing-warmth.ts';
import { mixingWork } from './mixing-work.ts';
import { names } from './names.ts';
import { notation } from './notation.ts';
import { panel } from './panel.ts';
import { paragraphs } from './paragraphs.ts';
import { planSheets } from './plan-sheets.ts';
import { plans } from './plans.ts';
import { project } from './project.ts';
import { ranges } from './ranges.ts';
import { readingAmounts } from './reading-amounts.ts';
import { readingSections } from './reading-sections.ts';
import { rulePageWords } from './rule-page-words.ts';
import { rulePages } from './rule-pages.ts';
import { sectionLines } from './section-lines.ts';
import { session } from './session.ts';
import { sheetHeads } from './sheet-heads.ts';
import { sheetWork } from './sheet-work.ts';
import { standing } from './standing.ts';
import { sums } from './sums.ts';
import { totals } from './totals.ts';

/** The messages by subject, as English has them. */
const subjects: Subjects = {
  fixes,
  glance,
  findings,
  'reading-sections': readingSections,
  'reading-amounts': readingAmounts,
  names,
  sums,
  project,
  ranges,
  mixers,
  comparison,
  blends,
  completion,
  cost,
  label,
  history,
  imports,
  allergens,
  'mixing-heat': mixingHeat,
  'mixing-hints': mixingHints,
  'mixing-map': mixingMap,
  'mixing-outlook': mixingOutlook,
  'mixing-reasons': mixingReasons,
  'mixing-trials': mixingTrials,
  'mixing-warmth': mixingWarmth,
  'mixing-work': mixingWork,
  totals,
  notation,
  hover,
  standing,
  actions,
  editing,
  amounts,
  'section-lines': sectionLines,
  calibration,
  experiments,
  plans,
  'food-sources': foodSources,
  paragraphs,
  asked,
  cautions,
  charts,
  panel,
  'plan-sheets': planSheets,
  'sheet-heads': sheetHeads,
  'sheet-work': sheetWork,
  'command-check': commandCheck,
  'command-files': commandFiles,
  'command-git': commandGit,
  'command-totals': commandTotals,
  'comparison-page': comparisonPage,
  session,
};

/** German; a blank that does not break stands before the percent sign, and a comma before decimals (DIN 5008). */
export const german: Language = {
  ...{ tag: 'de', subjects, rulePages, rulePageWords },
  ...{ percentSign: '\u00a0%', decimalSign: 'comma', lessThan: (figure) => `weniger als ${figure}` },
};
