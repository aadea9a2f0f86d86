import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createService, type FormulaTotals } from '../../core/index.ts';
import { edited } from './apply.ts';

/**
 * The figure of a hint written into its line, rounded as a baker writes it: the overall formula stays the same but for that
 * rounding, half a percent of each ingredient at most.
 */
const share = (least: number, most: number) =>
  fc.double({ min: least, max: most, noNaN: true }).map((value) => `${Number(value.toFixed(2))}%`);
const grams = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((value) => `${value} g`);

const card = fc.record({
  scale: fc.constantFrom('', 'yield 12 pieces of 500 g', 'yield 21 kg', 'yield from 7 kg flour'),
  rye: fc.integer({ min: 1, max: 40 }),
  balance: fc.boolean(),
  water: fc.oneof(
    share(55, 90),
    grams(300, 900),
    share(60, 90).map((one) => `to ${one} hydration`),
  ),
  salt: fc.oneof(share(1, 3), grams(5, 30)),
  egg: fc.option(fc.constantFrom('1 piece', '2 pieces')),
  sugar: fc.option(fc.constantFrom('2 tbsp', '5%', '40 g')),
  levain: fc.option(share(5, 50)),
  poolish: fc.boolean(),
  topping: fc.constantFrom('', '  sesame seeds  5 g a piece', '  sesame seeds  200 g'),
});

function textOf(one: typeof card extends fc.Arbitrary<infer T> ? T : never): string {
  return [
    'formula Quay Tin:',
    ...(one.scale === '' ? [] : [`  ${one.scale}`]),
    `  medium rye  ${one.rye}%`,
    `  strong white  ${one.balance ? 'balance' : `${100 - one.rye}%`}`,
    `  water  ${one.water}`,
    `  salt  ${one.salt}`,
    ...(one.egg === null ? [] : [`  egg  ${one.egg}`]),
    ...(one.sugar === null ? [] : [`  sugar  ${one.sugar}`]),
    ...(one.levain === null
      ? []
      : [`  levain  ${one.levain}`, 'preferment levain:', '  strong white  1000 g', '  water  80%']),
    ...(one.poolish
      ? ['preferment poolish:', '  draws 20% of flour', '  strong white  100%', '  water  100%']
      : []),
    ...(one.topping === '' ? [] : ['topping crust:', one.topping]),
    '',
  ].join('\n');
}

const uri = 'file:///quay/f.dough';
const service = createService();

function stateOf(text: string): { totals: FormulaTotals; wrong: string[] } {
  service.setText(uri, text);
  const wrong = service.findings(uri).filter(({ level }) => level === 'error' || level === 'warning');
  return { totals: service.totals(uri)[0]!, wrong: wrong.map(({ code }) => code).sort() };
}

function expectNear(now: number | undefined, before: number | undefined, where: string): void {
  if (before === undefined) expect(now, where).toBeUndefined();
  else expect(Math.abs(now! / before - 1), where).toBeLessThanOrEqual(0.0051);
}

describe('the figure of a hint, written into its line', () => {
  it('leaves the overall formula as it was but for the rounding, and nothing new is found', () => {
    let done = 0;
    let rounded = 0;
    const kinds = new Set<string>();
    fc.assert(
      fc.property(card, (one) => {
        const text = textOf(one);
        const before = stateOf(text);
        for (const [line, words] of text.split('\n').entries()) {
          service.setText(uri, text);
          const edits = service.hintDetail(uri, line)?.edits;
          if (edits === undefined) continue;
          const after = edited(text, edits);
          const where = `line ${line}\n${text}\n--- makes\n${after}`;
          expect(
            after.split('\n').filter((now, at) => now !== text.split('\n')[at]),
            where,
          ).toHaveLength(1);
          // No baker weighs or reckons with five figures; ten are written where fewer would change the formula.
          const [, written = ''] =
            /(\d[\d.]*)(?:%| g| kg)/.exec(after.split('\n')[line]!.replace(/^\s*to /, '')) ?? [];
          if (written.replace(/^0\.0*|\./g, '').length <= 5) rounded++;
          const now = stateOf(after);
          // What is found of a formula that is out of all order may hide, or uncover, another finding.
          if (before.wrong.length === 0) expect(now.wrong, where).toEqual([]);
          expect(now.totals.overall.length, where).toBe(before.totals.overall.length);
          for (const row of before.totals.overall) {
            const same = now.totals.overall.find(({ name }) => name === row.name)!;
            expectNear(same.fraction, row.fraction, where);
            if (one.scale !== '') expectNear(same.grams, row.grams, where);
          }
          kinds.add(
            ['balance', 'hydration', 'tbsp', 'piece', '%', ' g'].find((kind) => words.includes(kind)) ??
              words,
          );
          done++;
        }
      }),
      { numRuns: 60 },
    );
    expect(done).toBeGreaterThan(150);
    expect(rounded / done).toBeGreaterThan(0.9);
    expect([...kinds].sort()).toEqual([' g', '%', 'balance', 'hydration', 'piece', 'tbsp']);
  }, 120_000);
});
