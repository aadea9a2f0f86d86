import { type FigureKind, holdsMarked, wholeDegrees, written } from './marked.ts';
import { differenceText, massText, temperatureText, warmingText, weighedText } from './shown-figures.ts';

/** How figures are shown. The text of files is never written by it. */
export interface Display {
  readonly mass: 'grams' | 'ounces';
  readonly temperature: 'celsius' | 'fahrenheit';
  readonly decimalSign: 'point' | 'comma';
}

export const plainDisplay: Display = { mass: 'grams', temperature: 'celsius', decimalSign: 'point' };

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
  switch (kind) {
    case 'number':
      return plain;
    case 'mass':
      return massText(value, display);
    case 'temperature':
      return temperatureText(value, display, more === wholeDegrees ? 0 : 1);
    case 'difference':
      return differenceText(value, display, more === wholeDegrees ? 0 : 1);
    case 'warming':
      return warmingText(value, more, display);
    case 'weighed':
      return weighedText(value, more, display).figure;
    case 'weighedUnit':
      return weighedText(value, 1, display).unit;
  }
}
