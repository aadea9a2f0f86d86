import type { Display } from './display.ts';
import { leastWeighedGrams, trimmed, weighedPlaces } from './figures.ts';

/** Figures as a reader has asked for them: in grams or ounces, °C or °F. The decimal sign is put by who calls. */

/** NIST Handbook 44, appendix C: the avoirdupois ounce, 0.45359237 kg / 16 exactly. */
const gramsPerOunce = 28.349523125;

/** Grams up to a kilogram, then kilograms; ounces up to a pound, then pounds. What nobody weighs is `lessThan` the least. */
export function massText(
  grams: number,
  display: Display,
  lessThan: (figure: string) => string = (figure) => `less than ${figure}`,
): string {
  if (display.mass === 'ounces') {
    const all = grams / gramsPerOunce;
    const size = Math.abs(all);
    if (grams !== 0 && size < 0.005) return lessThan('0.01 oz');
    return size >= 16 ? `${trimmed(all / 16, 2)} lb` : `${trimmed(all, size < 1 ? 2 : 1)} oz`;
  }
  const size = Math.abs(grams);
  if (size > 0 && size < leastWeighedGrams) return lessThan(`${leastWeighedGrams} g`);
  return size >= 1000 ? `${trimmed(grams / 1000, 2)} kg` : `${trimmed(grams, size < 10 ? 1 : 0)} g`;
}

/** The step of a scale with as many places as it has, at most three. */
export function stepText(stepGrams: number, display: Display): string {
  return display.mass === 'ounces'
    ? `${trimmed(stepGrams / gramsPerOunce, 3)} oz`
    : `${trimmed(stepGrams, 3)} g`;
}

/** A temperature, with one place unless another number is asked for. °F = °C × 1.8 + 32, SP 811 B.9. */
export function temperatureText(celsius: number, display: Display, places = 1): string {
  return display.temperature === 'fahrenheit'
    ? `${trimmed(celsius * 1.8 + 32, places)} °F`
    : `${trimmed(celsius, places)} °C`;
}

/** By how much two temperatures differ, with one place unless another number is asked for. */
export function differenceText(celsius: number, display: Display, places = 1): string {
  return display.temperature === 'fahrenheit'
    ? `${trimmed(celsius * 1.8, places)} °F`
    : `${trimmed(celsius, places)} °C`;
}

/** A warming as the reader has asked for temperatures: from °C a minute, with at most so many places. */
export function warmingText(celsiusPerMinute: number, places: number, display: Display): string {
  return display.temperature === 'fahrenheit'
    ? `${trimmed(celsiusPerMinute * 1.8, places)} °F/min`
    : `${trimmed(celsiusPerMinute, places)} °C/min`;
}

/**
 * As weighed: grams to 9,999, then kilograms with three places; ounces to 16 with the places a scale of that step has,
 * then pounds with three.
 */
export function weighedText(
  grams: number,
  stepGrams: number,
  display: Display,
): { figure: string; unit: string } {
  if (display.mass === 'ounces') {
    const all = grams / gramsPerOunce;
    if (all >= 16) return { figure: (all / 16).toFixed(3), unit: 'lb' };
    return { figure: all.toFixed(stepGrams >= 1 ? 2 : 3), unit: 'oz' };
  }
  const { places, unit } = weighedPlaces(grams, stepGrams);
  return { figure: (unit === 'kg' ? grams / 1000 : grams).toFixed(places), unit };
}

/** As weighed among what is heavy, so that a column has one unit: kilograms or pounds with three places. */
export function heavyText(grams: number, display: Display): { figure: string; unit: string } {
  return display.mass === 'ounces'
    ? { figure: (grams / gramsPerOunce / 16).toFixed(3), unit: 'lb' }
    : { figure: (grams / 1000).toFixed(3), unit: 'kg' };
}
