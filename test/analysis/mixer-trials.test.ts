import { describe, expect, it } from 'vitest';
import { createService, type Service } from '../../core/index.ts';

const root = 'file:///quay-lane/';
const mixer = 'mixer hook:\n  kind spiral\n  speed 1 100 rpm\n  speed 2 200 rpm\n';

function formula(number: number, date: string, end: number): string {
  return [
    `formula Quay Tin ${number}:`,
    '  yield 20 kg',
    '  bread flour  100%',
    '  water  65%',
    '  salt  2%',
    'mix in hook:',
    '  load flour, water, salt',
    '  speed 1 for 4 min',
    `  speed 2 for ${2 + (number % 3)} min`,
    `trial ${date}:`,
    '  room 21 °C',
    '  flour 20 °C',
    '  water 14 °C',
    `  end ${end} °C`,
    '',
  ].join('\n');
}

function workspace(count: number, dateOf: (number: number) => string): Service {
  const service = createService();
  service.setRoots([root]);
  service.setText(`${root}mixers.dough`, mixer);
  for (let number = 0; number < count; number++)
    service.setText(
      `${root}${number}.dough`,
      formula(number, dateOf(number), dateOf(number) < '2025' ? 40 : 24 + (number % 3)),
    );
  return service;
}

const told = (service: Service): string =>
  service.findings(`${root}mixers.dough`).find(({ code }) => code === 'mixer-can-be-calibrated')?.message ??
  '';

describe('a mixer with very many trials', () => {
  const date = (number: number): string =>
    number < 60
      ? `2024-03-${String(1 + (number % 28)).padStart(2, '0')}`
      : `2026-03-${String(1 + (number % 28)).padStart(2, '0')}`;

  it('is calibrated from its newest forty: what it did years ago no longer counts', () => {
    const newest = told(workspace(100, date));
    expect(newest).toContain('from 40 readings of 40 formulas, of its newest 40 trials');
    // Of the older trials, which ended 15 °C warmer, not one counts: the fit misses the readings by little.
    const [, left] = /calibrated by (\d+(?:\.\d)?) °C/.exec(newest)!;
    expect(Number(left)).toBeLessThan(1);
  });

  it('counts all trials where there are no more', () => {
    expect(told(workspace(12, () => '2026-03-01'))).toContain('from 12 readings of 12 formulas.');
  });
});
