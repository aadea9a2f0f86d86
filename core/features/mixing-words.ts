import type { MixAnalysis } from '../analysis/mixing.ts';
import type { Known } from '../calc/known.ts';
import type { MinutesBand } from '../calc/mixing.ts';
import { byHand } from '../model/mixer.ts';
import { degrees, degreesApart, mass, minutes, minutesBand, warmthWord } from '../text/figures.ts';

/** Where it is mixed: `in big spiral`, `by hand`. */
export function inMixer(mixer: string): string {
  return mixer === byHand.name ? byHand.name : `in ${mixer}`;
}

/** The outlook of a mixing programme in sentences, the most important first: warmth, development, then over-mixing. */
export function mixingOutlook(mix: MixAnalysis): string[] {
  const { outcome, targetCelsius } = mix;
  const said: string[] = [];
  if (outcome.endCelsius.known) {
    const over = outcome.endCelsius.value - targetCelsius;
    const wanted = mix.targetAssumed
      ? `${degrees(targetCelsius)} is usual`
      : `${degrees(targetCelsius)} is wanted`;
    const how =
      Math.abs(over) < 0.5
        ? `as wanted`
        : over > 0
          ? `${warmthWord(over)} by ${degreesApart(over)}, ${wanted}`
          : `${degreesApart(-over)} cooler than wanted, ${wanted}`;
    said.push(`Ends at ${degrees(outcome.endCelsius.value)}${bandWords(outcome.endCelsiusBand)}: ${how}.`);
  } else said.push(`The end temperature is not known: ${outcome.endCelsius.reason}.`);
  if (outcome.development.known && outcome.stage.known) {
    said.push(
      `State at the end: ${outcome.stage.value}, after ${minutes(outcome.programmeMinutes)} of programme.`,
    );
    said.push(`Developed ${moment(outcome.developedAfter, outcome.programmeMinutes)}.`);
    said.push(
      `Let-down ${moment(outcome.letDownAfter, outcome.programmeMinutes)}; broken down ${moment(outcome.breakdownAfter, outcome.programmeMinutes)}.`,
    );
  } else if (!outcome.development.known) said.push(`${capital(outcome.development.reason)}.`);
  return [...said, ...outcome.notes];
}

function bandWords(celsius: number): string {
  return celsius < 0.05 ? '' : ` ± ${degreesApart(celsius)}`;
}

function moment(band: Known<MinutesBand>, programmeMinutes: number): string {
  if (!band.known) return `not known (${band.reason})`;
  const { low, high, atLastSpeed } = band.value;
  const when = minutesBand(low, high);
  if (!atLastSpeed) return `from about ${when}`;
  return low > programmeMinutes * 2
    ? `far off, about ${when} at the last speed`
    : `about ${when} at the last speed`;
}

/** The water to use, in words: temperature and ice. `share` is the part of all of it that is meant. */
export function waterWords(mix: MixAnalysis, share = 1): { text: string; detail: string[] } | undefined {
  if (!mix.water.known) return undefined;
  const { waterCelsius, ice, doughCelsius } = mix.water.value;
  const detail: string[] = [];
  let text = `water at ${degrees(waterCelsius)}`;
  if (ice.known && ice.value.iceGrams > 0) {
    const { iceGrams, tapGrams, capped } = ice.value;
    const { roomCelsius } = mix.input;
    text = capped
      ? `all the water as ice, and the dough still ends at ${degrees(doughCelsius)}`
      : `water as cold as ${degrees(waterCelsius)}: ${mass(share * iceGrams)} of ice and ${mass(share * tapGrams)} from the tap`;
    if (capped) detail.push(`Cool the flour or mix shorter; the room is at ${degrees(roomCelsius)}.`);
  } else if (!ice.known && waterCelsius < 4)
    detail.push('How much ice that takes is not known: the bakery states no tap water temperature.');
  if (waterCelsius > 45) detail.push('Caution: water this hot scalds, and kills yeast that meets it.');
  return { text, detail };
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
