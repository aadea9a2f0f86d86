import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** The bill of heat, and the rule of thumb beside it. */
export const mixingHeat = {
  'provenance.given': () => 'stated',
  'provenance.measured': () => 'measured',
  'provenance.published': () => 'published',
  'provenance.common-practice': () => 'common practice',
  'provenance.in-section': () => 'stated in its section',

  'heat-bill.hydration': () => 'heat of hydration',
  'heat-bill.working': () => 'mixing',
  'heat-bill.room': () => 'room',
  'heat-bill.ice': () => 'ice',
  'heat-bill.change': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `${apartCelsius > 0 ? '+' : ''}${say.celsiusApart(apartCelsius)}`,
  'heat-bill.head': () => 'heat',
  'heat-bill.head-change': () => 'does to the dough',
  'heat-bill.provenance': ({ source }: Args<'source'>, say: Speaker) =>
    `_(${say.say(source)}: heat contents are published, the warming by mixing is our own fit)_`,

  'comparison.rule': () => 'rule of thumb',
  'comparison.balance': () => 'balance of heat',
  'comparison.water': () => 'water',
  'comparison.dough': () => 'desired dough temperature',
  'comparison.flour': ({ celsius }: Args<'celsius'>, say: Speaker) => `flour at ${say.celsius(celsius)}`,
  'comparison.preferment': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `preferment at ${say.celsius(celsius)}`,
  'comparison.room': ({ celsius }: Args<'celsius'>, say: Speaker) => `room at ${say.celsius(celsius)}`,
  'comparison.others': () => 'all else in the bowl',
  'comparison.friction-given': () => 'friction factor, stated',
  'comparison.friction-mild': () => 'friction factor of a mild day',
  'comparison.working': () => 'mixing',
  'comparison.hydration': () => 'heat of hydration',
  'comparison.agree': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `Rule of thumb and balance agree to ${say.celsiusApart(apartCelsius)}.`,
  'comparison.warmer': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `The rule of thumb comes out ${say.celsiusApart(apartCelsius)} warmer.`,
  'comparison.colder': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `The rule of thumb comes out ${say.celsiusApart(apartCelsius)} colder.`,
  'comparison.warmer-because': (off: Args<'apartCelsius' | 'partCelsius' | 'reason'>, say: Speaker) =>
    `The rule of thumb comes out ${say.celsiusApart(off.apartCelsius)} warmer; ${say.celsiusApart(off.partCelsius)} because ${say.say(off.reason)}.`,
  'comparison.colder-because': (off: Args<'apartCelsius' | 'partCelsius' | 'reason'>, say: Speaker) =>
    `The rule of thumb comes out ${say.celsiusApart(off.apartCelsius)} colder; ${say.celsiusApart(off.partCelsius)} because ${say.say(off.reason)}.`,
  'comparison.because-flour': () => 'it counts the flour as heavy as the water',
  'comparison.because-preferment': () => 'it counts the preferment as heavy as the water',
  'comparison.because-others': () => 'it leaves out everything but flour and water',
  'comparison.because-day': () =>
    'room and friction factor stand for mixing, hydration and what the room takes, on another day',

  'heat.from-tap': ({ tapCelsius, doughCelsius }: Args<'tapCelsius' | 'doughCelsius'>, say: Speaker) =>
    `With all its water from the tap, at ${say.celsius(tapCelsius)}, the dough would end at ${say.celsius(doughCelsius)}.`,
  'heat.minutes-left': ({ minutes, limitCelsius }: Args<'minutes' | 'limitCelsius'>, say: Speaker) =>
    `${say.minutes(minutes)} more at the last speed and it is too warm, above ${say.celsius(limitCelsius)}.`,
  'heat.too-warm-from-start': ({ limitCelsius }: Args<'limitCelsius'>, say: Speaker) =>
    `It is too warm, above ${say.celsius(limitCelsius)}, from the start.`,
  'heat.too-warm-after': ({ minutes, limitCelsius }: Args<'minutes' | 'limitCelsius'>, say: Speaker) =>
    `It is too warm, above ${say.celsius(limitCelsius)}, after ${say.minutes(minutes)}.`,
};
