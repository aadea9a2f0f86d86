import { stopFirst } from '../../text/stop-first.ts';
import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What trials show of mixers and flours, and what they do not. Reasons are clauses that stand behind a colon. */
export const calibration = {
  'calibration.readings': ({ count, otherCount }: Args<'count' | 'otherCount'>, say: Speaker) =>
    readingsOf(count, otherCount, say),
  'calibration.readings-newest': (
    { count, otherCount, trialCount }: Args<'count' | 'otherCount' | 'trialCount'>,
    say: Speaker,
  ) =>
    `${readingsOf(count, otherCount, say)}, of its newest ${say.count(trialCount, { one: '# trial', other: '# trials' })}`,
  'calibration.warms': ({ number }: Args<'number'>) => `how speed ${number} warms`,
  'calibration.warms-towards': () => 'what hands warm the dough towards',
  'calibration.settles': () => 'how slowly the dough follows the room',
  'calibration.friction': () => 'the friction factor',

  'calibration.no-kind': () => 'the mixer does not state of what kind it is',
  'calibration.no-temperature': () => 'no trial of this mixer has a temperature that can be compared',
  'calibration.one-reading': () =>
    'one reading is too little. Log two or three of one mix, the last of them at its end',
  'calibration.too-close': () =>
    'its readings lie too close together to show anything of it. Log two or three, spread over one mix, the last of them at its end',
  'calibration.no-stage': () => 'no stage of the dough was written down that can be compared',
  'calibration.stages-disagree': () =>
    'the stages seen do not agree with one another; flours differ, and a stage is judged by eye',
  'calibration.lacks-settling': () =>
    'it shows only as a dough stops getting warmer. Mix one batch long, or log a last reading of a long programme',
  'calibration.lacks-drift': () =>
    'the dough had not yet come near it. Log a reading after a quarter of an hour of work or more',
  'calibration.lacks-time': ({ number }: Args<'number'>) =>
    `too little time passed at speed ${number} between two readings. Take the dough’s temperature just before and just after it`,
  'calibration.lacks-reading': ({ number }: Args<'number'>) =>
    `no reading was taken once speed ${number} had run. Take the dough’s temperature just before and just after it`,

  'calibration.not-yet': ({ reason }: Args<'reason'>, say: Speaker) =>
    `Its trials do not show yet how it warms dough: ${say.say(reason)}.`,
  'calibration.title': (
    { source, apartCelsius, laterCelsius }: Args<'source' | 'apartCelsius' | 'laterCelsius'>,
    say: Speaker,
  ) =>
    `**Calibration** from ${say.say(source)}. Misses of the readings, as it is: ${say.celsiusApart(apartCelsius)}; calibrated: ${say.celsiusApart(laterCelsius)}.`,
  'calibration.title-before-not-known': (
    { source, laterCelsius }: Args<'source' | 'laterCelsius'>,
    say: Speaker,
  ) =>
    `**Calibration** from ${say.say(source)}. Misses of the readings, as it is: not known; calibrated: ${say.celsiusApart(laterCelsius)}.`,
  'calibration.row': ({ title, parts }: Args<'title' | 'parts'>, say: Speaker) =>
    `${say.say(title)}: ${parts.map(say.say).join('; ')}`,
  'calibration.now': ({ figures, source }: Args<'figures' | 'source'>, say: Speaker) =>
    `now ${say.say(figures)} _(${say.say(source)})_`,
  'calibration.by-trials': ({ figures, difference }: Args<'figures' | 'difference'>, say: Speaker) =>
    `by the trials **${say.say(figures)}** ± ${say.say(difference)}`,
  'calibration.not-shown': ({ reason }: Args<'reason'>, say: Speaker) =>
    `the trials do not show it: ${say.say(reason)}`,
  'calibration.celsius-per-minute': ({ celsiusPerMinute }: Args<'celsiusPerMinute'>, say: Speaker) =>
    say.celsiusPerMinute(celsiusPerMinute, 2),
  'calibration.celsius': ({ celsius }: Args<'celsius'>, say: Speaker) => say.celsius(celsius),
  'calibration.celsius-apart': ({ apartCelsius }: Args<'apartCelsius'>, say: Speaker) =>
    say.celsiusApart(apartCelsius),
  'calibration.minutes': ({ minutes }: Args<'minutes'>, say: Speaker) =>
    `${say.number(minutes, minutes < 10 ? 1 : 0)} min`,
  'calibration.standard-error': () => '_± is one standard error._',
  'calibration.stop-first': () => `_Readings for a trial: ${stopFirst}_`,

  'calibration.development-not-known': ({ reason }: Args<'reason'>, say: Speaker) =>
    `How fast it develops dough: ${say.say(reason)}.`,
  'calibration.factors': ({ lowFactor, highFactor }: Args<'lowFactor' | 'highFactor'>, say: Speaker) =>
    `${say.number(lowFactor, 2)} to ${say.number(highFactor, 2)} times`,
  'calibration.least-factor': ({ lowFactor }: Args<'lowFactor'>, say: Speaker) =>
    `at least ${say.number(lowFactor, 2)} times`,
  'calibration.most-factor': ({ highFactor }: Args<'highFactor'>, say: Speaker) =>
    `at most ${say.number(highFactor, 2)} times`,
  'calibration.develops-agrees': (seen: Args<'count' | 'figures'>, say: Speaker) =>
    `${developsBy(seen, say)}: that agrees, flours being as different as they are.`,
  'calibration.develops-one-flour': (seen: Args<'count' | 'figures'>, say: Speaker) =>
    `${developsBy(seen, say)}: one flour alone shows it, so it may be the flour’s as well as the mixer’s, and it is written into neither.`,
  'calibration.develops-mixer': (seen: Args<'count' | 'figures'>, say: Speaker) =>
    `${developsBy(seen, say)}: several flours show it, so it is the mixer’s: write \`develops\` on its speeds.`,

  'mixer-can-be-calibrated.mixer': ({ name, source }: Args<'name' | 'source'>, say: Speaker) =>
    `“${name}” can be calibrated from ${say.say(source)}.`,
  'mixer-can-be-calibrated.hands': ({ source }: Args<'source'>, say: Speaker) =>
    `Your hands can be calibrated from ${say.say(source)}.`,
  'mixer-can-be-calibrated.misses': (
    { apartCelsius, laterCelsius }: Args<'apartCelsius' | 'laterCelsius'>,
    say: Speaker,
  ) =>
    `Now they are missed by ${say.celsiusApart(apartCelsius)}, calibrated by ${say.celsiusApart(laterCelsius)}.`,
  'mixer-can-be-calibrated.misses-calibrated': ({ laterCelsius }: Args<'laterCelsius'>, say: Speaker) =>
    `Calibrated they are missed by ${say.celsiusApart(laterCelsius)}.`,
  'mixer-can-be-calibrated.cannot-tell': ({ parts }: Args<'parts'>, say: Speaker) =>
    `They do not show ${say.list(parts.map(say.say))}.`,
  'mixer-can-be-calibrated.apart': (reading: Reading, say: Speaker) =>
    `${readingOf(reading, say)} stands apart from the other readings and hardly counts; a cold bowl or a hasty thermometer does that.`,
  'mixer-can-be-calibrated.several-apart': (reading: Reading & Args<'count'>, say: Speaker) =>
    `${say.count(reading.count, { one: '# reading stands', other: '# readings stand' })} apart from the others and hardly ${say.count(reading.count, { one: 'counts', other: 'count' })}, the first of them ${readingOf(reading, say)}.`,
  'mixer-can-be-calibrated.contradict': () =>
    'The readings contradict one another, or the programme was not the one written: look them over first.',
  'mixer-can-be-calibrated.cooler': ({ number, otherNumber }: Args<'number' | 'otherNumber'>) =>
    `By them speed ${number} would warm less than speed ${otherNumber}, which no mixer does: look the readings over first.`,
  'mixer-can-be-calibrated.develops': (
    { lowFactor, highFactor }: Args<'lowFactor' | 'highFactor'>,
    say: Speaker,
  ) =>
    `By the stages seen it develops dough ${say.number(lowFactor, 2)} to ${say.number(highFactor, 2)} times as fast as computed.`,
  'mixer-can-be-calibrated.far-off': () =>
    'No mixer is so far off: look the stages and the flour over first.',
  'mixer-can-be-calibrated.trial': () => 'a trial on this mixer',
  'mixer-can-be-calibrated.fix': ({ words }: Args<'words'>, say: Speaker) =>
    words.length === 1
      ? `Write what the trials show: ${say.list(words)}`
      : `Write the ${say.count(words.length, { other: '# figures' })} that the trials show`,
  'mixer-can-be-calibrated.fix-develops': () => 'Write what the trials show: how fast it develops dough',
  'mixer-can-be-calibrated.fix-both': ({ words }: Args<'words'>, say: Speaker) =>
    `Write ${say.count(words.length, { one: 'the figure', other: 'the # figures' })} of warming, and how fast it develops`,

  'flour-can-be-calibrated.flour': (seen: FlourSeen, say: Speaker) =>
    `By ${say.count(seen.count, { one: '# stage', other: '# stages' })} seen on ${say.count(seen.otherCount, { one: '# mixer', other: '# mixers' })} doughs of “${seen.name}” develop ${say.number(seen.lowFactor, 2)} to ${say.number(seen.highFactor, 2)} times as fast as computed from a peak of ${say.minutes(seen.minutes)}. It repeats over mixers, so it is the flour’s.`,
  'flour-can-be-calibrated.far-off': () => 'No flour is so far off: look the stages over first.',
  'flour-can-be-calibrated.trial': () => 'a trial of its dough',
  'flour-can-be-calibrated.fix': ({ meant }: Args<'meant'>) => `Write what the trials show: ${meant}`,
};

type Reading = Args<'celsius' | 'minutes' | 'name'>;
type FlourSeen = Args<'count' | 'otherCount' | 'name' | 'lowFactor' | 'highFactor' | 'minutes'>;

function readingsOf(count: number, otherCount: number, say: Speaker): string {
  return `${say.count(count, { one: '# reading', other: '# readings' })} of ${say.count(otherCount, { one: 'one formula', other: '# formulas' })}`;
}

function developsBy({ count, figures }: Args<'count' | 'figures'>, say: Speaker): string {
  return `By ${say.count(count, { one: 'the stage', other: 'the # stages' })} seen it develops dough ${say.say(figures)} as fast as computed`;
}

/** A reading so that it is found: `20.5 °C at 3 min (Quay Tin, 2026-03-03)`. */
function readingOf({ celsius, minutes, name }: Reading, say: Speaker): string {
  return `${say.celsius(celsius)} at ${say.minutes(minutes)} (${name})`;
}
