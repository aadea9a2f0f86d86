import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Dough that is too warm, and water, ice and yeast that have to do with it. */
export const mixingWarmth = {
  'warmth.slightly': () => 'slightly warm',
  'warmth.too': () => 'too warm',
  'warmth.much-too': () => 'much too warm',

  'too-warm.leaves': (end: End, say: Speaker) =>
    `The dough leaves the mixer ${say.say(end.warmth)}: ${ended(end, say)} above the ${say.celsius(end.targetCelsius)} wanted.`,
  'too-warm.leaves-usual': (end: End, say: Speaker) =>
    `The dough leaves the mixer ${say.say(end.warmth)}: ${ended(end, say)} above the usual ${say.celsius(end.targetCelsius)}.`,
  'too-warm.may-leave': (end: End, say: Speaker) =>
    `The dough may leave the mixer ${say.say(end.warmth)}: ${ended(end, say)} above the ${say.celsius(end.targetCelsius)} wanted.`,
  'too-warm.may-leave-usual': (end: End, say: Speaker) =>
    `The dough may leave the mixer ${say.say(end.warmth)}: ${ended(end, say)} above the usual ${say.celsius(end.targetCelsius)}.`,
  'too-warm.from-start': ({ limitCelsius }: Args<'limitCelsius'>, say: Speaker) =>
    `It is above ${say.celsius(limitCelsius)} from the start.`,
  'too-warm.passes': (at: Args<'limitCelsius' | 'minutes' | 'programmeMinutes'>, say: Speaker) =>
    `It passes ${say.celsius(at.limitCelsius)} after ${say.minutes(at.minutes)} of ${say.minutes(at.programmeMinutes)}.`,
  'too-warm.hot-from-start': ({ limitCelsius }: Args<'limitCelsius'>, say: Speaker) =>
    `The dough leaves the mixer much too warm: it is above ${say.celsius(limitCelsius)} from the start, and yeast does not survive that.`,
  'too-warm.hot': (at: Args<'limitCelsius' | 'minutes' | 'programmeMinutes'>, say: Speaker) =>
    `The dough leaves the mixer much too warm: it passes ${say.celsius(at.limitCelsius)} after ${say.minutes(at.minutes)} of ${say.minutes(at.programmeMinutes)}, and yeast does not survive that.`,
  'too-warm.no-water': () =>
    'There is no water to cool: chill the flour and what else goes in, or mix shorter or slower.',
  'too-warm.little-water': () =>
    'There is too little water to cool it by: chill the flour and what else goes in, or mix shorter or slower.',
  'too-warm.follows-room': () =>
    'Other water changes little after so long: mix shorter or slower, or in a cooler room.',
  'too-warm.half-ice': () => 'Half of the water is ice already: cool the flour, or mix shorter or slower.',
  'too-warm.ice-not-enough': () =>
    'Not even half of the water as ice would be enough: mix shorter or slower.',
  'too-warm.tap-assumed': ({ tapCelsius }: Args<'tapCelsius'>, say: Speaker) =>
    `The tap is assumed to be at ${say.celsius(tapCelsius)}.`,
  'too-warm.target': () => 'the desired dough temperature',
  'too-warm.fix-leave-out': () => 'Leave the temperature out: the water is computed',
  'too-warm.fix-water': ({ meant }: Args<'meant'>) => `Take the water at ${meant}`,
  'too-warm.fix-developed': (stop: Stop) => `${stopAt(stop)}: developed by then`,
  'too-warm.fix-rest': (stop: Stop) => `${stopAt(stop)}: folds and bulk do the rest`,
  'too-warm.fix-fold': (stop: Stop) => `${stopAt(stop)}, and fold twice in the bulk`,

  'ice.would-end': (ice: Args<'iceGrams' | 'tapGrams' | 'doughCelsius'>, say: Speaker) =>
    `With ${say.mass(ice.iceGrams)} of ice and ${say.mass(ice.tapGrams)} from the tap it would end at ${say.celsius(ice.doughCelsius)}.`,
  'ice.fix-take': ({ meant, doughCelsius }: Args<'meant' | 'doughCelsius'>, say: Speaker) =>
    `Take ${meant} as ice: it would end at ${say.celsius(doughCelsius)}`,

  'ice-needed.tap': (tap: Args<'tapCelsius' | 'doughCelsius' | 'targetCelsius'>, say: Speaker) =>
    `With water from the tap, at ${say.celsius(tap.tapCelsius)}, the dough ends at ${instead(tap, say)}.`,
  'ice-needed.tap-assumed': (
    tap: Args<'tapCelsius' | 'doughCelsius' | 'targetCelsius' | 'property'>,
    say: Speaker,
  ) =>
    `With water from the tap, assumed to be at ${say.celsius(tap.tapCelsius)} (write “${tap.property}” in the bakery’s section), the dough ends at ${instead(tap, say)}.`,
  'ice-needed.would-bring': ({ doughCelsius }: Args<'doughCelsius'>, say: Speaker) =>
    `Ice would bring it to ${say.celsius(doughCelsius)}.`,

  'ice-above-half.weighed': (ice: Args<'iceGrams' | 'doughCelsius' | 'targetCelsius'>, say: Speaker) =>
    `Half of the water is ice, ${say.mass(ice.iceGrams)}, and more melts too late: the dough still ends at ${instead(ice, say)}. Cool the flour, or mix shorter or slower.`,
  'ice-above-half.unsized': (ice: Args<'doughCelsius' | 'targetCelsius'>, say: Speaker) =>
    `Half of the water is ice, and more melts too late: the dough still ends at ${instead(ice, say)}. Cool the flour, or mix shorter or slower.`,

  'hot-water.not-enough': (water: Args<'waterCelsius' | 'doughCelsius' | 'targetCelsius'>, say: Speaker) =>
    `Even with water at ${say.celsius(water.waterCelsius)} the dough ends at ${instead(water, say)}. Warm the room or what else goes in, or write the dough temperature that comes of it.`,
  'hot-water.too-little': (
    { doughCelsius, targetCelsius }: Args<'doughCelsius' | 'targetCelsius'>,
    say: Speaker,
  ) =>
    `No water brings the dough to ${say.celsius(targetCelsius)}: there is too little of it beside all that is colder, and it ends at ${say.celsius(doughCelsius)}. Warm the room or what else goes in, or write the dough temperature that comes of it.`,
  'hot-water.follows-room': (
    { doughCelsius, targetCelsius }: Args<'doughCelsius' | 'targetCelsius'>,
    say: Speaker,
  ) =>
    `No water brings the dough to ${say.celsius(targetCelsius)}: after so long it follows the room and the machine, to ${say.celsius(doughCelsius)}. Warm the room or what else goes in, or write the dough temperature that comes of it.`,
  'hot-water.stated': ({ waterCelsius, limitCelsius }: Args<'waterCelsius' | 'limitCelsius'>, say: Speaker) =>
    `Water at ${say.celsius(waterCelsius)} harms yeast and can scald: above about ${say.celsius(limitCelsius)} warm the flour instead, or take a cooler dough.`,
  'hot-water.computed': (
    { waterCelsius, limitCelsius, targetCelsius }: Args<'waterCelsius' | 'limitCelsius' | 'targetCelsius'>,
    say: Speaker,
  ) =>
    `To reach ${say.celsius(targetCelsius)} the water would have to be at ${say.celsius(waterCelsius)}, and that harms yeast and can scald: above about ${say.celsius(limitCelsius)} warm the flour instead, or take a cooler dough.`,

  'yeast-in-the-hot.dies': ({ name, celsius }: Args<'name' | 'celsius'>, say: Speaker) =>
    `The yeast meets ${name} at ${say.celsius(celsius)} and will not survive it. Add it later, once flour and water have cooled the bowl, or let that cool first.`,
  'yeast-in-the-hot.may-suffer': ({ name, celsius }: Args<'name' | 'celsius'>, say: Speaker) =>
    `The yeast meets ${name} at ${say.celsius(celsius)} and may suffer. Add it later, once flour and water have cooled the bowl, or let that cool first.`,
  'yeast-in-the-hot.dies-in-bowl': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `The yeast meets what is in the bowl at ${say.celsius(celsius)} and will not survive it. Add it later, once flour and water have cooled the bowl, or let that cool first.`,
  'yeast-in-the-hot.may-suffer-in-bowl': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `The yeast meets what is in the bowl at ${say.celsius(celsius)} and may suffer. Add it later, once flour and water have cooled the bowl, or let that cool first.`,
};

type End = Args<'warmth' | 'celsius' | 'bandCelsius' | 'overCelsius' | 'targetCelsius'>;

function ended({ celsius, bandCelsius, overCelsius }: End, say: Speaker): string {
  return `${say.celsiusBand(celsius, bandCelsius)}, ${say.celsiusApart(overCelsius)}`;
}

function instead(
  { doughCelsius, targetCelsius }: Args<'doughCelsius' | 'targetCelsius'>,
  say: Speaker,
): string {
  return `${say.celsius(doughCelsius)} instead of ${say.celsius(targetCelsius)}`;
}

type Stop = Args<'number' | 'choices'>;

/** When to stop, and how long the lines then last, in their order. */
function stopAt({ number, choices }: Stop): string {
  const [only] = choices;
  return choices.length === 1
    ? `Write ${only}, to minute ${number}`
    : `Shorten to ${choices.join(', then ')}, to minute ${number}`;
}
