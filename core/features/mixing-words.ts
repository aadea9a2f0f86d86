import type { MixAnalysis } from '../analysis/mixing.ts';
import type { Known } from '../calc/known.ts';
import { hottestDough, type MinutesBand } from '../calc/mixing.ts';
import { hasLittleWater, type TemperedWater } from '../calc/mixing-water.ts';
import { byHand } from '../model/mixer.ts';
import { cureWords, iceWords } from '../rules/ice-words.ts';
import { degrees, degreesApart, degreesWithBand, minutes, minutesBand, warmthWord } from '../text/figures.ts';

/** Where it is mixed: `in big spiral`, `by hand`. */
export function inMixer(mixer: string): string {
  return mixer === byHand.name ? byHand.name : `in ${mixer}`;
}

/** The outlook of a mixing programme in sentences, the most important first: warmth, development, then over-mixing. */
export function mixingOutlook(mix: MixAnalysis): string[] {
  const { outcome } = mix;
  const said = [endWords(mix)];
  if (outcome.development.known && outcome.stage.known) {
    const { programmeMinutes, letDownAfter, breakdownAfter, wishedDevelopment } = outcome;
    said.push(`State at the end: ${outcome.stage.value}, after ${minutes(programmeMinutes)} of programme.`);
    if (mix.wish !== undefined && wishedDevelopment !== 1)
      said.push(`Mixed as wished (${mix.wish}) ${moment(outcome.wishedAfter, programmeMinutes)}.`);
    said.push(`Developed ${moment(outcome.developedAfter, programmeMinutes)}.`);
    said.push(
      `Let-down ${moment(letDownAfter, programmeMinutes)}; broken down ${moment(breakdownAfter, programmeMinutes)}.`,
    );
  } else if (!outcome.development.known) said.push(`${capital(outcome.development.reason)}.`);
  return [...said, ...outcome.notes];
}

/** How near the end temperature comes to the one wanted, where its band is so wide that it is known only about. */
const widestSure = 2;

function endWords({ outcome, targetCelsius, targetAssumed }: MixAnalysis): string {
  const { endCelsius, endCelsiusBand: band, hotAfterMinutes } = outcome;
  if (hotAfterMinutes !== undefined)
    return `Much too warm: it passes ${degrees(hottestDough)} ${hotAfterMinutes < 0.5 ? 'from the start' : `after ${minutes(hotAfterMinutes)}`}.`;
  if (!endCelsius.known) return `The end temperature is not known: ${endCelsius.reason}.`;
  const over = endCelsius.value - targetCelsius;
  const wanted = `${degrees(targetCelsius)} is ${targetAssumed ? 'usual' : 'wanted'}`;
  const how =
    Math.abs(over) < 0.5
      ? `${band > widestSure ? 'about ' : ''}as ${targetAssumed ? 'is usual' : 'wanted'}`
      : over > 0
        ? `${warmthWord(over)} by ${degreesApart(over)}, ${wanted}`
        : `${degreesApart(-over)} cooler than ${targetAssumed ? 'is usual' : 'wanted'}, ${wanted}`;
  return `Ends at ${degreesWithBand(endCelsius.value, band)}: ${how}.`;
}

/** So many times the programme on a moment is only far off. */
const farOff = 3;

function moment(band: Known<MinutesBand>, programmeMinutes: number): string {
  if (!band.known) return `not known (${band.reason})`;
  const { low, high, atLastSpeed } = band.value;
  if (!atLastSpeed) return `from about ${minutesBand(low, high)}`;
  return low > programmeMinutes * farOff ? 'far off' : `about ${minutesBand(low, high)} at the last speed`;
}

/** The water to use, in words: temperature and ice. `share` is the part of all of it that is meant. */
export function waterWords(mix: MixAnalysis, share = 1): { text: string; detail: string[] } | undefined {
  return mix.water.known ? waterText(mix.water.value, mix, share) : undefined;
}

function waterText(
  water: TemperedWater,
  mix: MixAnalysis,
  share: number,
): { text: string; detail: string[] } {
  const { reach, waterCelsius, ice, iceCure, lever, doughCelsius } = water;
  const tap = `${water.tapAssumed ? 'taken to be ' : ''}at ${degrees(water.tapCelsius)}`;
  const ends = doughCelsius.known ? ` the dough still ends at ${degrees(doughCelsius.value)}` : '';
  const caution =
    waterCelsius !== undefined && waterCelsius > 45
      ? ['Caution: water this hot scalds, and kills yeast that meets it.']
      : [];
  if (reach === 'reachable' && waterCelsius !== undefined)
    return { text: `water at ${degrees(waterCelsius)}`, detail: caution };
  if (reach === 'not warm enough' && waterCelsius !== undefined)
    return {
      text: `water at ${degrees(waterCelsius)} and no hotter`,
      detail: [...(ends === '' ? [] : [`With that${ends}: warm the flour or the room.`]), ...caution],
    };
  if (reach === 'no lever')
    return {
      text: 'water from the tap',
      detail: [
        `${hasLittleWater(mix.input) ? 'There is too little of it to matter' : `After ${minutes(mix.outcome.programmeMinutes)} the dough follows the room and the machine`}: water 10 °C colder ends it ${degreesApart(10 * Math.max(0, lever))} cooler.`,
      ],
    };
  if (ice !== undefined) {
    const short = doughCelsius.known && doughCelsius.value > mix.targetCelsius + 0.05;
    return {
      text: `${iceWords(ice, share)} from the tap, ${tap}`,
      detail: short
        ? [`Half of the water is ice, and${ends}: cool the flour, or mix shorter or slower.`]
        : [],
    };
  }
  return {
    text: `water from the tap, ${tap}`,
    detail:
      iceCure === undefined
        ? ['No colder water is at hand, and ice would gain less than half a degree.']
        : [cureWords(iceCure, share)],
  };
}

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
