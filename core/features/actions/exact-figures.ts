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

function shortest(value: number): string {
  for (let places = 0; places < 15; places++) {
    const text = trimmed(value, places);
    if (Math.abs(Number(text) - value) <= closeness * Math.abs(value)) return text;
  }
  return trimmed(value, 15);
}
