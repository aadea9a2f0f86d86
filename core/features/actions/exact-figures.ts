import { trimmed } from '../../text/figures.ts';

/** How far a figure that is written may be from the one meant, by its own size. */
const closeness = 1e-10;

/** A fraction as the shortest percent that reads back as the same to ten figures. */
export function exactPercent(fraction: number): string {
  return `${shortest(fraction * 100)}%`;
}

/** A mass as the shortest figure that reads back as the same to ten figures: grams to 9,999, then kilograms. */
export function exactMass(grams: number): string {
  if (grams > 9999) return `${shortest(grams / 1000)} kg`;
  const figure = shortest(grams);
  // A point before exactly three digits could be read as a thousand.
  return `${/^[1-9]\d*\.\d{3}$/.test(figure) ? `${figure}0` : figure} g`;
}

/** How far a rounded figure may be from the one meant, by its own size: less than a scale or a hand is off. */
export const roundedCloseness = 0.005;

/** A fraction as a baker writes a percent: two places, one from ten percent on. `undefined` where that says something else. */
export function roundedPercent(fraction: number): string | undefined {
  const text = trimmed(fraction * 100, fraction < 0.1 ? 2 : 1);
  return isClose(Number(text), fraction * 100) ? `${text}%` : undefined;
}

/** A mass as a baker writes it: a tenth of a gram below 100 g, grams to 9,999, then kilograms with two places. */
export function roundedMass(grams: number): string | undefined {
  const [value, places, unit] =
    grams > 9999 ? [grams / 1000, 2, 'kg'] : [grams, grams < 10 ? 2 : grams < 100 ? 1 : 0, 'g'];
  const text = trimmed(value, places);
  return isClose(Number(text), value) ? `${text} ${unit}` : undefined;
}

function isClose(written: number, value: number): boolean {
  return Math.abs(written - value) <= roundedCloseness * Math.abs(value);
}

function shortest(value: number): string {
  for (let places = 0; places < 15; places++) {
    const text = trimmed(value, places);
    if (Math.abs(Number(text) - value) <= closeness * Math.abs(value)) return text;
  }
  return trimmed(value, 15);
}
