import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** How far a programme works a dough, and what the machine bears. */
export const mixingWork = {
  'stage.pick-up': () => 'pick-up',
  'stage.clean-up': () => 'clean-up',
  'stage.developing': () => 'developing',
  'stage.developed': () => 'developed',
  'stage.let-down': () => 'let-down',
  'stage.breakdown': () => 'breakdown',
  'stage.other': ({ name }: Args<'name'>) => `“${name}”`,

  'mix.flour': ({ name }: Args<'name'>) => `the flour “${name}”`,
  'mix.flour-stability': ({ name, minutes }: Args<'name' | 'minutes'>, say: Speaker) =>
    `the flour “${name}”, stability ${say.number(minutes, 1)} min`,
  'mix.water': () => 'the water',
  'mix.mixer': () => 'the mixer',
  'mix.mixer-named': ({ name }: Args<'name'>) => `the mixer “${name}”`,
  'mix.bowl': () => 'its bowl',
  'mix.guess': () => 'How long so wet a dough holds is a rough guess.',
  'mix.fix-shorten': ({ choices }: Args<'choices'>) => {
    const [only] = choices;
    return choices.length === 1
      ? `Write ${only}: developed, and no further`
      : `Shorten to ${choices.join(', then ')}: developed, and no further`;
  },

  'let-down.is': (past: Past, say: Speaker) =>
    `Let-down from about ${ends(past, say)}: the dough is let down, slack and sticky. ${developed(past, say)}`,
  'let-down.may-be': (past: Past, say: Speaker) =>
    `Let-down from about ${ends(past, say)}: the dough may be let down, slack and sticky. ${developed(past, say)}`,

  'broken-down.is': (past: Past, say: Speaker) =>
    `Breakdown from about ${ends(past, say)}: the dough is broken down and cannot be saved. ${developed(past, say)}`,
  'broken-down.may-be': (past: Past, say: Speaker) =>
    `Breakdown from about ${ends(past, say)}: the dough may be broken down. ${developed(past, say)}`,

  'degree.short': () => 'a short mix',
  'degree.improved': () => 'an improved mix',
  'degree.intensive': () => 'an intensive mix',
  'under-developed.is': ({ fraction, degree }: Args<'fraction' | 'degree'>, say: Speaker) =>
    `The dough is not developed when the programme ends: about ${say.percent(fraction, 0)} of the work of ${say.say(degree)}.`,
  'under-developed.may-be': ({ fraction, degree }: Args<'fraction' | 'degree'>, say: Speaker) =>
    `The dough may not be developed when the programme ends: about ${say.percent(fraction, 0)} of the work of ${say.say(degree)}.`,
  'under-developed.is-later': (work: Args<'fraction' | 'degree' | 'laterFraction'>, say: Speaker) =>
    `The dough is not developed when the programme ends: about ${say.percent(work.fraction, 0)} of the work of ${say.say(work.degree)}, and folds and bulk add about ${say.percent(work.laterFraction, 0)}.`,
  'under-developed.may-be-later': (work: Args<'fraction' | 'degree' | 'laterFraction'>, say: Speaker) =>
    `The dough may not be developed when the programme ends: about ${say.percent(work.fraction, 0)} of the work of ${say.say(work.degree)}, and folds and bulk add about ${say.percent(work.laterFraction, 0)}.`,
  'under-developed.needs': ({ lowMinutes, highMinutes }: Args<'lowMinutes' | 'highMinutes'>, say: Speaker) =>
    `It needs ${say.minutesBand(lowMinutes, highMinutes)} more at the last speed, or folds in the bulk.`,
  'under-developed.fix-fold': () => 'Fold twice in the bulk instead',
  'under-developed.fix-mix-on': ({ meant }: Args<'meant'>) => `Write ${meant}: developed when it ends`,

  'mixed-past-need.longer': (past: Past, say: Speaker) =>
    `The dough is developed after about ${ends(past, say)}. The last ${say.minutes(past.minutes)} or more do nothing for it.`,
  'mixed-past-need.warms': (past: Past & Args<'apartCelsius'>, say: Speaker) =>
    `The dough is developed after about ${ends(past, say)}. The last ${say.minutes(past.minutes)} or more do nothing for it and add ${say.celsiusApart(past.apartCelsius)}.`,

  'fast-for-stiff.too-stiff': (dough: Stiff, say: Speaker) =>
    `${lean(dough, say)} is too stiff for ${stay(dough)}`,
  'fast-for-stiff.edge': (dough: Stiff, say: Speaker) =>
    `${lean(dough, say)} is on the edge of too stiff for ${stay(dough)}`,
  'fast-for-stiff.too-stiff-rich': (dough: Rich, say: Speaker) =>
    `${lean(dough, say)}, with fat and sugar as soft as ${say.number(dough.softPerHundred, 0)} g, is too stiff for ${stay(dough)}`,
  'fast-for-stiff.edge-rich': (dough: Rich, say: Speaker) =>
    `${lean(dough, say)}, with fat and sugar as soft as ${say.number(dough.softPerHundred, 0)} g, is on the edge of too stiff for ${stay(dough)}`,
  'fast-for-stiff.too-stiff-egg': (dough: Rich, say: Speaker) =>
    `${lean(dough, say)}, with egg, fat and sugar as soft as ${say.number(dough.softPerHundred, 0)} g, is too stiff for ${stay(dough)}`,
  'fast-for-stiff.edge-egg': (dough: Rich, say: Speaker) =>
    `${lean(dough, say)}, with egg, fat and sugar as soft as ${say.number(dough.softPerHundred, 0)} g, is on the edge of too stiff for ${stay(dough)}`,

  'idle-rest.before-both': ({ seconds }: Args<'seconds'>, say: Speaker) =>
    `${say.duration(seconds)} of rest before flour and water are both in the bowl. Load both first.`,
  'idle-rest.at-end': ({ seconds }: Args<'seconds'>, say: Speaker) =>
    `${say.duration(seconds)} of rest at the end of the programme: that is bulk already. Write it in the process.`,
  'idle-rest.developed': ({ seconds }: Args<'seconds'>, say: Speaker) =>
    `${say.duration(seconds)} of rest after the dough is developed, with more work behind it: it gains nothing.`,
  'idle-rest.salted': ({ seconds }: Args<'seconds'>, say: Speaker) =>
    `${say.duration(seconds)} of rest with the salt in the bowl: after an autolyse, a rest of flour and water alone, it would need up to a fifth less kneading. Add the salt after it.`,
  'idle-rest.fix-take-out': () => 'Take the rest out',

  'bowl-overfull.more': ({ doughGrams, name, mostGrams }: Bowl, say: Speaker) =>
    `${say.mass(doughGrams)} of dough, and the bowl of “${name}” takes ${say.mass(mostGrams)}.`,
  'bowl-overfull.stiff': (bowl: Bowl & Args<'waterPerHundred'>, say: Speaker) =>
    `${say.mass(bowl.doughGrams)} of stiff dough, like ${lean(bowl, say)}: ${machine(bowl, say)}`,
  'bowl-overfull.stiff-with': (bowl: Bowl & Args<'waterPerHundred' | 'facts'>, say: Speaker) =>
    `${say.mass(bowl.doughGrams)} of stiff dough with ${say.list(bowl.facts.map(say.say))}, like ${lean(bowl, say)}: ${machine(bowl, say)}`,
  'bowl-overfull.dough-with': (bowl: Bowl & Args<'facts'>, say: Speaker) =>
    `${say.mass(bowl.doughGrams)} of dough with ${say.list(bowl.facts.map(say.say))}: ${machine(bowl, say)}`,
  'bowl-overfull.high-gluten': () => 'high-gluten flour',
  'bowl-overfull.cold': () => 'cold water',
  'bowl-overfull.divide': ({ count, grams }: Args<'count' | 'grams'>, say: Speaker) =>
    `Divide it into ${say.count(count, { one: '# batch', other: '# batches' })} of ${say.mass(grams)}.`,
  'bowl-overfull.no-batches': () => 'No number of equal batches fits this bowl.',

  'bowl-too-little.less': (
    { doughGrams, name, leastGrams }: Args<'doughGrams' | 'name' | 'leastGrams'>,
    say: Speaker,
  ) =>
    `${say.mass(doughGrams)} of dough, and “${name}” needs ${say.mass(leastGrams)} to pick it up. Make more, or take a smaller mixer.`,

  'fermentation-time.off': (time: Time, say: Speaker) =>
    `From mixing to the oven the dough ferments as much as ${worth(time, say)} would; about ${say.duration(time.usualSeconds)} is usual.`,
  'fermentation-time.off-observed': (time: Time, say: Speaker) =>
    `From mixing to the oven the dough ferments as much as ${worth(time, say)} would, by the rise of your own trials; about ${say.duration(time.usualSeconds)} is usual.`,
  'fermentation-time.shorten': () => 'Shorten it, or let it stand cooler.',
  'fermentation-time.lengthen': () => 'Give it longer, or let it stand warmer.',
  'fermentation-time.yeast': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `For these times about ${say.percent(fraction)} of fresh yeast is usual.`,
};

