import type { IcePlan } from '../calc/mixing-water.ts';
import { degrees, mass } from '../text/figures.ts';

/** What ice would do, in a sentence; `share` is the part of all of the water that is meant. */
export function cureWords(cure: IcePlan, share = 1): string {
  return `With ${iceWords(cure, share)} from the tap it would end at ${degrees(cure.doughCelsius)}.`;
}

/** `1.2 kg of ice and 5.1 kg`, the rest of the water from wherever is said next. */
export function iceWords({ iceGrams, tapGrams }: IcePlan, share = 1): string {
  return `${mass(share * iceGrams)} of ice and ${mass(share * tapGrams)}`;
}
