import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** The hours outside the mixer: steps, rising, and the plan of a day. */
export const standing = {
  'step-time.begins': ({ seconds }: Args<'seconds'>, say: Speaker) =>
    `Begins ${say.duration(seconds)} into the process.`,
  'step-time.first': ({ seconds }: Args<'seconds'>, say: Speaker) =>
    `Begins with the process, ends after ${say.duration(seconds)}.`,
  'step-time.later': ({ seconds, otherSeconds }: Args<'seconds' | 'otherSeconds'>, say: Speaker) =>
    `Begins ${say.duration(seconds)} into the process, ends after ${say.duration(otherSeconds)}.`,
  'step-time.allow': ({ names }: Args<'names'>, say: Speaker) =>
    `Allow for what has no time: ${say.list(names)}.`,
  'step-time.whole': ({ seconds }: Args<'seconds'>, say: Speaker) =>
    `**${say.duration(seconds)}** by the times that are written.`,

  'rise.as-long': ({ seconds, celsius }: Args<'seconds' | 'celsius'>, say: Speaker) =>
    `**As long as ${say.duration(seconds)} at ${say.celsius(celsius)}**.`,
  'rise.nothing-moves': () => 'Nothing moves in it.',
  'rise.far': () => 'By then it is far past doubled.',
  'rise.grown': (rise: Args<'fraction' | 'lowFraction' | 'highFraction'>, say: Speaker) =>
    `By its end grown by about ${say.percent(rise.fraction, 0)} (${say.number(rise.lowFraction * 100, 0)}–${say.percent(rise.highFraction, 0)}).`,
  'rise.warmth': ({ fromCelsius, toCelsius }: Args<'fromCelsius' | 'toCelsius'>, say: Speaker) =>
    `The dough goes from ${say.celsius(fromCelsius)} to ${say.celsius(toCelsius)} on the way.`,
  'rise.by-trials': () => '_By the rise of your own trials; trust the dough before the clock._',
  'rise.until-trial': () =>
    '_Common practice, until a trial states a `rise`; trust the dough before the clock._',
  'rise.common-practice': () => '_Common practice; trust the dough before the clock._',

  'time.clock': ({ minutes }: Args<'minutes'>, say: Speaker) => say.clock(minutes),
  'time.day': ({ number, minutes }: Args<'number' | 'minutes'>, say: Speaker) =>
    `day ${number} ${say.clock(minutes)}`,
  'time.date': ({ written, minutes }: Args<'written' | 'minutes'>, say: Speaker) =>
    `${written} ${say.clock(minutes)}`,

  'planned.batches': ({ count, when }: Args<'count' | 'when'>, say: Speaker) =>
    `${say.count(count, { one: '# batch', other: '# batches' })} of dough, the first mixed ${say.say(when)}.`,
  'planned.first-work': ({ part, when }: Args<'part' | 'when'>, say: Speaker) =>
    `The first work is ${part}, ${say.say(when)}.`,
  'planned.late': ({ name, seconds }: Args<'name' | 'seconds'>, say: Speaker) =>
    `${name} is ${say.duration(seconds)} late.`,
  'planned.in-time': () => 'All is ready in time.',
  'planned.left-out': ({ reason }: Args<'reason'>, say: Speaker) => `Not in the plan: ${say.say(reason)}.`,
  'planned.together': ({ name }: Args<'name'>) => `**${name}**, with the other lines of it`,
  'planned.batch': ({ figures, parts }: Args<'figures' | 'parts'>, say: Speaker) =>
    `${say.say(figures)}: ${parts.map(say.say).join(' · ')}`,
  'planned.pieces': ({ count, grams }: Args<'count' | 'grams'>, say: Speaker) =>
    `${say.count(count, { one: '# piece', other: '# pieces' })}, ${say.mass(grams)}`,
  'planned.mix': ({ when }: Args<'when'>, say: Speaker) => `mix ${say.say(when)}`,
  'planned.oven': ({ when }: Args<'when'>, say: Speaker) => `oven ${say.say(when)}`,
  'planned.ready': ({ when }: Args<'when'>, say: Speaker) => `ready ${say.say(when)}`,
  'planned.part': ({ part, grams, when }: Args<'part' | 'grams' | 'when'>, say: Speaker) =>
    `${part}: make ${say.mass(grams)} ${say.say(when)}`,
  'planned.doughs': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# dough', other: '# doughs' }),
  'planned.formulas': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# formula', other: '# formulas' }),
};
