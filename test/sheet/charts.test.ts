import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createService, type SheetOptions } from '../../core/index.ts';
import { escaped } from '../../core/sheet/charts/svg.ts';
import { spread } from '../../core/sheet/charts/text-fit.ts';
import { drawnTexts, layoutFaults, strangeParts } from './drawings.ts';
import { partsOf } from './parts.ts';

type Sheet = ReturnType<typeof partsOf>;

const examples = join(import.meta.dirname, '..', '..', 'examples');
const clock: SheetOptions = { clock: { by: 'ready', minutes: 700 } };

describe('the charts of the demo bakery', () => {
  const formulas = readdirSync(join(examples, 'formulas')).map(
    (name) => /^formula (.+):/m.exec(readFileSync(join(examples, 'formulas', name), 'utf8'))![1]!,
  );

  for (const formula of formulas) {
    it(`${formula}: both, and nothing in them stands on anything else`, () => {
      for (const asked of [{}, clock]) {
        const { charts } = demo(formula, asked);
        expect(charts.map(({ name }) => name)).toEqual(['mixing-chart', 'composition-chart']);
        expect(faults(charts)).toEqual([]);
      }
    });
  }

  it('say what the sheet says: the dough at the end of mixing, and how long it takes', () => {
    const { charts, mixing } = demo('Ferry Loaf');
    const chart = charts.find(({ name }) => name === 'mixing-chart')!;
    const { name, cells } = mixing!.rows.at(-1)!;
    const [celsius, stage] = [cells.celsius!.text, cells.stage!.text];
    const row = chart.table.rows.findLast(([, what]) => what === `end of ${name}`)!;
    expect(row[0]).toBe(String(cells.until!.minutes));
    expect(row[2]).toContain(celsius);
    expect(row[4]).toBe(stage);
    expect(texts(chart.wide)).toContain(`${celsius} ± `);
    expect(texts(chart.narrow)).toContain(`you stop ${cells.until!.text}`);
  });

  it('draw the course of the temperature where its axis says it is', () => {
    const { charts } = demo('Slack Water Brown');
    const chart = charts.find(({ name }) => name === 'mixing-chart')!;
    for (const svg of [chart.narrow, chart.wide]) {
      const ticks = [...svg.matchAll(/<text [^>]*y="([^"]+)"[^>]*text-anchor="end">([\d.]+) °C</g)];
      expect(ticks.length).toBeGreaterThan(2);
      const [low, high] = [ticks[0]!, ticks.at(-1)!].map(([, y, celsius]) => ({
        y: Number(y),
        celsius: Number(celsius),
      }));
      const points = /<polyline points="([^"]+)"[^>]*class="course"/.exec(svg)![1]!.split(' ');
      const y = Number(points.at(-1)!.split(',')[1]) + textMiddle;
      const drawn = low!.celsius + ((y - low!.y) / (high!.y - low!.y)) * (high!.celsius - low!.celsius);
      const told = chart.table.rows.findLast(([, what]) => what!.startsWith('end of'))![2]!;
      expect(drawn).toBeCloseTo(Number.parseFloat(told), 0);
      expect(Math.abs(drawn - Number.parseFloat(told))).toBeLessThan(0.15);
    }
  });

  it('mark every reading of the trials, and tell each in the table', () => {
    const { charts, trials } = demo('Slipway Hearth');
    const chart = charts.find(({ name }) => name === 'mixing-chart')!;
    const readings = trials.flatMap((trial) => trial.rows);
    expect(readings).toHaveLength(7);
    const told = chart.table.rows.filter(([, what]) => what!.startsWith('measured'));
    expect(told.map((row) => row[2]).sort()).toEqual(
      readings.map(({ cells }) => cells.measured!.text.replace(/ [a-z-]+$/, '')).sort(),
    );
    const signs = (chart.wide.match(/<(?:circle|rect)[^>]*stroke-width="1.8"/g) ?? []).length;
    // One more of each kind stands in the key.
    expect(signs).toBe(readings.length + trials.length);
  });

  it('shorten a long rest by a break, so that worked minutes have the room', () => {
    const { wide } = demo('Ferry Loaf').charts.find(({ name }) => name === 'mixing-chart')!;
    const bars = (kind: string) =>
      [
        ...wide.matchAll(new RegExp(`<rect x="[^"]+" y="[^"]+" width="([^"]+)"[^>]*class="${kind}"`, 'g')),
      ].map(([, width]) => Number(width));
    // 3 + 4 + 5 min of work around 20 min of rest.
    const work = bars('speed');
    expect(work).toHaveLength(3);
    expect(work[1]! / work[0]!).toBeCloseTo(4 / 3, 1);
    expect(bars('rest')[0]!).toBeLessThan(work[0]!);
  });

  it('go on dashed past the end, and draw where it is best stopped beside where it stops', () => {
    const { wide, narrow } = demo('Ferry Loaf').charts.find(({ name }) => name === 'mixing-chart')!;
    for (const svg of [wide, narrow]) {
      const [, from, to] =
        /<polyline points="([^, ]+),[^" ]+ (?:[^" ]+ )*([^, ]+),[^"]+"[^>]*class="beyond"/.exec(svg)!;
      const [, end] = /<polyline points="[^"]* ([^, ]+),[^" ]+"[^>]*class="development"/.exec(svg)!;
      expect(from).toBe(end);
      expect(Number(to)).toBeGreaterThan(Number(end));
      expect(texts(svg)).toMatch(/best stop [\d.]+ min/);
      expect(texts(svg)).toContain('you stop 32 min');
    }
  });

  it('name the minute at which a dough gets too warm, at a ring where it leaves what is wanted', () => {
    const warm = demo('Ferry Loaf', { today: { tapCelsius: 30 } });
    const { wide } = warm.charts.find(({ name }) => name === 'mixing-chart')!;
    const told = warm.glance[0]!.notes.find((note) => note.startsWith('above'))!;
    expect(told).not.toContain('if');
    expect(texts(wide)).toContain(told);
    const cool = demo('Ferry Loaf').charts.find(({ name }) => name === 'mixing-chart')!;
    expect(texts(cool.wide)).not.toContain('above');
  });

  it('set a reading off the course by as much as it was off that of its own day', () => {
    const svgOf = (asked: SheetOptions) =>
      demo('Ferry Loaf', asked).charts.find(({ name }) => name === 'mixing-chart')!.wide;
    const above = (svg: string): number => {
      const [, mark] = /<circle cx="[^"]+" cy="([^"]+)" r="4.5"/.exec(svg)!;
      const course = /<polyline points="([^"]+)"[^>]*class="course"/.exec(svg)![1]!.split(' ');
      const at = /<circle cx="([^"]+)"/.exec(svg)![1];
      const there = course.find((point) => Math.abs(Number(point.split(',')[0]) - Number(at)) < 0.5)!;
      return Number(there.split(',')[1]) - Number(mark);
    };
    // On a warmer day the course is another, and the reading is as far off it as it was off its own.
    const ticks = (svg: string): number => {
      const [one, other] = [...svg.matchAll(/y="([^"]+)"[^>]*text-anchor="end">([\d.]+) °C</g)];
      return (Number(one![1]) - Number(other![1])) / (Number(other![2]) - Number(one![2]));
    };
    const [usual, warm] = [svgOf({}), svgOf({ today: { tapCelsius: 30 } })];
    expect(above(usual) / ticks(usual)).toBeCloseTo(above(warm) / ticks(warm), 1);
  });

  it('make the parts of the bar as long as their shares, which come to the whole', () => {
    const { charts } = demo('Lantern Milk Loaf');
    const chart = charts.find(({ name }) => name === 'composition-chart')!;
    const shares = chart.table.rows.map((row) => Number.parseFloat(row[1]!));
    expect(shares.reduce((sum, one) => sum + one, 0)).toBeCloseTo(100, 0);
    const lengths = [...chart.wide.matchAll(/<rect x="[^"]+" y="2" width="([^"]+)"/g)].map(([, one]) =>
      Number(one),
    );
    const whole = lengths.reduce((sum, one) => sum + one, 0);
    const drawn = lengths.map((one) => (one / whole) * 100).sort((one, other) => other - one);
    drawn.forEach((one, index) => {
      expect(one).toBeCloseTo(shares[index]!, 0);
    });
  });

  it('are named and described for who cannot see them', () => {
    for (const { title, description, narrow, wide } of demo('Ferry Loaf').charts) {
      for (const svg of [narrow, wide]) {
        expect(svg).toMatch(/^<svg [^>]*role="img"/);
        expect(svg).toContain(`><title>${escaped(title)}</title><desc>${escaped(description)}</desc>`);
      }
    }
  });

  it('are written in the units that are set, still without standing on each other', () => {
    const { charts } = demo('Ferry Loaf', {}, true);
    expect(faults(charts)).toEqual([]);
    expect(charts[0]!.wide).toMatch(/[\d,]+ °F</);
    expect(charts[0]!.wide).not.toContain('°C');
  });
});

