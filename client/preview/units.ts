import type { Display } from '../../server/protocol.ts';

/** The units that a baker reads and types in; what goes to the core is in grams and °C. */
export interface Units {
  readonly degrees: '°C' | '°F';
  readonly heavy: 'kg' | 'lb';
  readonly light: 'g' | 'oz';
  celsiusOf(degrees: number): number;
  degreesOf(celsius: number): number;
  gramsOfHeavy(figure: number): number;
  heavyOf(grams: number): number;
  gramsOfLight(figure: number): number;
  lightOf(grams: number): number;
  /** A figure with at most so many places and the decimal sign that is set, for words and fields. */
  text(figure: number, places?: number): string;
  /** What was typed as a number: nothing for nothing, NaN for what is no number or could be two. */
  figureOf(typed: string): number | undefined;
}

/** What holds where a server does not say how figures are shown. */
export const plainDisplay: Display = { mass: 'grams', temperature: 'celsius', decimalSign: 'point' };

/** NIST Handbook 44, appendix C: the avoirdupois pound in grams, exactly; an ounce is a sixteenth of it. */
const gramsPerPound = 453.59237;
const ouncesPerPound = 16;
const gramsPerKilogram = 1000;

/** Figures as typed and shown under the settings for units and decimal sign. */
export function unitsOf({ mass, temperature, decimalSign }: Display): Units {
  const fahrenheit = temperature === 'fahrenheit';
  const gramsPerHeavy = mass === 'ounces' ? gramsPerPound : gramsPerKilogram;
  const gramsPerLight = mass === 'ounces' ? gramsPerPound / ouncesPerPound : 1;
  return {
    degrees: fahrenheit ? '°F' : '°C',
    heavy: mass === 'ounces' ? 'lb' : 'kg',
    light: mass === 'ounces' ? 'oz' : 'g',
    celsiusOf: (degrees) => (fahrenheit ? (degrees - 32) / 1.8 : degrees),
    degreesOf: (celsius) => (fahrenheit ? celsius * 1.8 + 32 : celsius),
    gramsOfHeavy: (figure) => figure * gramsPerHeavy,
    heavyOf: (grams) => grams / gramsPerHeavy,
    gramsOfLight: (figure) => figure * gramsPerLight,
    lightOf: (grams) => grams / gramsPerLight,
    text(figure, places = 3) {
      const text = Number(figure.toFixed(places)).toFixed(places);
      const plain = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
      return decimalSign === 'comma' ? plain.replace('.', ',') : plain;
    },
    figureOf: (typed) => figureOf(typed, decimalSign === 'comma' ? ',' : '.'),
  };
}

/**
 * A comma and a point are both a decimal sign, whatever is set: no baker is to get 125 kg for 12,5. But the one that is
 * not set may also part thousands, where three digits follow: that is no number here.
 */
function figureOf(typed: string, sign: '.' | ','): number | undefined {
  const text = typed.trim().replace('−', '-');
  if (text === '') return undefined;
  if (!/^[+-]?(\d+[.,]?\d*|[.,]\d+)$/.test(text)) return Number.NaN;
  const other = sign === '.' ? ',' : '.';
  if (text.includes(other) && /[1-9]\d{0,2}[.,]\d{3}$/.test(text)) return Number.NaN;
  return Number(text.replace(',', '.'));
}
