import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../core/analysis/analysis.ts';
import { mixingBill } from '../../core/calc/mixing/mixing-bill.ts';
import { type HeatFacts, heatOf } from '../../core/facts/heat-of.ts';
import { differenceOf, heatLabel } from '../../core/facts/heat-words.ts';
import { type ProgrammeCurve, programmeCurve } from '../../core/facts/programme-curve.ts';
import type { Scope } from '../../core/model/scope.ts';
import { contextsOf, workspaceOf } from '../rules/findings.ts';
import { inWords } from '../words/told.ts';

/** A formula of ours with everything that brings heat: flours, preferment, butter, rests, two speeds. */
const tin = ({ tap = '4 °C', water = '', flour = '19 °C', trial = '', ice = false } = {}): string =>
  `bakery Quay Lane:\n  room 21 °C\n  flour ${flour}\n  tap water ${tap}\n${ice ? '  ice to hand\n' : ''}\n` +
  `formula Quay Tin:\n  yield 24 pieces of 880 g\n  dough temperature 25 °C\n  strong white  85%\n  wholemeal wheat  balance\n` +
  `  water  69%${water}\n  salt  2%\n  butter  4%, at 8 °C\n\npreferment poolish:\n  draws 22% of flour\n  strong white  100%\n  water  100%\n` +
  `  ferment 12 h at 18 °C\n\nmix in spiral:\n  load flour, water, poolish\n  speed 1 for 3 min\n  rest 20 min\n  add salt\n` +
  `  speed 1 for 4 min\n  speed 2 for 3 min\n  add butter\n  speed 1 for 3 min\n${trial}`;

function analysed(text: string): { analysis: Analysis; scope: Scope } {
  const contexts = contextsOf(workspaceOf([{ path: 'a.dough', text }]), 'a.dough');
  const { context } = contexts.find(({ context: one }) => one.analysis !== undefined)!;
  return { analysis: context.analysis!, scope: context.scope };
}

function factsOf(text: string): HeatFacts {
  const { doughMix } = analysed(text).analysis;
  if (!doughMix.known) throw new Error(inWords(doughMix.reason));
  return heatOf(doughMix.value);
}

const sumOf = (numbers: readonly (number | undefined)[]): number =>
  numbers.reduce((sum: number, one) => sum + (one ?? 0), 0);

describe('the bill of heat', () => {
  const cases = {
    tempered: tin(),
    'with ice': tin({ flour: '32 °C', tap: '18 °C', ice: true }),
    'water given': tin({ water: ', at 14 °C' }),
  };
  for (const [name, text] of Object.entries(cases))
    it(`closes, ${name}`, () => {
      const { bill } = factsOf(text);
      expect(bill.length).toBeGreaterThan(6);
      expect(Math.abs(sumOf(bill.map((line) => line.kilojoules)))).toBeLessThan(1e-6);
      expect(Math.abs(sumOf(bill.map((line) => line.celsius)))).toBeLessThan(1e-6);
    });

  it('names every source once', () => {
    const { bill } = factsOf(tin({ flour: '32 °C', tap: '18 °C', ice: true }));
    expect(bill.map((line) => line.source)).toEqual(
      expect.arrayContaining(['flour', 'water', 'ice', 'preferment', 'hydration', 'working', 'room']),
    );
    expect(new Set(bill.map((line) => JSON.stringify(heatLabel(line)))).size).toBe(bill.length);
    expect(bill.find((line) => line.source === 'ice')!.celsius).toBeLessThan(-1);
    expect(bill.find((line) => line.source === 'working')!.celsius).toBeGreaterThan(1);
  });

  it('is not known where a speed of the mixer is not', () => {
    const { doughMix } = analysed(tin().replace('speed 2 for 3', 'speed 5 for 3')).analysis;
    expect(doughMix.known && mixingBill(doughMix.value.input).known).toBe(false);
  });
});

describe('the rule of thumb beside the balance of heat', () => {
  for (const text of [tin(), tin({ flour: '24 °C' }), tin({ water: ', at 14 °C' })])
    it('is explained by rows that sum to the water of each', () => {
      const { comparison } = factsOf(text);
      const { rows, ruleCelsius, balanceCelsius } = comparison!;
      expect(sumOf(rows.map((row) => row.ruleCelsius))).toBeCloseTo(ruleCelsius, 9);
      expect(sumOf(rows.map((row) => row.balanceCelsius))).toBeCloseTo(balanceCelsius, 6);
      expect(rows.map((row) => row.source)).toContain('preferment');
    });

  it('counts warm flour too heavily, and says so', () => {
    const plain = tin({ flour: '29 °C' })
      .replace(/\npreferment[\s\S]*?\n\n/, '\n')
      .replace(', poolish', '');
    const { comparison } = factsOf(plain);
    expect(comparison!.ruleCelsius).toBeLessThan(comparison!.balanceCelsius - 1);
    expect(differenceOf(comparison!)).toMatchObject({
      code: 'comparison.colder-because',
      args: { reason: { code: 'comparison.because-flour' } },
    });
  });
});

