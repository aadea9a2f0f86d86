import { marked, wholeDegrees } from './marked.ts';

/**
 * Figures in a baker's words: the same number reads the same in a message, a hover, a total and on the sheet. What is
 * said here carries its numbers along until it leaves the core, where `worded` writes them as the reader has asked:
 * in grams or ounces, in °C or °F, with a decimal point or comma.
 */

/** A number with at most so many places and no zeros behind, as the notation writes it: for the text of files. */
export function trimmed(value: number, places: number): string {
  const text = value.toFixed(places);
  const plain = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return plain === '-0' ? '0' : plain;
}

/** A stretch of time in hours and minutes as the notation writes it: for the text of files. */
export function writtenDuration(seconds: number): string {
  if (seconds < 60) return `${trimmed(seconds, 0)} s`;
  if (seconds < 600 && seconds % 60 !== 0) return `${trimmed(seconds / 60, 1)} min`;
  const whole = Math.round(seconds / 60);
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** A number with at most so many places and no zeros behind, for people to read. */
export function figure(value: number, places: number): string {
  const text = trimmed(value, places);
  return text.includes('.') ? marked('number', text) : text;
}

/** A fraction as a percent: two places below 10 %, one above, no zeros behind; or with so many places. */
export function percent(fraction: number, places = Math.abs(fraction) < 0.1 ? 2 : 1): string {
  return `${figure(fraction * 100, places)}%`;
}

/** Less than this nobody weighs, grams: it reads as `less than 0.05 g`, never as nothing. */
export const leastWeighedGrams = 0.05;

/** Grams up to a kilogram, then kilograms. */
export function mass(grams: number): string {
  return marked('mass', grams);
}

/** A temperature with one place. */
export function degrees(celsius: number): string {
  return marked('temperature', celsius);
}

/** A temperature with one place, below zero with the minus sign of print: never for the text of files. */
export function degreesToRead(celsius: number): string {
  return degrees(celsius).replace('-', '−');
}

/** By how much two temperatures differ, with one place. */
export function degreesApart(celsius: number): string {
  return marked('difference', celsius);
}

/** A band wider than this is told in whole degrees, and what it is a band of too, °C: no more digits than it allows. */
const wholeBeyondCelsius = 2;

/** A band narrower than this is none that a thermometer shows, °C. */
const leastBandCelsius = 0.05;

/** The places of a temperature with a band; undefined where no thermometer would show the band, °C. */
export function placesWithin(bandCelsius: number): 0 | 1 | undefined {
  if (!(Number.isFinite(bandCelsius) && bandCelsius >= leastBandCelsius)) return undefined;
  return bandCelsius > wholeBeyondCelsius ? 0 : 1;
}

/**
 * A temperature with its band, both °C: `27.3 °C ± 0.8 °C`, and in whole degrees where the band is wider than 2 °C, `27 °C ± 3 °C`.
 * Without a band that a thermometer could show, the temperature alone.
 */
export function degreesWithBand(celsius: number, bandCelsius: number | undefined): string {
  const shown = bandCelsius === undefined ? undefined : placesWithin(bandCelsius);
  if (bandCelsius === undefined || shown === undefined) return degrees(celsius);
  const places = shown === 0 ? wholeDegrees : 0;
  return `${marked('temperature', celsius, places)} ± ${marked('difference', bandCelsius, places)}`;
}

/** How fast a temperature changes, with at most so many places. */
export function degreesPerMinute(celsiusPerMinute: number, places: number): string {
  return marked('warming', celsiusPerMinute, places);
}

/** Minutes: whole from ten up, halves below. */
export function minutes(value: number): string {
  return `${figure(roundMinutes(value), 1)} min`;
}

/** A stretch of time in hours and minutes, for people to read. */
export function duration(seconds: number): string {
  return writtenDuration(seconds).replace(/^\d+\.\d+/, (number) => marked('number', number));
}

/** A band of minutes: `26–31 min`, or one figure where both ends read alike. */
export function minutesBand(low: number, high: number): string {
  const [from, to] = [roundMinutes(low), roundMinutes(high)];
  return from === to ? minutes(from) : `${figure(from, 1)}–${minutes(to)}`;
}

function roundMinutes(value: number): number {
  return value >= 10 ? Math.round(value) : Math.round(value * 2) / 2;
}

/** A weight as it is weighed: grams to 9,999, then kilograms with three places; small weights with the places of the scale. */
export function weighedFigure(grams: number, stepGrams: number): { figure: string; unit: string } {
  return { figure: marked('weighed', grams, stepGrams), unit: marked('weighedUnit', grams) };
}

/** A weight as `weighedFigure` has it, in the unit of the heavy weights that it stands among. */
export function heavyFigure(grams: number): { figure: string; unit: string } {
  return { figure: marked('weighedHeavy', grams), unit: marked('weighedHeavyUnit', grams) };
}

/** Beyond this a weight is shown in kilograms, and so is what stands in one column with it. */
export const mostShownGrams = 9999;

/** The weight that `weighedFigure` shows in grams or kilograms, and its places: grams to 9,999, then kilograms. */
export function weighedPlaces(grams: number, stepGrams: number): { places: number; unit: 'g' | 'kg' } {
  if (grams > mostShownGrams) return { places: 3, unit: 'kg' };
  const places = stepGrams >= 1 ? 0 : stepGrams >= 0.1 ? 1 : 2;
  return { places: grams < 10 && places === 0 ? 1 : places, unit: 'g' };
}
