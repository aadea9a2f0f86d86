import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** The charts of a batch sheet: titles, what they show in words, their keys and their tables. */
export const charts = {
  'chart.mixing': () => 'Temperature and development while it mixes',
  'chart.programme': ({ seconds, place }: Args<'seconds' | 'place'>, say: Speaker) =>
    `${say.duration(seconds)} ${say.say(place)}.`,
  'chart.course': (
    { celsius, doughCelsius, targetCelsius }: Args<'celsius' | 'doughCelsius' | 'targetCelsius'>,
    say: Speaker,
  ) =>
    `The dough goes from ${say.celsius(celsius)} to ${say.celsius(doughCelsius)}; ${say.celsius(targetCelsius)} is wanted.`,
  'chart.no-temperature': ({ reason }: Args<'reason'>, say: Speaker) =>
    `No temperature can be computed: ${say.say(reason)}.`,
  'chart.no-development': ({ reason }: Args<'reason'>, say: Speaker) =>
    `No development can be computed: ${say.say(reason)}.`,
  'chart.not-known': () => 'it is not known',
  'chart.end-stage': ({ stage }: Args<'stage'>, say: Speaker) => `State at the end: ${say.say(stage)}.`,
  'chart.from-stage': (band: Band, say: Speaker) =>
    `From about ${minutes(band, say)}: ${say.say(band.stage)}.`,
  'chart.from-stage-if': (band: Band, say: Speaker) =>
    `From about ${minutes(band, say)}, if the last speed went on: ${say.say(band.stage)}.`,
  'chart.readings-marked': () =>
    'What trials measured is marked, by how far it was off what is computed for its own day.',
  'chart.minute': () => 'Minute',
  'chart.what': () => 'What',
  'chart.development': () => 'Development',
  'chart.start': () => 'start',
  'chart.end-of': ({ title }: Args<'title'>, say: Speaker) => `end of ${say.say(title)}`,
  'chart.measured': ({ written }: Args<'written'>) => `measured, ${written}`,
  'chart.about': () => 'about',
  'chart.if-last-speed': () => 'if the last speed went on',
  'chart.celsius-between': (
    { celsius, lowCelsius, highCelsius }: Args<'celsius' | 'lowCelsius' | 'highCelsius'>,
    say: Speaker,
  ) => `${say.celsius(celsius)} (${say.celsius(lowCelsius)} to ${say.celsius(highCelsius)})`,
  'chart.dough-end': ({ written }: Args<'written'>) => `dough ${written}`,
  'chart.speed': () => 'speed',
  'chart.wanted': ({ celsius }: Args<'celsius'>, say: Speaker) => `wanted, ${say.celsius(celsius)}`,
  'chart.may-lie': () => 'where it may lie',
  'chart.best-stop': ({ minutes: at }: Args<'minutes'>, say: Speaker) => `best stop ${say.minutes(at)}`,
  'chart.mixing-ends': ({ seconds }: Args<'seconds'>, say: Speaker) => `you stop ${say.duration(seconds)}`,
  'chart.phase-lasts': ({ title, seconds }: Args<'title' | 'seconds'>, say: Speaker) =>
    `${say.say(title)}, ${say.duration(seconds)}`,
  'chart.added-at': ({ minutes: at, names }: Args<'minutes' | 'names'>, say: Speaker) =>
    `at ${say.number(at, 1)} min: ${say.list(names)}`,
  'phase.load': ({ names }: Args<'names'>, say: Speaker) => `load ${say.list(names)}`,
  'phase.add': ({ names }: Args<'names'>, say: Speaker) => `add ${say.list(names)}`,

  'chart.may-double': ({ seconds }: Args<'seconds'>, say: Speaker) =>
    `May have doubled from ${say.duration(seconds)} on.`,
  'chart.doubled': (
    { seconds, lowSeconds, highSeconds }: Args<'seconds' | 'lowSeconds' | 'highSeconds'>,
    say: Speaker,
  ) =>
    `Doubled after about ${say.duration(seconds)} (${say.duration(lowSeconds)} to ${say.duration(highSeconds)}).`,
  'chart.doubled-or-not': ({ seconds, lowSeconds }: Args<'seconds' | 'lowSeconds'>, say: Speaker) =>
    `Doubled after about ${say.duration(seconds)} (${say.duration(lowSeconds)} or not by its end).`,

  'chart.composition': () => 'What the dough is made of',
  'chart.dough-of': ({ grams, facts }: Args<'grams' | 'facts'>, say: Speaker) =>
    `${say.mass(grams)} of dough: ${say.list(facts.map(say.say))}.`,
  'chart.the-dough': ({ facts }: Args<'facts'>, say: Speaker) =>
    `The dough: ${say.list(facts.map(say.say))}.`,
  'chart.share': ({ name, fraction }: Args<'name' | 'fraction'>, say: Speaker) =>
    `${name} ${say.percent(fraction)}`,
  'chart.kind-of': ({ title, names }: Args<'title' | 'names'>, say: Speaker) =>
    `${say.say(title)} (${say.list(names)})`,
  'chart.of-dough': () => 'Of the dough',
  'chart.weight': () => 'Weight',
  'chart-kind.flour': () => 'flour',
  'chart-kind.other-flours': () => 'other flours',
  'chart-kind.water': () => 'water',
  'chart-kind.dairy': () => 'milk',
  'chart-kind.egg': () => 'egg',
  'chart-kind.fat': () => 'fat',
  'chart-kind.sugar': () => 'sugar',
  'chart-kind.seeds': () => 'seeds',
  'chart-kind.other': () => 'other',
  'chart-kind.salt': () => 'salt',
  'chart-kind.yeast': () => 'yeast',
};

type Band = Args<'stage' | 'lowMinutes' | 'highMinutes'>;

function minutes({ lowMinutes, highMinutes }: Omit<Band, 'stage'>, say: Speaker): string {
  return say.minutesBand(lowMinutes, highMinutes);
}