describe('the inverse questions', () => {
  it('the dough with its water from the tap is the dough of that water written down', () => {
    const { fromTap } = factsOf(tin({ tap: '18 °C' }));
    const written = factsOf(tin({ water: ', at 18 °C' }));
    expect(fromTap!.tapCelsius).toBe(18);
    expect(fromTap!.doughCelsius).toBeCloseTo(written.doughCelsius!, 2);
  });

  it('ice that the file weighs in brings the cold of its melting', () => {
    const dough = (ice: string): number =>
      factsOf(
        `bakery Quay Lane:\n  room 22 °C\n  flour 22 °C\n\nformula Quay Tin:\n  yield 60 kg\n  bread flour  100%\n  water  50%, at 22 °C\n  ${ice}\n  salt  2%\n\n` +
          'mix in spiral:\n  load flour, water, ice, salt\n  speed 1 for 3 min\n',
      ).doughCelsius!;
    // 0.12 kg of ice to each kg of flour: 333.6 kJ/kg over the 4.6 kJ/K that dough of 1 kg of flour and 62 % water holds.
    const melting = (0.12 * 333.6) / 4.6;
    expect(dough('ice  12%, at 0 °C')).toBeCloseTo(dough('ice  12%'), 9);
    expect(dough('ice  12%, at 2 °C') - dough('ice  12%')).toBeGreaterThan(0.85 * melting);
    expect(dough('ice  12%, at 2 °C') - dough('ice  12%')).toBeLessThan(1.15 * melting);
    expect(dough('ice  12%, at -10 °C')).toBeLessThan(dough('ice  12%'));
  });

  it('says nothing of tap water where the dough has none', () => {
    const brioche =
      'bakery Quay Lane:\n  tap water 14 °C\n\nformula Quay Bun:\n  yield 6 kg\n  bread flour  100%\n  egg  60%\n  salt  2%\n\n' +
      'mix in spiral:\n  load flour, egg, salt\n  speed 1 for 5 min\n';
    expect(factsOf(brioche).doughCelsius).toBeDefined();
    expect(factsOf(brioche).fromTap).toBeUndefined();
  });

  it('the minutes until it is too warm are those after which the dough is', () => {
    const { tooWarm } = factsOf(tin({ water: ', at 26 °C' }));
    expect(tooWarm!.celsius).toBe(27);
    const more = tooWarm!.leftMinutes;
    expect(more).toBeGreaterThan(0);
    const longer = tin({ water: ', at 26 °C' }).replace(
      /speed 1 for 3 min\n$/,
      `speed 1 for ${3 + more} min\n`,
    );
    expect(factsOf(longer).doughCelsius!).toBeCloseTo(27, 1);
  });
});

describe('the curve of a programme', () => {
  const curveOf = (text: string): ProgrammeCurve => {
    const { analysis, scope } = analysed(text);
    return programmeCurve(analysis, scope)!;
  };

  it('runs through the ends of the lines, with the bands around it', () => {
    const { analysis, scope } = analysed(tin());
    const curve = programmeCurve(analysis, scope)!;
    if (!analysis.doughMix.known) throw new Error('no mix');
    const { outcome } = analysis.doughMix.value;
    expect(curve.programmeMinutes).toBe(33);
    for (const end of outcome.points) {
      const at = curve.points.filter((point) => Math.abs(point.minutes - end.minutes) < 1e-9);
      expect(at.some((point) => point.celsius === end.celsius)).toBe(true);
    }
    for (const [index, point] of curve.points.entries()) {
      expect(point.celsiusLow!).toBeLessThanOrEqual(point.celsius!);
      expect(point.celsiusHigh!).toBeGreaterThanOrEqual(point.celsius!);
      expect(point.developmentLow!).toBeLessThanOrEqual(point.development!);
      expect(point.minutes).toBeGreaterThanOrEqual(curve.points[index - 1]?.minutes ?? 0);
    }
    expect(curve.points.length).toBeGreaterThan(40);
    expect(curve.phases.map(({ title }) => inWords(title))).toEqual([
      'load strong white, wholemeal wheat, water and poolish',
      'speed 1',
      'rest',
      'add salt',
      'speed 1',
      'speed 2',
      'add butter',
      'speed 1',
    ]);
    expect(curve.bands.map((band) => band.kind)).toEqual(['developed', 'let-down', 'breakdown']);
    expect(JSON.parse(JSON.stringify(curve))).toEqual(curve);
  });

  it('carries the readings of the trials', () => {
    const curve = curveOf(
      tin({ trial: '\ntrial 2026-03-03, first:\n  water 20 °C\n  at 3 min 22 °C, pick-up\n  end 25.5 °C\n' }),
    );
    const { readings } = curve;
    expect(readings.map(({ offCelsius: _, ...reading }) => reading)).toEqual([
      { trial: '2026-03-03, first', minutes: 3, celsius: 22, stage: 'pick-up' },
      { trial: '2026-03-03, first', minutes: 33, celsius: 25.5 },
    ]);
    // Each as far off as it was from what is computed for its own day, which is how it is drawn.
    for (const { offCelsius } of readings) expect(Math.abs(offCelsius ?? Number.NaN)).toBeLessThan(3);
  });

  it('says why there is none of development, or of temperature', () => {
    const rye = curveOf(
      tin()
        .replace(/strong white {2}85%/, 'medium rye  85%')
        .replace(/strong white/g, 'medium rye'),
    );
    expect(rye.noDevelopment?.code).toBe('flour.mostly-rye');
    expect(rye.points.every((point) => point.development === undefined)).toBe(true);
    const unknown = curveOf(tin().replace('speed 2 for 3', 'speed 5 for 3'));
    expect(unknown.noCelsius).toEqual({ code: 'mixing.no-rpm', args: { number: 5 } });
  });
});
