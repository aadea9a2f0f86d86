import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { mapAxes } from '../../core/analysis/map-axis.ts';
import { doughZones, zoneAt, zoneOf } from '../../core/calc/mixing/dough-zone.ts';
import { gridOf } from '../../core/facts/gap-grid.ts';
import { type GapMap, type GapRow, gapMap, type MapRequest } from '../../core/facts/gap-map.ts';
import { kitchen } from '../kitchens/kitchens.ts';
import { contextsOf, workspaceOf } from '../rules/findings.ts';
import { inWords } from '../words/told.ts';

function contextOf(text: string) {
  const found = contextsOf(workspaceOf([{ path: 'a.dough', text }]), 'a.dough').find(
    ({ context }) => context.analysis !== undefined,
  );
  return { analysis: found!.context.analysis!, scope: found!.context.scope };
}

function mapped(text: string, asked: MapRequest = {}) {
  const { analysis, scope } = contextOf(text);
  return gapMap(analysis, scope, asked);
}

function mapOf(text: string, asked: MapRequest = {}): GapMap {
  const map = mapped(text, asked);
  if (!map.known) throw new Error(inWords(map.reason));
  return map.value;
}

function whyNone(text: string, asked: MapRequest = {}): string | undefined {
  const map = mapped(text, asked);
  return map.known ? undefined : map.reason.code;
}

function own({ rows }: GapMap): GapRow {
  return rows.find(({ isOwn }) => isOwn)!;
}

function formula(flour: string, waterPercent: number, programme: readonly string[], mixer = 'in spiral') {
  return [
    'bakery Quay Lane:',
    '  room 22 °C',
    '  flour 20 °C',
    '  tap water 14 °C',
    '',
    'formula Quay Tin:',
    '  yield 30 kg',
    '  dough temperature 25 °C',
    `  ${flour}  100%`,
    `  water  ${waterPercent}%`,
    '  salt  2%',
    '',
    `mix ${mixer}:`,
    `  load ${flour}, water, salt`,
    ...programme.map((line) => `  ${line}`),
    '',
  ].join('\n');
}

const spiral = ['speed 1 for 4 min', 'speed 2 for 5 min'];
const kitchens = Array.from({ length: 24 }, (_, seed) =>
  (['plausible', 'absurd'] as const).map((kind) => ({ name: `${kind} ${seed}`, text: kitchen(seed, kind) })),
).flat();

/** All maps of the made-up kitchens that there are. */
const kitchenMaps = kitchens.flatMap(({ name, text }) => {
  const { analysis, scope } = contextOf(text);
  return mapAxes.flatMap((against) => {
    const map = gapMap(analysis, scope, { against });
    return map.known && analysis.doughMix.known
      ? [{ name: `${name} ${against}`, text, map: map.value, mix: analysis.doughMix.value }]
      : [];
  });
});

describe('the mark of a map', () => {
  it('is what the outlook of the formula says, in any kitchen and on any axis', () => {
    let count = 0;
    for (const { name, map, mix } of kitchenMaps) {
      const { outcome } = mix;
      expect(outcome.stage, name).toEqual({ ...outcome.stage, known: true, value: map.mark.stage });
      expect(map.mark.zone, name).toBe(zoneOf(map.mark.stage));
      expect(map.mark.minutes, name).toBe(outcome.programmeMinutes);
      const row = own(map);
      const moments = [row.developed, row.letDown, row.breakdown].map((band) => band?.expected ?? -1);
      // At the very moment of a crossing rounding may put it on either side.
      if (moments.every((minutes) => Math.abs(minutes - map.mark.minutes) > 1e-6))
        expect(zoneAt(row.outcome, map.mark.minutes), name).toBe(map.mark.zone);
      count++;
    }
    expect(count).toBeGreaterThan(90);
  });

  it('stands on a row whose too-warm minute is the one of the outlook', () => {
    for (const { name, map, mix } of kitchenMaps) {
      const { limitAfter } = mix.outcome;
      expect(own(map).tooWarmMinutes, name).toBe(limitAfter.known ? limitAfter.value.minutes : undefined);
      if (!limitAfter.known || limitAfter.value.minutes <= 0) continue;
      const { points, programmeMinutes } = mix.outcome;
      // The grid is too warm on the one side of that minute and not on the other, where no addition cools it in between.
      const { minutes, atLastSpeed } = limitAfter.value;
      const cells = gridOf({ ...map, lastMinute: minutes + 1 }, own(map), 1000);
      expect(cells.at(-1)!.isTooWarm || (!atLastSpeed && minutes + 1 > programmeMinutes), name).toBe(true);
      expect(points.length, name).toBeGreaterThan(0);
    }
  });
});

