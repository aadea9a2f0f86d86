import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What a programme comes to, its water, and each of its lines. */
export const mixingOutlook = {
  'place.by-hand': () => 'by hand',
  'place.in-mixer': ({ name }: Args<'name'>) => `in ${name}`,

  'outlook.hot-from-start': ({ limitCelsius }: Args<'limitCelsius'>, say: Speaker) =>
    `Much too warm: it is above ${say.celsius(limitCelsius)} from the start.`,
  'outlook.hot': ({ limitCelsius, minutes }: Args<'limitCelsius' | 'minutes'>, say: Speaker) =>
    `Much too warm: it passes ${say.celsius(limitCelsius)} after ${say.minutes(minutes)}.`,
  'outlook.no-end': ({ reason }: Args<'reason'>, say: Speaker) =>
    `The end temperature is not known: ${say.say(reason)}.`,
  'outlook.as-wanted': (end: End, say: Speaker) => `${ended(end, say)}: as wanted.`,
  'outlook.about-as-wanted': (end: End, say: Speaker) => `${ended(end, say)}: about as wanted.`,
  'outlook.as-usual': (end: End, say: Speaker) => `${ended(end, say)}: as is usual.`,
  'outlook.about-as-usual': (end: End, say: Speaker) => `${ended(end, say)}: about as is usual.`,
  'outlook.warmer': (end: End & Warm, say: Speaker) =>
    `${ended(end, say)}: ${say.say(end.warmth)} by ${say.celsiusApart(end.apartCelsius)}, ${say.celsius(end.targetCelsius)} is wanted.`,
  'outlook.warmer-usual': (end: End & Warm, say: Speaker) =>
    `${ended(end, say)}: ${say.say(end.warmth)} by ${say.celsiusApart(end.apartCelsius)}, ${say.celsius(end.targetCelsius)} is usual.`,
  'outlook.cooler': (end: End & Args<'apartCelsius' | 'targetCelsius'>, say: Speaker) =>
    `${ended(end, say)}: ${say.celsiusApart(end.apartCelsius)} cooler than wanted, ${say.celsius(end.targetCelsius)} is wanted.`,
  'outlook.cooler-usual': (end: End & Args<'apartCelsius' | 'targetCelsius'>, say: Speaker) =>
    `${ended(end, say)}: ${say.celsiusApart(end.apartCelsius)} cooler than is usual, ${say.celsius(end.targetCelsius)} is usual.`,
  'outlook.stage': ({ stage, programmeMinutes }: Args<'stage' | 'programmeMinutes'>, say: Speaker) =>
    `State at the end: ${say.say(stage)}, after ${say.minutes(programmeMinutes)} of programme.`,
  'outlook.wished': ({ meant, when }: Args<'meant' | 'when'>, say: Speaker) =>
    `Mixed as wished (${meant}) ${say.say(when)}.`,
  'outlook.developed': ({ when }: Args<'when'>, say: Speaker) => `Developed ${say.say(when)}.`,
  'outlook.past': ({ when, otherWhen }: Args<'when' | 'otherWhen'>, say: Speaker) =>
    `Let-down ${say.say(when)}; broken down ${say.say(otherWhen)}.`,
  'outlook.no-development': ({ reason }: Args<'reason'>, say: Speaker) =>
    `Its development is not known: ${say.say(reason)}.`,

  'moment.from': ({ lowMinutes, highMinutes }: Args<'lowMinutes' | 'highMinutes'>, say: Speaker) =>
    `from about ${say.minutesBand(lowMinutes, highMinutes)}`,
  'moment.last-speed': ({ lowMinutes, highMinutes }: Args<'lowMinutes' | 'highMinutes'>, say: Speaker) =>
    `about ${say.minutesBand(lowMinutes, highMinutes)} at the last speed`,
  'moment.far-off': () => 'far off',
  'moment.not-known': ({ reason }: Args<'reason'>, say: Speaker) => `not known (${say.say(reason)})`,

  'water.at': ({ waterCelsius }: Args<'waterCelsius'>, say: Speaker) =>
    `water at ${say.celsius(waterCelsius)}`,
  'water.no-hotter': ({ waterCelsius }: Args<'waterCelsius'>, say: Speaker) =>
    `water at ${say.celsius(waterCelsius)} and no hotter`,
  'water.from-tap': () => 'water from the tap',
  'water.tap-at': ({ tapCelsius }: Args<'tapCelsius'>, say: Speaker) =>
    `water from the tap, at ${say.celsius(tapCelsius)}`,
  'water.tap-assumed': ({ tapCelsius }: Args<'tapCelsius'>, say: Speaker) =>
    `water from the tap, assumed to be at ${say.celsius(tapCelsius)}`,
  'water.ice': (ice: Args<'iceGrams' | 'tapGrams' | 'tapCelsius'>, say: Speaker) =>
    `${say.mass(ice.iceGrams)} of ice and ${say.mass(ice.tapGrams)} from the tap, at ${say.celsius(ice.tapCelsius)}`,
  'water.ice-assumed': (ice: Args<'iceGrams' | 'tapGrams' | 'tapCelsius'>, say: Speaker) =>
    `${say.mass(ice.iceGrams)} of ice and ${say.mass(ice.tapGrams)} from the tap, assumed to be at ${say.celsius(ice.tapCelsius)}`,
  'water.caution': () => 'Caution: water this hot scalds, and kills yeast that meets it.',
  'water.warm-the-rest': ({ doughCelsius }: Args<'doughCelsius'>, say: Speaker) =>
    `With that the dough still ends at ${say.celsius(doughCelsius)}: warm the flour or the room.`,
  'water.little': (lever: Args<'colderCelsius' | 'apartCelsius'>, say: Speaker) =>
    `There is too little of it to matter: water ${say.celsiusApart(lever.colderCelsius)} colder ends it ${say.celsiusApart(lever.apartCelsius)} cooler.`,
  'water.follows-room': (lever: Args<'minutes' | 'colderCelsius' | 'apartCelsius'>, say: Speaker) =>
    `After ${say.minutes(lever.minutes)} the dough follows the room and the machine: water ${say.celsiusApart(lever.colderCelsius)} colder ends it ${say.celsiusApart(lever.apartCelsius)} cooler.`,
  'water.half-ice': ({ doughCelsius }: Args<'doughCelsius'>, say: Speaker) =>
    `Half of the water is ice, and the dough still ends at ${say.celsius(doughCelsius)}: cool the flour, or mix shorter or slower.`,
  'water.no-colder': () => 'No colder water is at hand, and ice would gain less than half a degree.',
  'water.for-dough': ({ targetCelsius, water }: Args<'targetCelsius' | 'water'>, say: Speaker) =>
    `For a dough of ${say.celsius(targetCelsius)}: ${say.say(water)}.`,
  'water.would-have-to': (
    { targetCelsius, waterCelsius }: Args<'targetCelsius' | 'waterCelsius'>,
    say: Speaker,
  ) => `For a dough of ${say.celsius(targetCelsius)} it would have to be at ${say.celsius(waterCelsius)}.`,

  'programme.not-known': ({ reason }: Args<'reason'>, say: Speaker) => `Not known yet: ${say.say(reason)}.`,
  'programme.title': ({ name, seconds, doughGrams }: Args<'name' | 'seconds' | 'doughGrams'>, say: Speaker) =>
    `**${name}** — ${say.duration(seconds)} of programme, ${say.mass(doughGrams)} of dough`,
  'programme.bands': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `_Mixing is shown in bands: common practice and our own fit, ±${say.percent(fraction)} until your own trials give better figures._`,
  'programme.line-end': ({ state }: Args<'state'>, say: Speaker) =>
    `At the end of this line: **${say.say(state)}**.`,
  'programme.line-end-trial': ({ state }: Args<'state'>, say: Speaker) =>
    `At the end of this line, as computed: **${say.say(state)}**.`,
  'programme.line-alone': ({ facts }: Args<'facts'>, say: Speaker) =>
    `This line alone: ${say.list(facts.map(say.say))}.`,
  'programme.goes-in': ({ facts }: Args<'facts'>, say: Speaker) =>
    `Goes in: ${say.list(facts.map(say.say))}.`,
  'programme.portion': ({ name, grams }: Args<'name' | 'grams'>, say: Speaker) =>
    `${name} ${say.mass(grams)}`,
  'programme.portion-percent': ({ name, fraction }: Args<'name' | 'fraction'>, say: Speaker) =>
    `${name} ${say.percent(fraction)}`,
  'programme.no-change': () => 'no change in temperature',
  'programme.change': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `${apartCelsius < 0 ? '' : '+'}${say.celsiusApart(apartCelsius)}`,
  'programme.work': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `${say.percent(fraction, 0)} of the work full development needs`,
  'programme.state': ({ parts }: Args<'parts'>, say: Speaker) => parts.map(say.say).join(' · '),
  'programme.minutes': ({ minutes }: Args<'minutes'>, say: Speaker) => `${say.number(minutes, 1)} min`,
  'programme.celsius': ({ celsius }: Args<'celsius'>, say: Speaker) => say.celsius(celsius),
  'programme.ice-left': () => 'ice still to melt',
};

type End = Args<'celsius' | 'bandCelsius'>;
type Warm = Args<'warmth' | 'apartCelsius' | 'targetCelsius'>;

function ended({ celsius, bandCelsius }: End, say: Speaker): string {
  return `Ends at ${say.celsiusBand(celsius, bandCelsius)}`;
}
