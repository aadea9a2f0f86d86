import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';

const base = '  bread flour  100%\n  water  65%\n  salt  2%\n';
const made = (lines: string) => `formula Quay Tin:\n${lines}`;

/** What may be wrong with a number: the file, the line (counted from 1) of the one finding, its code, and its cure. */
const cases: readonly (readonly [string, string, number, string, RegExp])[] = [
  [
    'zero flour',
    made('  bread flour  0 g\n  water  65%\n  salt  2%\n'),
    2,
    'no-flour',
    /Write how much flour/,
  ],
  [
    '0 % of flour',
    made('  bread flour  0%\n  water  65%\n  salt  2%\n'),
    2,
    'no-flour',
    /Write how much flour/,
  ],
  ['0 %', made('  bread flour  100%\n  water  65%\n  salt  0%\n'), 4, 'weighs-nothing', /Write how much/],
  [
    'negative',
    made('  bread flour  100%\n  water  65%\n  salt  -2%\n'),
    4,
    'negative-amount',
    /Take the minus sign out/,
  ],
  ['negative yield', made(`  yield -10 kg\n${base}`), 2, 'wrong-value', /cannot be negative/],
  [
    '10,000 % of water',
    made('  bread flour  100%\n  water  10000%\n  salt  2%\n'),
    3,
    'far-too-much',
    /Write 100%/,
  ],
  [
    '10,000 % of salt',
    made('  bread flour  100%\n  water  65%\n  salt  10000%\n'),
    4,
    'far-too-much',
    /Write 100%/,
  ],
  [
    '10,000 % of flour',
    made('  bread flour  10000%\n  water  65%\n  salt  2%\n'),
    2,
    'flour-not-hundred',
    /100%/,
  ],
  [
    'two balances',
    made('  bread flour  balance\n  medium rye  balance\n  water  65%\n  salt  2%\n'),
    3,
    'worked-out-twice',
    /Write an amount here, or there/,
  ],
  [
    'hydration below what milk brings',
    made('  bread flour  100%\n  water  to 30% effective hydration\n  whole milk  50%\n  salt  2%\n'),
    3,
    'wet-already',
    /Ask for more, or use less of what is wet/,
  ],
  [
    'count without piece weight',
    `ingredient plum:\n  water 80%\n\n${made(`  yield 10 kg\n${base}  plum  4 pieces\n`)}`,
    9,
    'no-piece-weight',
    /piece weight 50 g/,
  ],
  [
    'volume without density',
    `ingredient toffee:\n  water 20%\n\n${made(`  yield 10 kg\n${base}  toffee  40 ml\n`)}`,
    9,
    'no-density',
    /density 1\.03 g\/ml/,
  ],
  [
    'price without currency',
    'ingredient toffee:\n  price 3.20 per kg\n',
    2,
    'wrong-value',
    /three capitals: price 3\.20 EUR per kg/,
  ],
  [
    'price alone',
    'ingredient toffee:\n  price 3.20\n',
    2,
    'wrong-value',
    /three capitals: price 3\.20 EUR per kg/,
  ],
  [
    'remaining of what nothing sizes',
    made(
      `  yield 10 kg\n${base}  levain  remaining\n\npreferment levain:\n  bread flour  100%\n  water  100%\n`,
    ),
    6,
    'no-scale',
    /Write its percentage here, or its flour in weight/,
  ],
  [
    'a filling that nothing sizes',
    made(`  yield 10 pieces of 500 g\n${base}\nfilling plum cream:\n  sugar  100%\n  butter  50%\n`),
    7,
    'no-scale',
    /plum cream 25 g a piece/,
  ],
  [
    'a circle',
    made(
      `${base}  one  10%\n\npreferment one:\n  bread flour  100%\n  two  20%\n\npreferment two:\n  bread flour  100%\n  one  20%\n`,
    ),
    13,
    'loop',
    /one → two → one/,
  ],
  [
    'a preferment wetter than the formula',
    made(
      `  yield 10 kg\n  bread flour  100%\n  water  50%\n  salt  2%\n\npreferment pool:\n  draws 60% of flour\n  bread flour  100%\n  water  120%\n`,
    ),
    4,
    'drawn-too-much',
    /72% of the flour against 50%.*Draw less, or raise this line/,
  ],
  [
    'two hydrations',
    made('  bread flour  100%\n  water  to 60% hydration\n  tap water  to 70% hydration\n  salt  2%\n'),
    4,
    'worked-out-twice',
    /Write an amount here, or there/,
  ],
  [
    'no hydration',
    made('  bread flour  100%\n  water  to 0% hydration\n  salt  2%\n'),
    3,
    'weighs-nothing',
    /Write how much/,
  ],
  [
    'a bake loss of everything',
    made(`  yield 10 pieces of 500 g baked\n  bake loss 100%\n${base}`),
    3,
    'wrong-value',
    /Nothing is left/,
  ],
  [
    'drawing a flour that is not there',
    made(
      `  yield 10 kg\n${base}\npreferment sour:\n  draws 20% of medium rye\n  medium rye  100%\n  water  80%\n`,
    ),
    8,
    'nothing-to-draw',
    /Add one, or draw what it has/,
  ],
  [
    'flour wetter than flour can be',
    `flour dock:\n  protein 12%\n  moisture 60%\n\n${made(`  yield 10 kg\n${base.replace('bread flour', 'dock')}`)}`,
    3,
    'moist-flour',
    /Correct the number/,
  ],
  [
    'a food of more than all of it',
    `ingredient toffee:\n  fat 60%\n  protein 80%\n\n${made(`  yield 10 kg\n${base}  toffee  5%\n`)}`,
    3,
    'parts-above-whole',
    /Correct one of them/,
  ],
];

describe('a number that cannot be', () => {
  it.each(cases)('%s has one finding, on its line, with a cure', (_, text, line, code, cure) => {
    const service = createService();
    service.setText('file:///quay/tin.dough', text);
    const findings = service.findings('file:///quay/tin.dough');
    expect(findings.map((finding) => [finding.place.line + 1, finding.code])).toEqual([[line, code]]);
    expect(findings[0]!.message).toMatch(cure);
  });
});
