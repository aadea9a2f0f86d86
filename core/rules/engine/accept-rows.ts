import type { Rule } from './rule.ts';

/** What is said of `# accept` itself; found by the pass over all rules, which alone knows what was silenced. */
export const acceptRows: readonly Rule[] = [
  {
    code: 'unused-accept',
    level: 'warning',
    title: 'An accept that silences nothing',
    explanation:
      '`# accept CODE: reason` silences one finding on its own line, or on the line below where it stands alone. Here there is none of that code: ' +
      'its cause is gone, or it stands on the wrong line. An error in how a line is written cannot be accepted. The header of a formula, flour or mixer takes it at its own end, not from above.',
    bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%  # accept salt-range: for the crust\n',
    good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  9%  # accept salt-range: for the crust\n',
  },
  {
    code: 'unknown-accept',
    level: 'warning',
    mendsSlips: true,
    title: 'An accept of a finding that nobody makes',
    explanation:
      'The word behind `accept` is the code of a finding, as the editor and `doughwright check` show it beside the message.',
    bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  9%  # accept salt-rang: for the crust\n',
    good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  9%  # accept salt-range: for the crust\n',
  },
];
