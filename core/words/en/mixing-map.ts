import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** The map of the gap: what a dough is by the minute at which its mixer is stopped, for doughs that differ in one thing. */
export const mixingMap = {
  'map.title': () => 'The map of the gap',
  'map.heading': ({ name, place }: Args<'name' | 'place'>, say: Speaker) =>
    `${name}, ${say.say(place)}: the map of the gap`,
  'map.axis-water': () => 'Hydration',
  'map.axis-flour': ({ name, otherName }: Args<'name' | 'otherName'>) => `${otherName} instead of ${name}`,
  'map.axis-speed': () => 'Last line at',
  'map.not-yet': () => 'not yet developed',
  'map.this-formula': () => 'this formula',
  'map.across-water': () =>
    'Minutes of mixing run across, hydration runs up: the same formula with less and with more water.',
  'map.across-flour': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `Minutes of mixing run across; up, ${otherName} little by little takes the place of ${name}, with the water as it is.`,
  'map.across-speed': () =>
    'Minutes of mixing run across; up, the last line of the programme runs at each speed of the mixer.',
  'map.minutes-run': () =>
    'Minutes run as the programme is written, rests included, and past its end as if its last speed went on. Each row has its own water drawn for the programme as it is written.',
  'map.mark': ({ minutes, state }: Args<'minutes' | 'state'>, say: Speaker) =>
    `This formula stops at ${say.minutes(minutes)}: ${say.say(state)}.`,
  'map.gap': ({ minutes }: Args<'minutes'>, say: Speaker) =>
    `From developed to let-down it has about ${say.minutes(minutes)}.`,
  'map.no-let-down': () => 'However long it is mixed, it does not let down.',
  'map.gap-far': () => 'Let-down is far off.',
  'map.gap-narrow': (
    { lowMinutes, written, otherWritten }: Args<'lowMinutes' | 'written' | 'otherWritten'>,
    say: Speaker,
  ) =>
    `Of all rows the gap is narrowest at ${written}, about ${say.minutes(lowMinutes)}; at ${otherWritten} let-down is far off.`,
  'map.gap-between': (
    {
      lowMinutes,
      written,
      highMinutes,
      otherWritten,
    }: Args<'lowMinutes' | 'written' | 'highMinutes' | 'otherWritten'>,
    say: Speaker,
  ) =>
    `Of all rows the gap is narrowest at ${written}, about ${say.minutes(lowMinutes)}, and widest at ${otherWritten}, about ${say.minutes(highMinutes)}.`,
  'map.too-warm': ({ limitCelsius, minutes }: Args<'limitCelsius' | 'minutes'>, say: Speaker) =>
    `It is above ${say.celsius(limitCelsius)}, too warm, from ${say.minutes(minutes)} on.`,
  'map.too-warm-if': ({ limitCelsius, minutes }: Args<'limitCelsius' | 'minutes'>, say: Speaker) =>
    `It would be above ${say.celsius(limitCelsius)}, too warm, from ${say.minutes(minutes)} on, if the last speed went on.`,
  'map.never-too-warm': ({ limitCelsius }: Args<'limitCelsius'>, say: Speaker) =>
    `It does not get above ${say.celsius(limitCelsius)}.`,
  'map.above': ({ limitCelsius }: Args<'limitCelsius'>, say: Speaker) =>
    `above ${say.celsius(limitCelsius)}: too warm`,
  'map.wished': (
    { degree, lowMinutes, highMinutes }: Args<'degree' | 'lowMinutes' | 'highMinutes'>,
    say: Speaker,
  ) => `It is mixed as wished, ${say.say(degree)}, from about ${say.minutesBand(lowMinutes, highMinutes)}.`,
  'map.as-wished': () => 'mixed as wished',
  'map.developed-from': () => 'Developed from',
  'map.let-down-from': () => 'Let down from',
  'map.breakdown-from': () => 'Broken down from',
  'map.too-warm-from': () => 'Too warm from',
  'map.gap-head': () => 'Gap',
  'map.never': () => 'never',
  'map.readings': () => 'Readings of trials',
  'map.no-work': () => 'the programme works no dough',
  'map.no-water': () => 'the dough has no line of water whose amount can be changed',
  'map.no-flour': () => 'the dough has no flour that another could take the place of',
  'map.flour-not-found': ({ name }: Args<'name'>) => `no flour is called “${name}”`,
  'map.flour-same': ({ name }: Args<'name'>) => `“${name}” is the flour of the formula itself; name another`,
  'map.no-speeds': ({ name }: Args<'name'>) =>
    `${name} has no other speed for the last line; a map against water or flour can be drawn`,
  'map.rows-left-out': ({ reason }: Args<'reason'>, say: Speaker) =>
    `Rows of which no development can be computed are left out: ${say.say(reason)}.`,
  'map.one-drawing': ({ names }: Args<'names'>, say: Speaker) =>
    `one drawing shows one formula; say with --formula which of ${say.list(names)}`,
  'map.none': ({ name, reason }: Args<'name' | 'reason'>, say: Speaker) =>
    `There is no map of the gap for ${name}: ${say.say(reason)}.`,
};