/** When it is past a stage, when the programme ends, and one moment more. */
type Past = Args<'lowMinutes' | 'highMinutes' | 'programmeMinutes' | 'minutes'>;

function ends({ lowMinutes, highMinutes, programmeMinutes }: Past, say: Speaker): string {
  return `${say.minutesBand(lowMinutes, highMinutes)}; this programme ends at ${say.minutes(programmeMinutes)}`;
}

function developed({ minutes }: Past, say: Speaker): string {
  return `It is developed after about ${say.minutes(minutes)}.`;
}

type Stiff = Args<'waterPerHundred' | 'number' | 'slowestNumber'>;
type Rich = Stiff & Args<'softPerHundred'>;

function lean({ waterPerHundred }: Args<'waterPerHundred'>, say: Speaker): string {
  return `${say.number(waterPerHundred, 0)} g of water to 100 g of flour`;
}

function stay({ number, slowestNumber }: Stiff): string {
  return `speed ${number}: it strains the machine and tears the dough. Stay at speed ${slowestNumber}, and follow the machine’s manual.`;
}

type Bowl = Args<'doughGrams' | 'name' | 'mostGrams'>;

function machine({ name, mostGrams }: Bowl, say: Speaker): string {
  return `the machine of “${name}” takes about ${say.mass(mostGrams)} of that.`;
}

type Time = Args<'seconds' | 'celsius' | 'fraction' | 'usualSeconds'>;

function worth({ seconds, celsius, fraction }: Time, say: Speaker): string {
  return `${say.duration(seconds)} at ${say.celsius(celsius)} with ${say.percent(fraction)} fresh yeast`;
}
