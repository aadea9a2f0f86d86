import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Totals and blends as they are written on a terminal: the words on the left, the values, and the heads of sections. */
export const commandTotals = {
  'command-totals.makes': () => 'makes',
  'command-totals.flour': () => 'flour',
  'command-totals.hydration': () => 'hydration',
  'command-totals.salt': () => 'salt',
  'command-totals.prefermented-flour': () => 'prefermented flour',
  'command-totals.flour-mix': () => 'flour mix',
  'command-totals.water': () => 'water',

  'command-totals.pieces-of': ({ count, grams }: Args<'count' | 'grams'>, say: Speaker) =>
    `${say.number(count, 1)} ${say.count(count, { one: 'piece', other: 'pieces' })} of ${say.mass(grams)}`,
  'command-totals.of-dough': ({ doughGrams }: Args<'doughGrams'>, say: Speaker) =>
    `${say.mass(doughGrams)} of dough`,
  'command-totals.of-dough-folded': ({ doughGrams, grams }: Args<'doughGrams' | 'grams'>, say: Speaker) =>
    `${say.mass(doughGrams)} of dough with ${say.mass(grams)} folded in`,
  'command-totals.baked': ({ bakedGrams }: Args<'bakedGrams'>, say: Speaker) =>
    `${say.mass(bakedGrams)} baked`,
  'command-totals.effective': (
    { fraction, laterFraction }: Args<'fraction' | 'laterFraction'>,
    say: Speaker,
  ) => `${say.percent(fraction)}, effective ${say.percent(laterFraction)}`,
  'command-totals.protein': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `protein ${say.percent(fraction)}`,
  'command-totals.absorption': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `absorption ${say.percent(fraction)}`,
  'command-totals.at-moisture': ({ parts }: Args<'parts'>, say: Speaker) =>
    `${say.list(parts.map(say.say))} at ${say.percent(0.14)} moisture`,
  'command-totals.ash': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `ash ${say.percent(fraction)} of dry matter`,
  'command-totals.per-kilogram': ({ amount, currency }: Args<'amount' | 'currency'>, say: Speaker) =>
    `${say.money(amount, currency)} per kg`,

  'command-totals.water-at': ({ waterCelsius }: Args<'waterCelsius'>, say: Speaker) =>
    `at ${say.celsius(waterCelsius)}`,
  'command-totals.water-from-tap': ({ tapCelsius }: Args<'tapCelsius'>, say: Speaker) =>
    `from the tap, at ${say.celsius(tapCelsius)}`,
  'command-totals.water-from-tap-assumed': ({ tapCelsius }: Args<'tapCelsius'>, say: Speaker) =>
    `from the tap, taken to be at ${say.celsius(tapCelsius)}`,
  'command-totals.water-with-ice': (
    { iceGrams, tapGrams, water }: Args<'iceGrams' | 'tapGrams' | 'water'>,
    say: Speaker,
  ) => `${say.mass(iceGrams)} of ice and ${say.mass(tapGrams)} ${say.say(water)}`,
  'command-totals.water-rule': ({ water, celsius }: Args<'water' | 'celsius'>, say: Speaker) =>
    `${say.say(water)} (rule of thumb ${say.celsius(celsius)})`,
  'command-totals.water-rule-friction': (
    { water, celsius, apartCelsius }: Args<'water' | 'celsius' | 'apartCelsius'>,
    say: Speaker,
  ) =>
    `${say.say(water)} (rule of thumb ${say.celsius(celsius)}, friction factor ${say.celsiusApart(apartCelsius)})`,

  'command-totals.overall': () => 'overall',
  'command-totals.into-bowl': () => 'into the bowl',
  'command-totals.part': ({ part, section }: Args<'part' | 'section'>) => `${part} (${section})`,
  'command-totals.part-folded': ({ part, section }: Args<'part' | 'section'>) =>
    `${part} (${section}, folded in)`,
  'command-totals.with-hydration': ({ title, fraction }: Args<'title' | 'fraction'>, say: Speaker) =>
    `${say.say(title)}, hydration ${say.percent(fraction)}`,
  'command-totals.with-flour': ({ title, grams }: Args<'title' | 'grams'>, say: Speaker) =>
    `${say.say(title)}, ${say.mass(grams)} of flour`,
  'command-totals.together': () => 'together',
  'command-totals.mixing': () => 'mixing',
  'command-totals.heat': () => 'heat',
  'command-totals.cost': () => 'cost',
  'command-totals.cost-of-part': ({ part }: Args<'part'>) => `all of ${part}`,
  'command-totals.label-nutrition': ({ code }: Args<'code'>) => `label draft (${code}): nutrition, baked`,
  'command-totals.label-ingredients': () => 'label draft: ingredients',
  'command-totals.label-to-check': () => 'label draft: to be checked',
  'command-totals.findings': () => 'findings',
  'command-totals.line': ({ number }: Args<'number'>, say: Speaker) => `line ${say.number(number, 0)}`,

  'command-totals.no-blend': ({ sentence }: Args<'sentence'>) => `no blend: ${sentence}.`,
  'command-totals.no-blend-priced': ({ sentence }: Args<'sentence'>) =>
    `no blend: ${sentence}; write what is missing, or take --nearest, for which prices do not count.`,
};
