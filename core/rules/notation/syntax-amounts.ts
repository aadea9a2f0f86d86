import type { Rule } from '../engine/rule.ts';

const tin = 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n';
const weights = (salt: string): string =>
  `formula Quay Tin:\n  bread flour  1 kg\n  water  650 g\n  salt  ${salt}\n`;
const rich = (butter: string): string =>
  `formula Quay Tin:\n  bread flour  100%\n  water  60%\n  salt  2%\n  ${butter}\n`;
const error = 'error' as const;

/** Wording of amounts and options. An error in how a line is written cannot be accepted, only cured. */
export const syntaxOfAmounts: readonly Rule[] = [
  {
    code: 'missing-unit',
    level: error,
    title: 'A number without a unit',
    explanation: 'A bare number may be percent, grams or pieces; it is asked for and never guessed.',
    bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65\n',
    good: tin,
  },
  {
    code: 'missing-amount',
    level: error,
    title: 'An ingredient without an amount',
    explanation:
      'Write a percent of flour, a weight, a volume, pieces, `balance`, `to 69% hydration` or `remaining` behind the name.',
    bad: 'formula Quay Tin:\n  bread flour  100%\n  water\n',
    good: tin,
  },
  {
    code: 'no-amount',
    level: error,
    title: 'A quantity that is no amount',
    explanation:
      'A temperature, a time or a price says not how much. Write a percent of flour, a weight, a volume or pieces.',
    bad: 'formula Quay Tin:\n  bread flour  100%\n  water  20 °C\n',
    good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%, at 20 °C\n',
  },
  {
    code: 'amount-first',
    level: error,
    title: 'The amount before the name',
    explanation: 'The name comes first, then its amount.',
    bad: 'formula Quay Tin:\n  bread flour  100%\n  65% water\n',
    good: tin,
  },
  {
    code: 'negative-amount',
    level: error,
    title: 'An amount with a sign',
    explanation:
      'Nothing can be weighed with a minus sign, and `+5%` does not say of what it is more. An amount is all that there is of the line.',
    bad: 'formula Quay Tin:\n  bread flour  100%\n  water  -65%\n',
    good: tin,
  },
  {
    code: 'range',
    level: error,
    title: 'A range where one value is needed',
    explanation: 'Choose one end, or the middle, and keep the range in a comment.',
    bad: 'formula Quay Tin:\n  bread flour  100%\n  water  62-66%\n',
    good: 'formula Quay Tin:\n  bread flour  100%\n  water  64%  # 62 to 66\n',
  },
  {
    code: 'beyond-limit',
    level: error,
    title: 'A number beyond what a bakery can mean',
    explanation:
      'Most likely a slip of the keyboard: a bulk of ten million hours, a hundred thousand tonnes of salt. It is left out of the sums. The reference lists the limits, which are wide.',
    bad: weights('20000000 kg'),
    good: weights('20 g'),
  },
  {
    code: 'two-readings',
    level: error,
    title: 'A number that can be read two ways',
    explanation:
      'A comma or a single blank before three digits may part thousands, be a decimal sign, or part a name from its amount. Write it so that it reads one way.',
    bad: weights('1,000 g'),
    good: weights('20 g'),
  },
  {
    code: 'point-or-thousand',
    level: 'warning',
    title: 'A point before three digits',
    explanation:
      'It is read as a decimal point; in many countries it parts thousands. Write it so that nobody reads it the other way.',
    bad: weights('1.000 g'),
    good: weights('20 g'),
  },
  {
    code: 'missing-comma',
    level: error,
    title: 'A temperature without its comma',
    explanation: 'An option follows the amount after a comma: `butter 4%, at 8 °C`.',
    bad: rich('butter  4% at 8 °C'),
    good: rich('butter  4%, at 8 °C'),
  },
  {
    code: 'after-amount',
    level: error,
    title: 'Words behind the amount',
    explanation: 'Behind the amount only a comma and an option may follow. Other words go behind a `#`.',
    bad: rich('butter  4% softened'),
    good: rich('butter  4%  # softened'),
  },
  {
    code: 'unknown-option',
    level: error,
    title: 'An option that nobody knows',
    explanation:
      'After the comma an ingredient takes a temperature (`at 8 °C`), a line of a plan a time (`ready 07:15`). Other words go behind a `#`.',
    bad: rich('butter  4%, softened'),
    good: rich('butter  4%, at 18 °C'),
  },
  {
    code: 'unreadable',
    level: error,
    title: 'A character that cannot stand here',
    explanation:
      'Take it out, or put the whole name in quotes. Bullets, numbers of a list, tables, ruled lines, printed quotes and comments of other notations are told as what they are, with a fix. Lines by which git marks a merge that is not finished, and letters of a file that was not saved as UTF-8, are told as such.',
    bad: rich('butter* 4%'),
    good: rich('butter  4%'),
  },
];
