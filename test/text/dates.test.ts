import { expect, it } from 'vitest';
import { scanQuantity } from '../../core/syntax/quantity.ts';
import { daysOf, isoOf } from '../../core/text/dates.ts';

// Gregorian years (ISO 8601:2004, 3.2.1, from memory): those that four divides are leap years, but of full centuries those alone that 400 divides.
const lasts = [
  ['1900-02-29', false],
  ['2000-02-29', true],
  ['2023-02-29', false],
  ['2024-02-29', true],
  ['2100-02-29', false],
  ['2400-02-29', true],
  ['2024-02-30', false],
  ['2024-04-30', true],
  ['2024-04-31', false],
  ['2024-12-31', true],
  ['2024-13-01', false],
  ['2024-00-10', false],
  ['2024-05-00', false],
] as const;

it.each(lasts)('%s is a day: %s', (iso, isDay) => {
  expect(daysOf(iso) !== undefined).toBe(isDay);
  expect(scanQuantity(iso, 0)?.kind === 'date').toBe(isDay);
});

it('counts the days as the calendar of the language does, there and back', () => {
  for (let year = 1896; year <= 2404; year++)
    for (let month = 0; month < 12; month++) {
      const days = Date.UTC(year, month, 1 + ((year * 7 + month) % 28)) / 86_400_000;
      const iso = new Date(days * 86_400_000).toISOString().slice(0, 10);
      expect(daysOf(iso)).toBe(days);
      expect(isoOf(days)).toBe(iso);
    }
});