describe('the clock with its bars', () => {
  it('begins with the first preferment and hangs on the clock where one is asked for', () => {
    const steps = (asked: SheetOptions) => demo('Ferry Loaf', asked).moments;
    const [first] = steps({});
    expect([first!.when, first!.text, first!.lasts]).toEqual([
      ...['12 h before', 'poolish, ferment 12 h at 18 °C', '12 h'],
    ]);
    expect(first!.along.from).toBe(0);
    expect(steps(clock)[0]!.when).toBe('the evening before, 17:31');
    const last = steps(clock).at(-1)!;
    expect([last.when, last.text, last.along]).toEqual(['11:40', 'ready', { from: 1, to: 1 }]);
  });

  it('draws each step as long as it lasts, and says when a dough may have doubled', () => {
    const { moments } = demo('Lantern Milk Loaf');
    const first = moments[0]!.startSeconds;
    const whole = moments.at(-1)!.startSeconds - Math.min(0, first);
    for (const { along, seconds = 0 } of moments)
      expect(along.to - along.from).toBeCloseTo(seconds / whole, 2);
    const bulk = moments.find(({ text }) => text.startsWith('bulk'))!;
    expect(bulk.notes).toHaveLength(2);
    expect(bulk.notes![0]).toMatch(/^dough (at|from) /);
    expect(bulk.notes![1]).toMatch(/^(Doubled after about|May have doubled from|By its end grown)/);
  });
});

