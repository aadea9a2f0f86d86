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
