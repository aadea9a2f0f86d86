import { plainDisplay, wordedText } from './display.ts';
import * as figures from './figures.ts';

/** The figures written out as the notation has them: in grams, °C, and with a decimal point. */
export { trimmed, warmthWord } from './figures.ts';

const plain =
  <A extends unknown[]>(words: (...args: A) => string) =>
  (...args: A): string =>
    wordedText(words(...args), plainDisplay);

export const percent = plain(figures.percent);
export const mass = plain(figures.mass);
export const degrees = plain(figures.degrees);
export const degreesWithBand = plain(figures.degreesWithBand);
export const minutes = plain(figures.minutes);
export const duration = plain(figures.duration);
export const minutesBand = plain(figures.minutesBand);

export function weighedFigure(grams: number, stepGrams: number): { figure: string; unit: string } {
  const { figure, unit } = figures.weighedFigure(grams, stepGrams);
  return { figure: wordedText(figure, plainDisplay), unit: wordedText(unit, plainDisplay) };
}