describe('formulas that lack something have fewer charts', () => {
  it.each([
    ['percentages alone', '  bread flour 100%\n  water 65%\n  salt 2%\n', ['composition-chart']],
    ['a single ingredient', '  bread flour 100%\n', []],
    ['nothing yet', '', []],
    ['a weight that is not known', '  bread flour 100%\n  water 65%\n  some day 3\n', []],
  ])('%s', (_, lines, kinds) => {
    expect(sheet(`formula Pilot Tin:\n${lines}`).charts.map(({ name }) => name)).toEqual(kinds);
  });

  it('tells why there is no development, where there is none', () => {
    const chart = demo('Breakwater Rye').charts[0]!;
    expect(chart.description).toContain('mix it until even');
    expect(texts(chart.narrow)).toContain('No development can be computed');
  });
});

describe('any formula', () => {
  const name = fc.oneof(
    fc.constantFrom(
      'קמח לבן',
      'دقيق القمح',
      'a <b> & c',
      'x'.repeat(60),
      'seeds & grains',
      '小麦粉',
      'Müsli',
    ),
    fc.stringMatching(/^[a-z][a-z ]{0,58}[a-z]$/),
  );
  const minutes = fc.integer({ min: 1, max: 40 });
  const phase = fc.oneof(
    fc.tuple(fc.constantFrom('speed 1 for', 'speed 2 for', 'rest'), minutes).map(([what, one]) => {
      return `  ${what} ${one} min`;
    }),
    fc.constant('  add salt'),
  );
  const step = fc.oneof(
    fc
      .tuple(fc.constantFrom('bulk', 'proof', 'retard', 'rest', 'cool'), fc.integer({ min: 1, max: 3000 }))
      .map(([what, one]) => `  ${what} ${one} min`),
    fc.constantFrom('  divide', '  bulk 3 h at 26 °C, fold at 45 min', '  bake 30 min at 230 °C, steam'),
  );
  const formula = fc.record({
    names: fc.uniqueArray(name, { minLength: 0, maxLength: 38, selector: (one) => one.toLowerCase().trim() }),
    shares: fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 38, maxLength: 38 }),
    phases: fc.array(phase, { minLength: 0, maxLength: 30 }),
    steps: fc.array(step, { minLength: 0, maxLength: 15 }),
    readings: fc.array(fc.tuple(minutes, fc.integer({ min: 5, max: 60 })), { maxLength: 6 }),
    preferment: fc.boolean(),
    asked: fc.constantFrom({}, clock),
  });

  it('has charts in which no text stands on another, nor beyond the edge', () => {
    const drawn = { 'mixing-chart': 0, 'composition-chart': 0 };
    fc.assert(
      fc.property(formula, ({ names, shares, phases, steps, readings, preferment, asked }) => {
        const text = [
          'flour odd one:\n  grain wheat\n\nformula Tide Mill:\n  yield 40 kg\n  strong white 60%\n  odd one 40%\n  water 66%\n  salt 2%\n  fresh yeast 1%',
          ...names.map((one, index) => `  "${one}" ${shares[index]}%`),
          ...(preferment
            ? [
                'preferment poolish:',
                '  draws 20% of flour',
                '  strong white 100%',
                '  water 100%',
                '  ferment 12 h',
              ]
            : []),
          'mix in spiral:',
          '  load flour, water, fresh yeast',
          ...phases,
          'process:',
          ...steps,
          ...(readings.length === 0 ? [] : ['trial 2026-05-01, warm & late:']),
          ...readings.map(([at, celsius]) => `  at ${at} min ${celsius} °C`),
        ].join('\n');
        const { charts } = sheet(text, asked, 'formula Tide Mill:');
        for (const { name } of charts) drawn[name as keyof typeof drawn]++;
        expect(faults(charts)).toEqual([]);
      }),
      { numRuns: 150 },
    );
    // Whatever was made up, most of it must have been drawn for this to say anything.
    expect(Math.min(...Object.values(drawn))).toBeGreaterThan(75);
  });
});

