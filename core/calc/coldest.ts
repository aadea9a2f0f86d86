import { believableCelsius, type HeatItem, mixedCelsius } from './heat-content.ts';
import { type Known, known, unknown } from './known.ts';
import type { MixingInput } from './mixing-programme.ts';

/**
 * The coldest, °C, that dough can be at a minute of its programme: all that is in the bowl by then poured together, with
 * no heat of hydration and none of mixing, and cooled to the room where the room is colder. A reading below that
 * contradicts the temperatures of what went in. Unknown where one of those is.
 */
export function coldestCelsius({ phases, roomCelsius }: MixingInput, minutes: number): Known<number> {
  if (!believableCelsius(roomCelsius)) return unknown('the temperature of the room is not given');
  let bowl: readonly HeatItem[] = [];
  let celsius = Number.NaN;
  let clock = 0;
  for (const phase of phases) {
    if (!('portions' in phase)) {
      if (clock + phase.seconds / 60 >= minutes - 1e-9) return coldest(Math.min(celsius, roomCelsius));
      clock += phase.seconds / 60;
      celsius = Math.min(celsius, roomCelsius);
      continue;
    }
    const portions = phase.portions.filter((portion) => portion.grams > 0);
    const lacking = portions.find((one) => one.tempered === true || !believableCelsius(one.celsius));
    if (lacking !== undefined) return unknown(`the temperature of ${lacking.label} is not known`);
    const here = bowl.map((item): HeatItem => ({ ...item, celsius, frozen: false }));
    celsius = mixedCelsius([...here, ...portions]);
    bowl = [...bowl, ...portions];
  }
  return coldest(Math.min(celsius, roomCelsius));
}

function coldest(celsius: number): Known<number> {
  return Number.isFinite(celsius) ? known(celsius, 'given') : unknown('nothing is in the bowl by then');
}
