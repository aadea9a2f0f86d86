import { stopFirst } from '../../text/stop-first.ts';
import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Trials beside what is computed, and the programme that they keep. */
export const mixingTrials = {
  'trial-contradicts.second': ({ seconds }: Args<'seconds'>, say: Speaker) =>
    `A second reading at ${say.duration(seconds)}. Each minute of a trial has one; correct the time of one of them.`,
  'trial-contradicts.backwards': (
    { seconds, otherSeconds }: Args<'seconds' | 'otherSeconds'>,
    say: Speaker,
  ) =>
    `The time runs backwards: this reading stands at ${say.duration(seconds)}, the one before at ${say.duration(otherSeconds)}. Times run from the start of mixing.`,
  'trial-contradicts.before': () => 'the reading before',
  'trial-contradicts.over': ({ seconds, otherSeconds }: Args<'seconds' | 'otherSeconds'>, say: Speaker) =>
    `The programme is over after ${say.duration(otherSeconds)}, and this reading stands at ${say.duration(seconds)}. Correct the time, or write into the trial what was really run: \`mixed in …\`, then its \`speed\` lines.`,
  'trial-contradicts.over-kept': (
    { seconds, otherSeconds }: Args<'seconds' | 'otherSeconds'>,
    say: Speaker,
  ) =>
    `The programme is over after ${say.duration(otherSeconds)}, and this reading stands at ${say.duration(seconds)}. Correct the time, or give the trial’s programme the minutes it really ran.`,
  'trial-contradicts.hotter': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `${say.celsius(celsius)} is hotter than mixing makes a dough. Correct the reading; what a thermometer in Fahrenheit shows is written with °F.`,
  'trial-contradicts.colder': ({ celsius, limitCelsius }: Args<'celsius' | 'limitCelsius'>, say: Speaker) =>
    `${say.celsius(celsius)} is colder than this dough can have been: what went in comes to ${say.celsius(limitCelsius)} before any warming. Correct the reading, or the temperatures above it; ice counts as colder water.`,
  'trial-contradicts.stage-back': (
    { stage, otherStage, seconds }: Args<'stage' | 'otherStage' | 'seconds'>,
    say: Speaker,
  ) =>
    `“${say.say(stage)}” after “${say.say(otherStage)}” at ${say.duration(seconds)}: a dough does not go back. Correct one of the two.`,
  'trial-contradicts.stage': ({ stage }: Args<'stage'>, say: Speaker) => `“${say.say(stage)}”`,
  'trial-contradicts.heavier': (
    { doughGrams, pouredGrams }: Args<'doughGrams' | 'pouredGrams'>,
    say: Speaker,
  ) =>
    `The dough weighs ${say.mass(doughGrams)}, and only ${say.mass(pouredGrams)} went in: dough gains no weight. Correct it, or write the weight of the water that was really used.`,
  'trial-contradicts.baked-heavier': (
    { bakedGrams, doughGrams }: Args<'bakedGrams' | 'doughGrams'>,
    say: Speaker,
  ) =>
    `${say.mass(bakedGrams)} baked is more than the ${say.mass(doughGrams)} of dough: bread loses weight in the oven. Correct one of the two.`,

  'unknown-feel.meant': ({ name, meant }: Args<'name' | 'meant'>) =>
    `“${name}” is not one of the words for a dough, and counts for nothing. Is it “${meant}”?`,
  'unknown-feel.none': ({ name, words }: Args<'name' | 'words'>, say: Speaker) =>
    `“${name}” is neither a stage nor a word for how a dough feels, and counts for nothing. Such words are ${say.list(words)}.`,
  'unknown-feel.second': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `A reading has one stage, and “${name}” counts. Take “${otherName}” out.`,

  'trial-without-programme.none': () =>
    'This trial does not state what was run, so it is read under the programme as it is now.',
  'trial-without-programme.write': () =>
    'This trial does not state what was run, so it is read under the programme as it is now. Write what was run into it: `mixed in …`, then its `speed` lines.',
  'trial-without-programme.fix-this': () => 'Write the programme as it is now into this trial',
  'trial-without-programme.fix-all': ({ count }: Args<'count'>, say: Speaker) =>
    `Write it into all ${say.count(count, { other: '# trials' })} of this formula that keep none`,

  'kept-programme.title': ({ title, count }: Args<'title' | 'count'>, say: Speaker) =>
    `${say.say(title)}; ${keeps(count, say)}`,

  'not-in-dough.none': ({ name }: Args<'name'>) =>
    `“${name}” is not in this dough, so nothing goes into the bowl for it. Give it a line in the formula, or take it out here.`,
  'not-in-dough.meant': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `“${name}” is not in this dough, so nothing goes into the bowl for it. Is it “${otherName}”?`,
  'not-in-dough.trial': ({ name }: Args<'name'>) =>
    `“${name}” is not in this dough as it is now, so the trial is computed without it.`,
  'not-in-dough.trial-meant': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `“${name}” is not in this dough as it is now, so the trial is computed without it. Is it “${otherName}”?`,

  'feel.rough': () => 'rough',
  'feel.tears': () => 'tears when it is stretched',
  'feel.sticks to the bowl': () => 'sticks to the bowl',
  'feel.sticky': () => 'sticky',
  'feel.wet': () => 'wet',
  'feel.clears the bowl': () => 'clears the bowl',
  'feel.smooth': () => 'smooth',
  'feel.stretches': () => 'stretches',
  'feel.shiny': () => 'shiny',
  'feel.window': () => 'a window can be pulled',
  'feel.slack': () => 'slack',
  'feel.stringy': () => 'stringy',
  'reading.state': ({ celsius }: Args<'celsius'>, say: Speaker) => say.celsius(celsius),
  'reading.state-stage': ({ celsius, stage }: Args<'celsius' | 'stage'>, say: Speaker) =>
    `${say.celsius(celsius)}, ${say.say(stage)}`,
  'reading.state-feel': ({ measured, facts }: Args<'measured' | 'facts'>, say: Speaker) =>
    `${say.say(measured)}, ${say.list(facts.map(say.say))}`,
  'reading.seen': ({ facts }: Args<'facts'>, say: Speaker) =>
    facts.length === 0 ? 'nothing' : say.list(facts.map(say.say)),
  'reading.seen-alone': ({ measured, reason }: Args<'measured' | 'reason'>, say: Speaker) =>
    `**Seen: ${say.say(measured)}** — nothing to set beside it: ${say.say(reason)}.`,
  'reading.seen-beside': ({ measured, computed }: Args<'measured' | 'computed'>, say: Speaker) =>
    `**Seen: ${say.say(measured)}** — computed ${say.say(computed)}.`,
  'reading.seen-same-stage': ({ measured, computed }: Args<'measured' | 'computed'>, say: Speaker) =>
    `**Seen: ${say.say(measured)}** — computed ${say.say(computed)}: the stage agrees.`,
  'reading.seen-other-stage': ({ measured, computed }: Args<'measured' | 'computed'>, say: Speaker) =>
    `**Seen: ${say.say(measured)}** — computed ${say.say(computed)}: another stage.`,
  'feel.means-one': ({ stage }: Args<'stage'>, say: Speaker) =>
    `Feels like a dough that is in the stage “${say.say(stage)}” _(common practice)_.`,
  'feel.means': ({ stage, otherStage }: Args<'stage' | 'otherStage'>, say: Speaker) =>
    `Feels like a dough between “${say.say(stage)}” and “${say.say(otherStage)}” _(common practice)_.`,
  'feel.any': () =>
    'A window tells no stage by itself: it can be pulled from a rested dough that was hardly mixed, and from one mixed far past need. Another word beside it does.',
  'feel.both-ends': () =>
    'A dough feels so before it is developed and again when it is past its best, so this tells no stage by itself. Another word beside it does.',
  'feel.contradict': () => 'No stage feels like all of these words, so they tell none.',
  'feel.stage-wins': () => 'The stage that is written counts; the feel stands beside it.',
  'reading.alone': ({ measured, reason }: Args<'measured' | 'reason'>, say: Speaker) =>
    `**Measured ${say.say(measured)}** — no figure to set beside it: ${say.say(reason)}.`,
  'reading.beside': (
    { measured, computed, difference }: Args<'measured' | 'computed' | 'difference'>,
    say: Speaker,
  ) => `**Measured ${say.say(measured)}** — computed ${say.say(computed)}: ${say.say(difference)}.`,
  'reading.as-computed': () => 'as computed',
  'reading.warmer': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `${say.celsiusApart(apartCelsius)} warmer than that`,
  'reading.colder': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `${say.celsiusApart(apartCelsius)} colder than that`,
  'reading.same-stage': ({ difference }: Args<'difference'>, say: Speaker) =>
    `${say.say(difference)}, the stage agrees`,
  'reading.other-stage': ({ difference }: Args<'difference'>, say: Speaker) =>
    `${say.say(difference)}, and another stage`,

  'readings.measured': () => 'measured',
  'readings.computed': () => 'computed',
  'readings.end': () => 'end',
  'readings.miss': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `The readings miss what is computed by ${say.celsiusApart(apartCelsius)}.`,
  'readings.miss-warmer': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `The readings miss what is computed by ${say.celsiusApart(apartCelsius)}, on the whole warmer than computed.`,
  'readings.miss-colder': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    `The readings miss what is computed by ${say.celsiusApart(apartCelsius)}, on the whole colder than computed.`,
  'readings.alone': ({ reason }: Args<'reason'>, say: Speaker) =>
    `Nothing to set beside the readings: ${say.say(reason)}.`,
  'readings.friction': ({ apartCelsius, example }: Args<'apartCelsius' | 'example'>, say: Speaker) =>
    `Friction factor by this trial: ${say.celsiusApart(apartCelsius)} (a difference, for three temperatures). It holds for such a batch, time and hydration; in a mixer’s section it is written \`${example}\`.`,
  'readings.stop-first': () => stopFirst,

  'trial-loss.half': (loss: Loss & Args<'fraction'>, say: Speaker) =>
    `${missing(loss, say)} Were half of it such dough, it would be ${say.percent(loss.fraction)}. Weigh what sticks, or give the formula a \`loss\`, to tell them apart.`,
  'trial-loss.all-stuck': (loss: Loss, say: Speaker) =>
    `${missing(loss, say)} The formula’s own loss counts as much as that left behind: then no water is lost.`,
  'trial-loss.some-stuck': (loss: Loss & Args<'stuckGrams' | 'fraction'>, say: Speaker) =>
    `${missing(loss, say)} The formula’s own loss leaves ${say.mass(loss.stuckGrams)} of dough behind: then the rest is water, and the hydration ${say.percent(loss.fraction)}.`,
};

function keeps(count: number, say: Speaker): string {
  return say.count(count, { one: 'trial kept', other: '# trials kept' });
}

type Loss = Args<'lostGrams' | 'pouredGrams' | 'highFraction' | 'lowFraction'>;

function missing({ lostGrams, pouredGrams, highFraction, lowFraction }: Loss, say: Speaker): string {
  return `${say.mass(lostGrams)} of ${say.mass(pouredGrams)} were missing when the dough was weighed. Were all of it water, the hydration would have fallen from ${say.percent(highFraction)} to ${say.percent(lowFraction)}, at most; dough left on bowl, table and hands takes its flour with it and changes no hydration.`;
}