describe('the rows of a map', () => {
  it('are the formula with so much water, whoever writes it into the file', () => {
    let count = 0;
    for (const { name, text, map } of kitchenMaps.filter((one) => one.map.against === 'water')) {
      if (count > 40) break;
      const row = map.rows[count % map.rows.length]!;
      const [, writtenPercent] = /^ {2}water {2}([\d.]+)%/m.exec(text)!;
      const written = Number(writtenPercent) / 100 + (row.value - own(map).value) * shareOfDough(text);
      const changed = mapOf(text.replace(/^( {2}water {2})[\d.]+%/m, `$1${written * 100}%`));
      const there = own(changed);
      expect(there.value, name).toBeCloseTo(row.value, 9);
      for (const moment of ['developed', 'letDown', 'breakdown'] as const)
        expect(there[moment]?.expected ?? -1, `${name} ${moment}`).toBeCloseTo(
          row[moment]?.expected ?? -1,
          5,
        );
      expect(there.tooWarmMinutes ?? -1, name).toBeCloseTo(row.tooWarmMinutes ?? -1, 5);
      count++;
    }
    expect(count).toBeGreaterThan(20);
  });

  it('are the formula with the flours so shared, whoever writes them into the file', () => {
    const text = formula('bread flour', 66, spiral);
    const map = mapOf(text, { against: 'flour', flour: 'wholemeal wheat' });
    const row = map.rows[13]!;
    const mixed = text
      .replace(
        '  bread flour  100%',
        `  bread flour  ${(1 - row.value) * 100}%\n  wholemeal wheat  ${row.value * 100}%`,
      )
      .replace('load bread flour', 'load bread flour, wholemeal wheat');
    const there = mapOf(mixed, { against: 'flour' });
    expect(there.flours).toEqual(['bread flour', 'wholemeal wheat']);
    expect(own(there).value).toBeCloseTo(row.value, 9);
    expect(own(there).letDown!.expected).toBeCloseTo(row.letDown!.expected, 6);
    expect(own(there).tooWarmMinutes).toBeCloseTo(row.tooWarmMinutes!, 6);
    // And all of the way it is the other flour alone.
    const whole = own(mapOf(formula('wholemeal wheat', 66, spiral)));
    expect(map.rows.at(-1)!.value).toBe(1);
    expect(map.rows.at(-1)!.letDown!.expected).toBeCloseTo(whole.letDown!.expected, 9);
  });

  it('are the programme with its last line at another speed', () => {
    const map = mapOf(formula('bread flour', 66, spiral), { against: 'speed' });
    const slow = own(mapOf(formula('bread flour', 66, ['speed 1 for 4 min', 'speed 1 for 5 min'])));
    expect(map.rows.map(({ value }) => value)).toEqual([1, 2]);
    expect(map.rows[0]!.letDown!.expected).toBeCloseTo(slow.letDown!.expected, 9);
  });

  it('go from not yet to broken and never back, and no dough of a map is colder than ice or hotter than a dough', () => {
    for (const { name, map } of kitchenMaps)
      for (const row of map.rows) {
        let zone = 0;
        for (const cell of gridOf(map, row, 40)) {
          const next = doughZones.indexOf(cell.zone!);
          expect(next, name).toBeGreaterThanOrEqual(zone);
          zone = next;
          expect(cell.celsius ?? 20, name).toBeGreaterThanOrEqual(0);
          expect(cell.celsius ?? 20, name).toBeLessThanOrEqual(45);
        }
      }
  });

  it('never let a wetter dough have the wider gap by more than its cooler water explains, nor a faster speed', () => {
    for (const { name, map } of kitchenMaps.filter((one) => one.map.against !== 'flour'))
      for (const [index, row] of map.rows.entries()) {
        const before = map.rows[index - 1];
        if (before?.gapMinutes === undefined || row.gapMinutes === undefined) continue;
        const most = map.against === 'speed' ? 1.001 : 1.03;
        expect(row.gapMinutes, `${name} at ${row.value}`).toBeLessThan(before.gapMinutes * most + 1e-6);
      }
  });
});

describe('what the map teaches', () => {
  // Common practice, no source: strong white flour at modest water forgives minutes, wholemeal, weak and very wet doughs do not.
  const gap = (flour: string, water: number): number => own(mapOf(formula(flour, water, spiral))).gapMinutes!;

  it('is wide for strong white flour and narrow for wholemeal, for weak flour, and for a very wet dough', () => {
    const strong = gap('very strong flour', 62);
    expect(strong).toBeGreaterThan(1.5 * gap('wholemeal wheat', 75));
    expect(strong).toBeGreaterThan(3 * gap('soft white flour', 58));
    expect(strong).toBeGreaterThan(1.2 * gap('very strong flour', 85));
  });

  it('is wider at the slow speed than at the fast one, and a warm dough is the nearer danger for strong white', () => {
    const [slow, fast] = mapOf(formula('very strong flour', 62, spiral), { against: 'speed' }).rows;
    expect(slow!.gapMinutes!).toBeGreaterThan(2 * fast!.gapMinutes!);
    expect(fast!.tooWarmMinutes!).toBeLessThan(fast!.letDown!.expected);
  });

  it.each(practiceRows())('says of $title what practice does', ({ text, letDown, developed, stage }) => {
    const map = mapOf(text);
    const row = own(map);
    expect(stage ?? [map.mark.stage]).toContain(map.mark.stage);
    if (letDown !== undefined) expect(within(row.letDown!.expected, letDown)).toBe(true);
    if (developed !== undefined) expect(within(row.developed!.expected, developed)).toBe(true);
  });
});

