import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** The three answers at the head of a batch sheet: how warm the dough gets, its state at the end, and its water. */
export const glance = {
  'glance.leaves': () => 'Leaves the mixer at',
  'glance.stop': () => 'When you stop',
  'glance.water': () => 'Water',
  'glance.not-known': () => 'not known',

  'glance.as-wanted': () => 'as wanted',
  'glance.about-as-wanted': () => 'about as wanted',
  'glance.as-usual': () => 'as is usual',
  'glance.about-as-usual': () => 'about as is usual',
  'glance.warmer': ({ warmth, apartCelsius }: Args<'warmth' | 'apartCelsius'>, say: Speaker) =>
    `${say.say(warmth)} by ${say.celsiusApart(apartCelsius)}`,
  'glance.cooler': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `${say.celsiusApart(apartCelsius)} too cool`,
  'glance.much-too-warm': () => 'much too warm',
  'glance.above': ({ limitCelsius }: Args<'limitCelsius'>, say: Speaker) =>
    `above ${say.celsius(limitCelsius)}`,
  'glance.wanted': ({ targetCelsius }: Args<'targetCelsius'>, say: Speaker) =>
    `${say.celsius(targetCelsius)} wanted`,
  'glance.usual': ({ targetCelsius }: Args<'targetCelsius'>, say: Speaker) =>
    `${say.celsius(targetCelsius)} is usual; the formula states none`,
  'glance.too-warm-from': ({ limitCelsius, minutes }: Args<'limitCelsius' | 'minutes'>, say: Speaker) =>
    `above ${say.celsius(limitCelsius)} after ${say.minutes(minutes)}`,
  'glance.too-warm-if': ({ limitCelsius, minutes }: Args<'limitCelsius' | 'minutes'>, say: Speaker) =>
    `above ${say.celsius(limitCelsius)} after ${say.minutes(minutes)}, if the last speed went on`,

  'glance.too-early': () => 'too early',
  'glance.perhaps-too-early': () => 'perhaps too early',
  'glance.too-late': () => 'too late',
  'glance.perhaps-too-late': () => 'perhaps too late',
  'glance.longer-than-needed': () => 'far longer than it needs',
  'glance.stop-after': ({ programmeMinutes }: Args<'programmeMinutes'>, say: Speaker) =>
    `after ${say.minutes(programmeMinutes)}`,
  'glance.best-stop': ({ minutes }: Args<'minutes'>, say: Speaker) =>
    `best after about ${say.minutes(minutes)}`,
  'glance.best-stop-if': ({ minutes }: Args<'minutes'>, say: Speaker) =>
    `best after about ${say.minutes(minutes)}, at the last speed`,
  'glance.until-let-down': ({ lowMinutes, highMinutes }: Args<'lowMinutes' | 'highMinutes'>, say: Speaker) =>
    `lets down ${say.minutesBand(lowMinutes, highMinutes)} later at the last speed`,
  'glance.let-down-from': ({ lowMinutes, highMinutes }: Args<'lowMinutes' | 'highMinutes'>, say: Speaker) =>
    `lets down after about ${say.minutesBand(lowMinutes, highMinutes)}`,
  'glance.let-down-far': () => 'far from letting down',

  'glance.to-draw': () => 'to draw',
  'glance.no-hotter': () => 'and no hotter',
  'glance.of-ice': ({ iceGrams }: Args<'iceGrams'>, say: Speaker) => `${say.mass(iceGrams)} of ice`,
  'glance.with-tap': ({ tapGrams, tapCelsius }: Args<'tapGrams' | 'tapCelsius'>, say: Speaker) =>
    `and ${say.mass(tapGrams)} from the tap, at ${say.celsius(tapCelsius)}`,
  'glance.ice-enough': () => 'brings it there',
  'glance.not-enough': () => 'not enough',
  'glance.from-tap': () => 'from the tap',
  'glance.tap-assumed': () => 'from the tap, assumed',
  'glance.tap-too-warm': () => 'too warm from the tap',
  'glance.little-effect': () => 'makes little difference',
  'glance.as-stated': () => 'as the file states',
  'glance.flour-takes': ({ fraction, heldFraction }: Args<'fraction' | 'heldFraction'>, say: Speaker) =>
    `flour takes about ${say.percent(fraction, 0)}, dough has ${say.percent(heldFraction, 0)}`,
  'glance.flour-takes-assumed': (
    { fraction, heldFraction }: Args<'fraction' | 'heldFraction'>,
    say: Speaker,
  ) =>
    `flour of this kind usually takes about ${say.percent(fraction, 0)}; the dough has ${say.percent(heldFraction, 0)}`,

  'log.title': () => 'Noted on the day',
  'log.day': () => 'Day',
  'log.at-minutes': ({ unit }: Args<'unit'>) => `${unit} at ____ min`,
  'log.initials': () => 'Initials',
};
