import { leastWeighedGrams, trimmed, weighedPlaces } from './figures.ts';
import { type FigureKind, holdsMarked, wholeDegrees, written } from './marked.ts';

/** How figures are shown. The text of files is never written by it. */
export interface Display {
  readonly mass: 'grams' | 'ounces';
  readonly temperature: 'celsius' | 'fahrenheit';
  readonly decimalSign: 'point' | 'comma';
}

export const plainDisplay: Display = { mass: 'grams', temperature: 'celsius', decimalSign: 'point' };

/** NIST Handbook 44, appendix C: the avoirdupois ounce, 0.45359237 kg / 16 exactly. */
const gramsPerOunce = 28.349523125;

/** A text with its figures written out. */
export function wordedText(text: string, display: Display): string {
  if (!holdsMarked(text)) return text;
  return written(text, (kind, value, plain, more) => {
    const said = write(kind, value, plain, more, display);
    return display.decimalSign === 'comma' ? said.replace('.', ',') : said;
  });
}

/**
 * The same data with all its texts written out; data without figures is given back as it is, and the same data gives
 * the same object again. What stands under `insert` goes into a file and is written as the notation has it.
 */
export function worded<T>(data: T, display: Display): T {
  if (typeof data === 'string') return wordedText(data, display) as T;
  if (typeof data !== 'object' || data === null) return data;
  const known = done.get(display) ?? new WeakMap<object, object>();
  done.set(display, known);
  return wordedData(data, display, known) as T;
}

const done = new WeakMap<Display, WeakMap<object, object>>();

function wordedData(data: object, display: Display, known: WeakMap<object, object>): object {
  const before = known.get(data);
  if (before !== undefined) return before;
  let changed: Record<string, unknown> | undefined;
  for (const [key, value] of Object.entries(data)) {
    const made =
      typeof value === 'string'
        ? wordedText(value, key === 'insert' ? plainDisplay : display)
        : typeof value === 'object' && value !== null
          ? wordedData(value, display, known)
          : value;
    if (made === value) continue;
    changed ??= (Array.isArray(data) ? [...data] : { ...data }) as Record<string, unknown>;
    changed[key] = made;
  }
  const made = changed ?? data;
  known.set(data, made);
  return made;
}

function write(kind: FigureKind, value: number, plain: string, more: number, display: Display): string {
  const ounces = display.mass === 'ounces';
  const fahrenheit = display.temperature === 'fahrenheit';
  const places = more === wholeDegrees ? 0 : 1;
  switch (kind) {
    case 'number':
      return plain;
    case 'mass':
      return ounces ? inOunces(value) : inGrams(value);
    case 'temperature':
      return fahrenheit ? `${trimmed(value * 1.8 + 32, places)} °F` : `${trimmed(value, places)} °C`;
    case 'difference':
      return fahrenheit ? `${trimmed(value * 1.8, places)} °F` : `${trimmed(value, places)} °C`;
    case 'warming':
      return fahrenheit ? `${trimmed(value * 1.8, more)} °F/min` : `${trimmed(value, more)} °C/min`;
    case 'weighed':
      return ounces ? weighedOunces(value, more).figure : weighedGrams(value, more);
    case 'weighedUnit':
      return ounces ? weighedOunces(value, 1).unit : weighedPlaces(value, 1).unit;
  }
}

function inGrams(grams: number): string {
  const size = Math.abs(grams);
  if (size > 0 && size < leastWeighedGrams) return `less than ${leastWeighedGrams} g`;
  if (size >= 1000) return `${trimmed(grams / 1000, 2)} kg`;
  return `${trimmed(grams, size < 10 ? 1 : 0)} g`;
}

/** Ounces up to a pound, then pounds. */
function inOunces(grams: number): string {
  const all = grams / gramsPerOunce;
  const size = Math.abs(all);
  if (grams !== 0 && size < 0.005) return 'less than 0.01 oz';
  if (size >= 16) return `${trimmed(all / 16, 2)} lb`;
  return `${trimmed(all, size < 1 ? 2 : 1)} oz`;
}

function weighedGrams(grams: number, stepGrams: number): string {
  const { places, unit } = weighedPlaces(grams, stepGrams);
  return (unit === 'kg' ? grams / 1000 : grams).toFixed(places);
}

/** As weighed: ounces to 16 with the places a scale of that step has, then pounds with three. */
function weighedOunces(grams: number, stepGrams: number): { figure: string; unit: string } {
  const all = grams / gramsPerOunce;
  if (all >= 16) return { figure: (all / 16).toFixed(3), unit: 'lb' };
  return { figure: all.toFixed(stepGrams >= 1 ? 2 : 3), unit: 'oz' };
}
