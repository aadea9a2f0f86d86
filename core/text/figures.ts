/** Figures in a baker's words: the same number reads the same in a message, a hover, a total and on the sheet. */

/** A number with at most so many places and no zeros behind. */
export function trimmed(value: number, places: number): string {
  const text = value.toFixed(places);
  const plain = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return plain === '-0' ? '0' : plain;
}

/** A fraction as a percent: two places below 10 %, one above, no zeros behind; or with so many places. */
export function percent(fraction: number, places = Math.abs(fraction) < 0.1 ? 2 : 1): string {
  return `${trimmed(fraction * 100, places)}%`;
}

/** Grams up to a kilogram, then kilograms. */
export function mass(grams: number): string {
  const size = Math.abs(grams);
  if (size >= 1000) return `${trimmed(grams / 1000, 2)} kg`;
  return `${trimmed(grams, size < 10 ? 1 : 0)} g`;
}

/** A temperature with one place. */
export function degrees(celsius: number): string {
  return `${trimmed(celsius, 1)} °C`;
}

/** How warm a dough is that much above its temperature, in a word. Common practice, no source. */
export function warmthWord(celsiusOver: number): string {
  if (celsiusOver >= 4) return 'far too warm';
  return celsiusOver >= 2 ? 'too warm' : 'a little warm';
}

/** Minutes: whole from ten up, halves below. */
export function minutes(value: number): string {
  return `${value >= 10 ? Math.round(value) : Math.round(value * 2) / 2} min`;
}

/** A stretch of time in hours and minutes, as the notation writes it. */
export function duration(seconds: number): string {
  if (seconds < 60) return `${trimmed(seconds, 0)} s`;
  const whole = Math.round(seconds / 60);
  if (seconds < 600 && seconds % 60 !== 0) return `${trimmed(seconds / 60, 1)} min`;
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** A band of minutes: `26–31 min`, or one figure where both ends read alike. */
export function minutesBand(low: number, high: number): string {
  const [from, to] = [minutes(low), minutes(high)];
  return from === to ? from : `${from.replace(' min', '')}–${to}`;
}

/** A weight as it is weighed: grams to 9,999, then kilograms with three places; small weights with the places of the scale. */
export function weighedFigure(grams: number, stepGrams: number): { figure: string; unit: 'g' | 'kg' } {
  if (grams > 9999) return { figure: (grams / 1000).toFixed(3), unit: 'kg' };
  const places = stepGrams >= 1 ? 0 : stepGrams >= 0.1 ? 1 : 2;
  return { figure: grams.toFixed(grams < 10 && places === 0 ? 1 : places), unit: 'g' };
}
