/** Figures as the notation writes them, and how many places one has; how a reader is shown them says the speaker. */

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

/** The places of a percent: two below 10 %, one above. */
export function percentPlaces(fraction: number): number {
  return Math.abs(fraction) < 0.1 ? 2 : 1;
}

/** Less than this nobody weighs, grams: it reads as `less than 0.05 g`, never as nothing. */
export const leastWeighedGrams = 0.05;

/** A band wider than this is told in whole degrees, and what it is a band of too, °C: no more digits than it allows. */
const wholeBeyondCelsius = 2;

/** A band narrower than this is none that a thermometer shows, °C. */
const leastBandCelsius = 0.05;

/** The places of a temperature with a band; undefined where no thermometer would show the band, °C. */
export function placesWithin(bandCelsius: number): 0 | 1 | undefined {
  if (!(Number.isFinite(bandCelsius) && bandCelsius >= leastBandCelsius)) return undefined;
  return bandCelsius > wholeBeyondCelsius ? 0 : 1;
}

/** Beyond this a weight is shown in kilograms, and so is what stands in one column with it. */
export const mostShownGrams = 9999;

/** The weight that `weighedFigure` shows in grams or kilograms, and its places: grams to 9,999, then kilograms. */
export function weighedPlaces(grams: number, stepGrams: number): { places: number; unit: 'g' | 'kg' } {
  if (grams > mostShownGrams) return { places: 3, unit: 'kg' };
  const places = stepGrams >= 1 ? 0 : stepGrams >= 0.1 ? 1 : 2;
  return { places: grams < 10 && places === 0 ? 1 : places, unit: 'g' };
}