describe('a map that cannot be drawn', () => {
  const plain = formula('bread flour', 66, spiral);

  it('says what is missing', () => {
    expect(whyNone(formula('medium rye', 75, spiral))).toBe('flour.mostly-rye');
    expect(whyNone(plain.slice(0, plain.indexOf('mix in')))).toBe('mixing.no-programme');
    expect(whyNone(formula('bread flour', 66, spiral, 'in harbour mixer'))).toBe('mixing.no-mixer');
    expect(whyNone(formula('bread flour', 66, []))).toBe('map.no-work');
    expect(whyNone(formula('bread flour', 66, ['rest 20 min']))).toBe('map.no-work');
    expect(
      whyNone(
        plain.replace(/^ {2}water .*$/m, '  whole milk  66%').replace('water, salt', 'whole milk, salt'),
      ),
    ).toBe('map.no-water');
    expect(whyNone(formula('bread flour', 66, ['knead 10 min'], 'by hand'), { against: 'speed' })).toBe(
      'map.no-speeds',
    );
    expect(whyNone(plain, { against: 'flour', flour: 'harbour dust' })).toBe('map.flour-not-found');
    expect(whyNone(plain, { against: 'flour', flour: 'bread flour' })).toBe('map.flour-same');
  });

  it('leaves out the rows of which it knows nothing, and says so', () => {
    const map = mapOf(plain, { against: 'flour', flour: 'medium rye' });
    expect(map.rows.at(-1)!.value).toBeGreaterThan(0.3);
    expect(map.rows.at(-1)!.value).toBeLessThanOrEqual(0.4);
    expect(map.notes.map(({ code }) => code)).toContain('map.rows-left-out');
  });

  it('is drawn by hand too, where it goes on for long', () => {
    const map = mapOf(formula('bread flour', 66, ['knead 12 min'], 'by hand'));
    expect(map.rows.length).toBeGreaterThan(30);
    expect(own(map).letDown!.expected).toBeGreaterThan(3 * own(map).developed!.expected);
  });
});

describe('readings of trials on a map', () => {
  const trial = (lines: readonly string[]): string =>
    `${formula('bread flour', 66, spiral)}\ntrial 2026-05-02:\n${lines.map((line) => `  ${line}`).join('\n')}\n`;

  it('stand at the water that they had, also past the end of the programme where the last speed ran on', () => {
    const map = mapOf(
      trial([
        'water 14 °C',
        'water 13.5 kg',
        'mixed in spiral',
        'load bread flour, water, salt',
        'speed 1 for 4 min',
        'speed 2 for 20 min',
        'at 12 min 29 °C, developed',
        'at 24 min 36 °C, breakdown',
      ]),
    );
    expect(map.trials.map(({ minutes }) => minutes)).toEqual([12, 24]);
    expect(map.lastMinute).toBeGreaterThanOrEqual(24);
    const flourGrams = 30_000 / 1.68;
    expect(map.trials[0]!.value).toBeCloseTo(13_500 / flourGrams, 6);
  });

  it('are left out where another programme was run', () => {
    const map = mapOf(
      trial([
        'water 14 °C',
        'mixed in spiral',
        'load bread flour, water, salt',
        'speed 2 for 9 min',
        'at 6 min 27 °C',
      ]),
    );
    expect(map.trials).toEqual([]);
  });
});

/** How much a percent of the water line is of the formula’s hydration: flour of a poolish is flour of the formula too. */
function shareOfDough(text: string): number {
  const at = (percent: number): number =>
    own(mapOf(text.replace(/^( {2}water {2})[\d.]+%/m, `$1${percent}%`))).value;
  return 0.1 / (at(70) - at(60));
}

interface Practice {
  readonly title: string;
  readonly text: string;
  readonly expect: {
    readonly stage?: readonly string[];
    readonly letDown?: readonly [number, number];
    readonly developed?: readonly [number, number];
  };
}

/** What practice expects of thirty programmes; common practice, no source. */
function practiceRows() {
  const file = new URL('./mixing-practice.json', import.meta.url);
  const read: unknown = JSON.parse(readFileSync(file, 'utf8'));
  const cases = (Array.isArray(read) ? read : (read as { cases: Practice[] }).cases) as Practice[];
  return cases
    .filter(({ text }) => mapped(text).known)
    .map(({ title, text, expect: wanted }) => ({ title, text, ...wanted }));
}

function within(value: number, [least, most]: readonly [number, number]): boolean {
  return value >= least && value <= most;
}
