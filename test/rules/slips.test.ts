import { describe, expect, it } from 'vitest';
import { createService } from '../../core/index.ts';

/** A formula with one of its lines written otherwise; lines count from one, the header among them. */
function tin(line: number, text: string, ...more: readonly string[]): string {
  const lines = [
    'formula Quay Tin:',
    '  yield 24 pieces of 880 g',
    '  bread flour  90%',
    '  wholemeal wheat  10%',
    '  water  66%',
    '  salt  2%',
  ];
  lines[line - 1] = text;
  return [...lines, ...more, ''].join('\n');
}
const priced = (price: string): string =>
  `ingredient dock butter:\n  like butter\n  price ${price}\n\n${tin(6, '  salt  2%')}`;
const seeded = (amount: string): string => tin(6, '  salt  2%', 'topping seeds:', `  sesame  ${amount}`);

const planned = (line: string): string =>
  tin(6, '  salt  2%', '', 'plan Friday:', '  ready 2026-05-15 06:00', `  ${line}`);

/** A slip of a tired hand: the line of the one finding, and the line as its fix writes it, or what the message tells. */
const slips: readonly (readonly [file: string, line: number, mended: string | RegExp])[] = [
  [tin(2, '  yield 24 pieces of 880 kg'), 2, '  yield 24 pieces of 880 g'],
  [tin(2, '  yield 24 pieces of 880 mg'), 2, '  yield 24 pieces of 880 g'],
  [tin(2, '  yeild 24 pieces of 880 g'), 2, '  yield 24 pieces of 880 g'],
  [tin(2, '  yield 24 loaves at 880 g'), 2, '  yield 24 loaves of 880 g'],
  [tin(2, '  yield 24 peices of 880 g'), 2, '  yield 24 pieces of 880 g'],
  [tin(2, '  yield 24 of 880 g'), 2, '  yield 24 pieces of 880 g'],
  [tin(2, '  yield 24 × 880 g'), 2, '  yield 24 pieces of 880 g'],
  [tin(2, '  yield 880 g x 24'), 2, '  yield 24 pieces of 880 g'],
  [tin(2, '  yield 24 pieces at 880 g'), 2, '  yield 24 pieces of 880 g'],
  [tin(2, '  yield 25 kg of bread flour'), 2, '  yield from 25 kg flour'],
  [tin(2, '  yield from 25 kg'), 2, '  yield from 25 kg flour'],
  [tin(2, '  yield 20 Kgs'), 2, '  yield 20 kg'],
  [tin(5, '  water  66 percent'), 5, '  water  66%'],
  [tin(5, '  water  to 66%'), 5, '  water  to 66% hydration'],
  [tin(5, '  water  to hydration'), 5, /To how much hydration\?/],
  [tin(5, '  water  66% hydration'), 5, '  water  to 66% hydration'],
  [tin(5, '  water  66%  // cold'), 5, '  water  66%  # cold'],
  [tin(5, '  water (cold)  66%'), 5, '  water  66%'],
  [tin(5, '  cold water  66%'), 5, '  water  66%'],
  [tin(5, '  water  ~66%'), 5, /“~” cannot stand here/],
  [tin(5, '  water  65 to 68%'), 5, '  water  65%'],
  [tin(5, '  water  65% to 68%'), 5, '  water  65%'],
  [tin(6, '  honey  .5%'), 6, '  honey  0.5%'],
  [tin(6, '  salt  2.%'), 6, '  salt  2%'],
  [tin(6, '  salt  2%%'), 6, '  salt  2%'],
  [tin(6, '  salt  250 gr.'), 6, '  salt  250 g'],
  [tin(6, '  honey  2 tbs'), 6, '  honey  2 tbsp'],
  [tin(6, '  salt  3 pinches'), 6, /“3 pinches” can be any weight\. Write what it weighs/],
  [tin(6, '  salt to taste'), 6, /“to taste” is not an amount\. Write how much/],
  [tin(4, '  wholemeal wheat  the rest'), 4, '  wholemeal wheat  balance'],
  [tin(6, '  3 eggs'), 6, '  eggs  3 pieces'],
  [tin(6, '  honey  1 lb 4 oz'), 6, '  honey  20 oz'],
  [tin(6, '  dough temperature 78 C'), 6, '  dough temperature 78 °F'],
  [tin(6, '  dough temp 25 °C'), 6, '  dough temperature 25 °C'],
  [`${tin(6, '  salt  2%')}bakery Quay Lane:\n  tap 12 °C\n`, 8, '  tap water 12 °C'],
  [
    tin(
      6,
      '  salt  2%',
      'preferment pool:',
      '  draws 20% of flour',
      '  bread flour  100%',
      '  water  100%',
      '  ferment overnight',
    ),
    11,
    /“ferment” reads like: ferment 12 h at 18 °C/,
  ],
  [priced('0.40 €/kg'), 3, '  price 0.40 EUR per kg'],
  [priced('£ 5.20 per kg'), 3, '  price 5.20 GBP per kg'],
  [priced('0.40 eur per kg'), 3, '  price 0.40 EUR per kg'],
  [priced('0.40 EUR/25 kg'), 3, '  price 0.40 EUR per 25 kg'],
  [priced('EUR 0.40 per kg'), 3, '  price 0.40 EUR per kg'],
  [priced('2.88 EUR per dozen'), 3, '  price 2.88 EUR per 12 pieces'],
  [priced('5.60 EUR / 2 dozen'), 3, '  price 5.60 EUR per 24 pieces'],
  [priced('16.50 EUR per bag'), 3, /How much is in a bag\? Write that: price 16.50 EUR per 25 kg/],
  [tin(2, '  yield 2 dozen of 880 g'), 2, '  yield 24 pieces of 880 g'],
  [priced('$5 per kg'), 3, /In which currency\? .* price 5 EUR per kg/],
  [planned('Quay Tin 40 loaves'), 10, '  Quay Tin 40 pieces'],
  [planned('Quay Tin 5 dozen'), 10, '  Quay Tin 60 pieces'],
  [planned('40 Quay Tin'), 10, '  Quay Tin  40 pieces'],
  [priced('5 EUR'), 3, /A price for how much\? Write: price 5 EUR per kg/],
  [seeded('3 g per piece'), 8, '  sesame  3 g a piece'],
  [seeded('3 g each'), 8, '  sesame  3 g a piece'],
  [seeded('2%'), 8, /Percent of what\? .* 3 g a piece/],
  [
    tin(6, '  salt  2%', '', 'poolish:', '  draws 20% of flour', '  bread flour  100%', '  water  100%'),
    8,
    'preferment poolish:',
  ],
  [
    tin(
      6,
      '  salt  2%',
      '',
      'preferment levain:',
      '  draws 20% of flour',
      '  bread flour  100%',
      '  starter  20%',
    ),
    11,
    '  ripe culture  20%',
  ],
  [
    tin(
      6,
      '  salt  2%',
      '',
      'preferment sour:',
      '  draws 20% of flour',
      '  medium rye  100%',
      '  water  80%',
    ),
    10,
    /no line of “medium rye”.*give it a line there/,
  ],
  [
    tin(6, '  salt  2%', '', 'soaker seeds:', '  draws all linseed', '  linseed  100%', '  water  150%'),
    9,
    /no line of “linseed” to draw from/,
  ],
  ['recipe Quay Tin:\n  bread flour  100%\n  water  65%\n', 1, 'formula Quay Tin:'],
  ['formula:\n  bread flour  100%\n  water  65%\n', 1, /Give the formula a name/],
  ['bread flour  100%\nwater  65%\nsalt  2%\n', 1, /Start one above it/],
];