describe('texts', () => {
  it('are written out so that a drawing stays a drawing, whatever is in them', () => {
    expect(escaped('a <b> & "c"')).toBe('a &lt;b&gt; &amp; &quot;c&quot;');
    expect(escaped('a\u0000b\u000bc\ud800d\ufffee')).toBe('abcde');
  });

  it('in a row keep their order and their distance, as near to their places as that leaves them', () => {
    const part = fc.record({
      middle: fc.integer({ min: 0, max: 300 }),
      width: fc.integer({ min: 1, max: 40 }),
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 12 }), (parts) => {
        const wanted = [...parts].sort((one, other) => one.middle - other.middle);
        const middles = spread(wanted, 0, 300, 4);
        const all = wanted.reduce((sum, one) => sum + one.width + 4, -4);
        expect(middles === undefined).toBe(all > 300);
        if (middles === undefined) return;
        let edge = -4;
        wanted.forEach(({ width }, index) => {
          expect(middles[index]! - width / 2).toBeGreaterThanOrEqual(edge + 4 - 1e-6);
          edge = middles[index]! + width / 2;
        });
        expect(edge).toBeLessThanOrEqual(300 + 1e-6);
        // With room enough nothing moves.
        if (wanted.length === 1) {
          const [{ middle, width }] = wanted as [(typeof wanted)[number]];
          expect(middles[0]).toBeCloseTo(Math.min(Math.max(middle, width / 2), 300 - width / 2));
        }
      }),
    );
  });
});

/** How far below the middle of its tick the base of a text stands. */
const textMiddle = 15 * 0.36;

function faults(charts: Sheet['charts']): string[] {
  return charts.flatMap(({ name, narrow, middle, wide }) =>
    [narrow, ...(middle === undefined ? [] : [middle]), wide].flatMap((svg) =>
      [...layoutFaults(svg), ...strangeParts(svg)].map((fault) => `${name}: ${fault}`),
    ),
  );
}

/** All that is written in a drawing, lines that were parted put together again. */
function texts(svg: string): string {
  return drawnTexts(svg)
    .map(({ text }) => text)
    .join(' ');
}

function demo(formula: string, asked: SheetOptions = {}, fahrenheit = false): Sheet {
  const service = createService();
  if (fahrenheit)
    service.setSettings({
      display: { mass: 'ounces', temperature: 'fahrenheit', decimalSign: 'comma' },
    });
  for (const name of readdirSync(examples, { recursive: true, encoding: 'utf8' }))
    if (name.endsWith('.dough'))
      service.setText(`file:///quay-lane/${name}`, readFileSync(join(examples, name), 'utf8'));
  const entry = service.overview().find(({ name }) => name === formula)!;
  return partsOf(service.sheet(entry.uri, entry.line, asked)!);
}

function sheet(text: string, asked: SheetOptions = {}, header = 'formula'): Sheet {
  const service = createService();
  const uri = 'file:///quay-lane/one.dough';
  service.setText(uri, text);
  const line = text.split('\n').findIndex((one) => one.startsWith(header));
  return partsOf(service.sheet(uri, line, asked)!);
}
