import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What a batch sheet says of the work: what is weighed when, how it is held, and what it is held up by. */
export const sheetWork = {
  'sheet.before-mixing': () => 'before mixing',
  'sheet.before-mixing-held': ({ facts }: Args<'facts'>, say: Speaker) =>
    `before mixing: ${say.list(facts.map(say.say))}`,
  'sheet.before': ({ seconds }: Args<'seconds'>, say: Speaker) => `${say.duration(seconds)} before`,
  'sheet.before-at': ({ seconds, celsius }: Args<'seconds' | 'celsius'>, say: Speaker) =>
    `${say.duration(seconds)} before, at ${say.celsius(celsius)}`,
  'sheet.before-held': ({ seconds, facts }: Args<'seconds' | 'facts'>, say: Speaker) =>
    `${say.duration(seconds)} before: ${say.list(facts.map(say.say))}`,
  'sheet.at-start': () => 'at the start',
  'sheet.after': ({ seconds }: Args<'seconds'>, say: Speaker) => `after ${say.duration(seconds)}`,
  'sheet.after-minutes': ({ minutes }: Args<'minutes'>, say: Speaker) =>
    `after ${say.number(minutes, 1)} min`,
  'sheet.times': ({ count }: Args<'count'>, say: Speaker) => say.count(count, { other: '# times' }),

  'held.soak': ({ seconds }: Args<'seconds'>, say: Speaker) => `soak ${say.duration(seconds)}`,
  'held.soak-at': (held: Held, say: Speaker) => `soak ${long(held, say)}`,
  'held.ferment': ({ seconds }: Args<'seconds'>, say: Speaker) => `ferment ${say.duration(seconds)}`,
  'held.ferment-at': (held: Held, say: Speaker) => `ferment ${long(held, say)}`,
  'held.hold': ({ seconds }: Args<'seconds'>, say: Speaker) => `hold ${say.duration(seconds)}`,
  'held.hold-at': (held: Held, say: Speaker) => `hold ${long(held, say)}`,
  'step.lasts': ({ written, seconds }: Args<'written' | 'seconds'>, say: Speaker) =>
    `${written} ${say.duration(seconds)}`,
  'step.at': ({ written, celsius }: Args<'written' | 'celsius'>, say: Speaker) =>
    `${written} at ${say.celsius(celsius)}`,
  'step.lasts-at': (held: Args<'written'> & Held, say: Speaker) => `${held.written} ${long(held, say)}`,

  'phase.speed': ({ number }: Args<'number'>) => `speed ${number}`,
  'phase.rest': () => 'rest',
  'phase.knead': () => 'knead',
  'phase.fold': () => 'fold',
  'phase.stir': () => 'stir',
  'phase.first-in': ({ written, names }: Args<'written' | 'names'>, say: Speaker) =>
    `${written}, first in: ${say.list(names)}`,

  'moment.mix': () => 'mix',
  'moment.mix-batch': ({ number, count }: Args<'number' | 'count'>) => `mix batch ${number} of ${count}`,
  'moment.fold': () => 'fold',
  'moment.ready': () => 'ready',
  'sheet.untimed': ({ names }: Args<'names'>, say: Speaker) =>
    `No time is written for ${say.list(names)}: allow for it.`,
  'sheet.further-batches': ({ count, seconds }: Args<'count' | 'seconds'>, say: Speaker) =>
    `The steps are timed for the first of ${count} batches; each further one follows ${say.duration(seconds)} later at the soonest.`,

  'clock.dough-at': ({ celsius }: Args<'celsius'>, say: Speaker) => `dough at ${say.celsius(celsius)}`,
  'clock.dough-from-to': ({ fromCelsius, toCelsius }: Args<'fromCelsius' | 'toCelsius'>, say: Speaker) =>
    `dough from ${say.celsius(fromCelsius)} to ${say.celsius(toCelsius)}`,
  'clock.morning-before': ({ written }: Args<'written'>) => `the morning before, ${written}`,
  'clock.afternoon-before': ({ written }: Args<'written'>) => `the afternoon before, ${written}`,
  'clock.evening-before': ({ written }: Args<'written'>) => `the evening before, ${written}`,
  'clock.days-before': ({ count, written }: Args<'count' | 'written'>, say: Speaker) =>
    `${say.count(count, { one: '# day', other: '# days' })} before, ${written}`,
  'clock.next-day': ({ written }: Args<'written'>) => `the next day, ${written}`,
  'clock.days-later': ({ count, written }: Args<'count' | 'written'>, say: Speaker) =>
    `${say.count(count, { one: '# day', other: '# days' })} later, ${written}`,

  'sheet.ripe-culture': () => 'ripe culture',
  'sheet.ice': () => 'ice',
  'sheet.water-at': ({ celsius }: Args<'celsius'>, say: Speaker) => `at ${say.celsius(celsius)}`,
  'sheet.from-tap': ({ tapCelsius }: Args<'tapCelsius'>, say: Speaker) =>
    `from the tap, at ${say.celsius(tapCelsius)}`,
  'sheet.from-tap-assumed': ({ tapCelsius }: Args<'tapCelsius'>, say: Speaker) =>
    `from the tap, assumed to be at ${say.celsius(tapCelsius)}`,
  'sheet.no-hotter': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `at ${say.celsius(celsius)} and no hotter`,
  'sheet.same-temperature': () => 'at the same temperature',
  'sheet.finer-scale': () => 'on a finer scale',
  'sheet.not-known-yet': () => 'not known yet',
  'sheet.keep-back': ({ grams }: Args<'grams'>, say: Speaker) =>
    `keep back ${say.mass(grams)} for the next day`,
  'sheet.steams-away': ({ lostGrams, grams }: Args<'lostGrams' | 'grams'>, say: Speaker) =>
    `${say.mass(lostGrams)} steams away while it cooks: ${say.mass(grams)} is left`,
  'sheet.elsewhere': ({ name, names }: Args<'name' | 'names'>, say: Speaker) =>
    `all of the ${name} is in ${say.list(names.map((one) => `the ${one}`))}`,
  'sheet.elsewhere-parts': ({ name }: Args<'name'>) => `all of the ${name} is in the parts`,
  'sheet.too-little': ({ name, grams }: Args<'name' | 'grams'>, say: Speaker) =>
    `${say.mass(grams)} of ${name}, too little to weigh`,

  'place.in-bowl': () => 'in the bowl',
  'sheet.batches-in': ({ count, grams, place }: Args<'count' | 'grams' | 'place'>, say: Speaker) =>
    `${say.count(count, { one: '# batch', other: '# batches' })} of ${say.mass(grams)} ${say.say(place)}`,
  'sheet.batches-none': ({ name }: Args<'name'>) =>
    `in no number of equal batches does this dough fit the bowl of ${name}`,

  'sheet.tried': () => 'Tried for today; the file says otherwise.',
  'sheet.merge-elsewhere': () =>
    'A merge is not finished in a formula that this one takes up: nothing is added up until it is.',
  'sheet.empty': () => 'Nothing can be weighed yet: the formula has no ingredients.',
  'sheet.held-by': ({ number, sentence }: Args<'number' | 'sentence'>) =>
    `Line ${number} holds this sheet up: ${sentence}`,
  'sheet.weight-not-known': ({ name }: Args<'name'>) => `The weight of “${name}” is not known yet.`,
  'sheet.as-computed': () => 'as computed',
  'sheet.warmer': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `${say.celsiusApart(apartCelsius)} warmer`,
  'sheet.colder': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `${say.celsiusApart(apartCelsius)} colder`,
};

type Held = Args<'seconds' | 'celsius'>;

function long({ seconds, celsius }: Held, say: Speaker): string {
  return `${say.duration(seconds)} at ${say.celsius(celsius)}`;
}
