import { describe, expect, it } from 'vitest';
import type { ExperimentView, Service } from '../../core/index.ts';
import { openedAt } from './opened.ts';

// A friction factor is no constant of a machine: it holds for the time it was taken over. Common practice, no source.
const uri = 'file:///quay-lane/friction.dough';

const opened = (text: string): Service => openedAt(uri, text);

const kitchen =
  'bakery Quay Lane:\n  room 24 °C\n  flour 22 °C\n  tap water 16 °C\n\nmixer quay spiral:\n  kind spiral\n  speed 1 100 rpm\n  speed 2 200 rpm\n  friction 12 °C\n\n';
const formula =
  'formula Sea White:\n  yield 2 kg\n  bread flour  100%\n  water  62%, at 16 °C\n  salt  2%\n\nmix in quay spiral:\n  load all\n  speed 2 for 8 min\n\n';
const tables = (...doughs: string[]): string =>
  `experiment Tables:\n${doughs.map((one) => `  dough Sea White${one}\n`).join('')}  read at 2 min, 4 min, 8 min, 30 min, 60 min\n`;

const celsiusOf = ({ doughs }: ExperimentView, dough: number): (number | undefined)[] =>
  doughs[dough]!.readings.map(({ celsius }) => celsius);

describe('a mixer with a friction factor', () => {
  const service = opened(kitchen + formula + tables('', ', speed 2 for 60 min', ', speed 1 for 8 min'));
  const view = service.experiments(uri)[0]!;

  it('warms the formula’s own programme by it, little by little, to where its sheet ends', () => {
    const [two, four, eight] = celsiusOf(view, 0);
    expect(eight).toBeCloseTo(service.totals(uri)[0]!.mixing!.endCelsius!, 6);
    expect(eight! - four!).toBeGreaterThan(0.5);
    expect(four! - two!).toBeGreaterThan(0.5);
  });

  it('is as warm at a minute however long it then runs, and warmer the longer it runs', () => {
    const [own, long] = [celsiusOf(view, 0), celsiusOf(view, 1)];
    for (const index of [0, 1, 2]) expect(long[index]).toBeCloseTo(own[index]!, 6);
    expect(long[3]! - long[2]!).toBeGreaterThan(2);
    expect(long[4]!).toBeGreaterThan(long[3]!);
  });

  it('warms less at a slower speed', () => {
    expect(celsiusOf(view, 2)[2]!).toBeLessThan(celsiusOf(view, 0)[2]! - 0.5);
    const rows = service.map(uri, service.lines(uri).indexOf('formula Sea White:'), { against: 'speed' })!
      .data!.rows;
    const atSpeed = (speed: number) => rows.find(({ value }) => value === speed)?.tooWarmMinutes;
    expect(atSpeed(1) ?? Number.POSITIVE_INFINITY).toBeGreaterThan(atSpeed(2)!);
  });

  it('learns no factor from a trial of an hour, and one from a trial of its own programme', () => {
    const lessons = (work: string, minutes: number): string => {
      const trial = `trial 2026-09-03:\n  experiment Tables\n  room 24 °C\n  flour 22 °C\n  water 16 °C\n  mixed in quay spiral\n  load all\n  ${work}\n  at ${minutes / 4} min  24 °C\n  at ${minutes / 2} min  26 °C\n  end  28 °C\n\n`;
      const made = opened(kitchen + formula + trial + tables('', ', speed 2 for 60 min')).experiments(
        uri,
      )[0]!;
      return made.lessons.join('\n');
    };
    expect(lessons('speed 2 for 60 min', 60)).not.toContain('friction factor');
    expect(lessons('speed 2 for 8 min', 8)).toContain('the friction factor');
  });

  it('stands for no more than a well developed dough where the formula itself is worked far beyond that, and says how little it then knows', () => {
    const ends = (minutes: number, mixer = kitchen) => {
      const text = mixer + formula.replace('for 8 min', `for ${minutes} min`);
      const view = opened(`${text}experiment Tables:\n  dough Sea White\n  read at ${minutes} min\n`);
      const { celsius, bandCelsius } = view.experiments(uri)[0]!.doughs[0]!.readings[0]!;
      expect(celsius).toBeCloseTo(view.totals(uri)[0]!.mixing!.endCelsius!, 6);
      return { celsius: celsius!, band: bandCelsius! };
    };
    const plain = kitchen.replace('  friction 12 °C\n', '');
    const [usual, long, longer] = [ends(5), ends(25), ends(35)];
    expect(ends(4).celsius).toBeCloseTo(usual.celsius, 0);
    expect(long.celsius).toBeGreaterThan(usual.celsius + 2);
    expect(longer.celsius).toBeGreaterThan(long.celsius + 0.5);
    expect(long.band).toBeGreaterThan(1);
    expect(usual.band).toBeLessThan(ends(5, plain).band);
  });
});
