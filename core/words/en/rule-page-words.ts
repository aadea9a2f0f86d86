import type { RulePageWords } from '../rule-page-words.ts';

/** What stands around the words of a rule on its page. */
export const rulePageWords: RulePageWords = {
  levels: { error: 'error', warning: 'warning', info: 'information', hint: 'hint' },
  usualLevel: 'Default level',
  fires: 'It speaks of',
  silent: 'It is silent on',
  allRules: 'All rules',
  list: {
    title: 'Rules',
    text:
      'What the findings say, by their code. A finding is silenced on one line by `# accept CODE: reason` (not an error in how a line is written), ' +
      'and everywhere by the setting `doughwright.rules`, on the command line by `check --rule CODE=off`.',
    columns: ['code', 'level', 'what it finds'],
  },
};
