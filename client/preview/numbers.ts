// The sheet is written in English, so are its numbers: a browser's own locale would mix two ways on one page.
const oneDecimal = new Intl.NumberFormat('en', { maximumFractionDigits: 1, useGrouping: false });
const threeDecimals = new Intl.NumberFormat('en', { maximumFractionDigits: 3, useGrouping: false });

/** Minutes as shown: `3 min`, `2.5 min`. */
export function minutesText(minutes: number): string {
  return `${oneDecimal.format(minutes)} min`;
}

/** A mass in grams as the kilograms of an input: `21.434`. */
export function kilogramsText(grams: number): string {
  return threeDecimals.format(grams / gramsPerKilogram);
}

/** A count as an input shows it. */
export function countText(count: number): string {
  return threeDecimals.format(count);
}

/** Grams of a mass that was typed in kilograms. */
export function gramsOfKilograms(kilograms: number): number {
  return kilograms * gramsPerKilogram;
}

const gramsPerKilogram = 1000;

/** A temperature or a scale step as an input shows it: `21.5`. */
export function figureText(figure: number): string {
  return threeDecimals.format(figure);
}

/** Time that runs, as a kitchen clock shows it: `2:05`, `1:15:00`; what is over counts up from `0:00`. */
export function clockText(seconds: number): string {
  const whole = Math.floor(Math.abs(seconds));
  const two = (number: number) => String(number).padStart(2, '0');
  const hours = Math.floor(whole / 3600);
  const minutes = Math.floor((whole % 3600) / 60);
  return hours > 0 ? `${hours}:${two(minutes)}:${two(whole % 60)}` : `${minutes}:${two(whole % 60)}`;
}
