import { type Message, message } from '../../words/message.ts';
import { type Known, known, unknown } from '../known.ts';
import type { MixingInput } from '../mixing/mixing-programme.ts';
import { believableCelsius, type HeatItem, mixedCelsius } from './heat-content.ts';

/**
 * The coldest, °C, that dough can be at a minute of its programme: all that is in the bowl by then poured together, with
 * no heat of hydration and none of mixing, and cooled to the room where the room is colder. A reading below that
 * contradicts the temperatures of what went in. Unknown where one of those is.
 */
export function coldestCelsius(
  { phases, roomCelsius }: MixingInput,
  minutes: number,
): Known<number, Message> {
  if (!believableCelsius(roomCelsius)) return unknown(message('heat.no-room'));
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
    if (lacking !== undefined) return unknown(message('heat.temperature-not-known', { name: lacking.label }));
    const here = bowl.map((item): HeatItem => ({ ...item, celsius, frozen: false }));
    celsius = mixedCelsius([...here, ...portions]);
    bowl = [...bowl, ...portions];
  }
  return coldest(Math.min(celsius, roomCelsius));
}

function coldest(celsius: number): Known<number, Message> {
  return Number.isFinite(celsius) ? known(celsius, 'given') : unknown(message('mixing.nothing-yet'));
}

/** No dough gets hotter than this by mixing, °C: it would be dead long before. Common practice, no source. */
const hottestByMixing = 45;
/** Degrees above the hottest thing in the bowl that wetting and mixing may bring. */
const aboveHottest = 5;

/**
 * The hottest, °C, that dough can be at a minute of its programme, generously: what no mixing brings about, or a little
 * above the hottest thing that went in by then.
 */
export function hottestDoughCelsius({ phases, roomCelsius }: MixingInput, minutes: number): number {
  let hottest = Math.max(hottestByMixing, believableCelsius(roomCelsius) ? roomCelsius : hottestByMixing);
  let clock = 0;
  for (const phase of phases) {
    if (clock >= minutes && clock > 0) break;
    if (!('portions' in phase)) clock += phase.seconds / 60;
    else
      for (const { celsius, grams, tempered } of phase.portions)
        if (grams > 0 && tempered !== true && believableCelsius(celsius))
          hottest = Math.max(hottest, celsius + aboveHottest);
  }
  return hottest;
}

/** Degrees below the coldest possible that thermometers and bowls explain; common practice, no source. */
const toleratedCelsius = 1;

/** Whether a reading is colder or hotter than the dough can have been; undefined where it may be right. */
export function cannotHaveBeen(
  input: MixingInput,
  minutes: number,
  celsius: number,
): 'colder' | 'hotter' | undefined {
  if (celsius > hottestDoughCelsius(input, minutes)) return 'hotter';
  const coldest = coldestCelsius(input, minutes);
  return coldest.known && celsius < coldest.value - toleratedCelsius ? 'colder' : undefined;
}
