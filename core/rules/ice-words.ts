import type { IcePlan } from '../calc/mixing-water.ts';
import { degrees, mass } from '../text/figures.ts';

/** What ice would do, in a sentence. */
export function cureWords(cure: IcePlan): string {
  return `With ${iceWords(cure)} from the tap it would end at ${degrees(cure.doughCelsius)}.`;
}

/** `1.2 kg of ice and 5.1 kg`, the rest of the water from wherever is said next. */
export function iceWords({ iceGrams, tapGrams }: IcePlan): string {
  return `${mass(iceGrams)} of ice and ${mass(tapGrams)}`;
}