it('tells a part that nothing takes also where it holds something unknown', () => {
  const service = createService();
  const part = ['soaker old bread:', '  stale bread  100%', '  water  200%'];
  service.setText('file:///quay/tin.dough', tin(6, '  salt  2%', ...part));
  expect(service.findings('file:///quay/tin.dough').map(({ code }) => code)).toEqual([
    'unused-part',
    'unknown-ingredient',
  ]);
  // Where the unknown stands in the dough it may be the name of the part.
  service.setText('file:///quay/tin.dough', tin(6, '  old breed  5%', ...part));
  expect(service.findings('file:///quay/tin.dough').map(({ code }) => code)).not.toContain('unused-part');
});

it('never takes a part for an ingredient of itself', () => {
  const service = createService();
  service.setText(
    'file:///quay/tin.dough',
    tin(6, '  salt  2%', 'topping tomato:', '  tomatoes  3 g a piece'),
  );
  const [finding, ...others] = service.findings('file:///quay/tin.dough');
  expect(others).toEqual([]);
  expect(finding!.message).toMatch(/“tomatoes” is not known: .* Define it/);
});

describe('a slip has one finding, on its line, and its cure', () => {
  it.each(slips)('%#', (text, line, mended) => {
    const service = createService();
    const uri = 'file:///quay/tin.dough';
    service.setText(uri, text);
    const found = service.findings(uri).filter(({ level }) => level !== 'hint');
    expect(found.map(({ place, message }) => [place.line + 1, message])).toEqual([
      [line, expect.any(String)],
    ]);
    const [{ message, fixes }] = found as [(typeof found)[number]];
    if (mended instanceof RegExp) {
      expect(message).toMatch(mended);
      return;
    }
    const fix = fixes.find(({ preferred }) => preferred) ?? fixes[0]!;
    const [edit, ...others] = fix.edits.flatMap(({ edits }) => edits);
    expect(others).toEqual([]);
    const { start, end, insert } = edit!;
    const lines = text.split('\n');
    const old = lines[line - 1]!;
    lines[line - 1] = old.slice(0, start) + insert + old.slice(end);
    expect(lines[line - 1]).toBe(mended);
    service.setText(uri, lines.join('\n'));
    expect(service.findings(uri).filter(({ place }) => place.line === line - 1)).toEqual([]);
  });

  it('lets stand what reads well: names with numbers, states that a file defines, and words near a property', () => {
    const service = createService();
    const uri = 'file:///quay/tin.dough';
    service.setText(
      uri,
      `ingredient cold water:\n  like water\n\ningredient fermented rice:\n  like rice flour\n\n${tin(
        5,
        '  cold water  66%',
        '  type 550 flour  1 kg',
        '  fermented rice  2%',
      )}\nflour type 550 flour:\n  like type 550\n`,
    );
    const codes = service.findings(uri).map(({ code }) => code);
    expect(codes.filter((code) => !['two-scales', 'flour-not-hundred', 'no-scale'].includes(code))).toEqual(
      [],
    );
  });
});
