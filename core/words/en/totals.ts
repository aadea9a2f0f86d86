import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What a formula comes to, in a line and in full, and who uses it. */
export const totals = {
  'totals.line': ({ parts }: Args<'parts'>, say: Speaker) => parts.map(say.say).join(' · '),
  'totals.hydration': ({ fraction }: Args<'fraction'>, say: Speaker) => `${say.percent(fraction)} hydration`,
  'totals.dough': ({ doughGrams }: Args<'doughGrams'>, say: Speaker) => `${say.mass(doughGrams)} dough`,
  'totals.flour': ({ grams }: Args<'grams'>, say: Speaker) => `${say.mass(grams)} flour`,
  'totals.prefermented': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `${say.percent(fraction)} prefermented`,
  'totals.no-line': () => 'No ingredient is written yet.',
  'totals.sheet': () => 'Batch sheet',
  'lens.plan': () => 'Open the plan',
  'lens.plan-late': ({ seconds }: Args<'seconds'>, say: Speaker) =>
    `Open the plan: ${say.duration(seconds)} late`,
  'totals.hydration-fact': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `hydration **${say.percent(fraction)}**`,
  'totals.effective': ({ fraction }: Args<'fraction'>, say: Speaker) => `effective ${say.percent(fraction)}`,
  'totals.effective-without': ({ fraction, names }: Args<'fraction' | 'names'>, say: Speaker) =>
    `effective ${say.percent(fraction)}, not counting ${say.list(names)}`,
  'totals.salt': ({ fraction }: Args<'fraction'>, say: Speaker) => `salt ${say.percent(fraction)}`,
  'totals.prefermented-fact': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `prefermented flour ${say.percent(fraction)}`,
  'totals.flour-fact': ({ grams }: Args<'grams'>, say: Speaker) => `flour ${say.mass(grams)}`,
  'totals.flour-mix': ({ parts }: Args<'parts'>, say: Speaker) =>
    `flour mix: ${parts.map(say.say).join(' · ')}`,
  'totals.head': () => 'overall',
  'totals.head-share': () => 'of flour',
  'totals.head-weight': () => 'weight',

  'makes.all': ({ parts }: Args<'parts'>, say: Speaker) => `Makes ${parts.map(say.say).join(' · ')}.`,
  'makes.pieces': ({ count, grams }: Args<'count' | 'grams'>, say: Speaker) =>
    `${say.count(count, { one: '# piece', other: '# pieces' })} of ${say.mass(grams)}`,
  'makes.in-bowl': ({ doughGrams }: Args<'doughGrams'>, say: Speaker) =>
    `${say.mass(doughGrams)} in the bowl`,
  'makes.baked': ({ bakedGrams }: Args<'bakedGrams'>, say: Speaker) => `${say.mass(bakedGrams)} baked`,
  'makes.no-yield': ({ grams }: Args<'grams'>, say: Speaker) =>
    `for ${say.mass(grams)} of flour, as no yield is written`,

  'status.totals': ({ name, parts }: Args<'name' | 'parts'>, say: Speaker) =>
    `${name}: ${parts.map(say.say).join(' · ')}.`,
  'status.effective': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `${say.percent(fraction)} effective hydration`,
  'status.as-last': () => 'As it was last; a line is not finished.',

  'uses.none': () => 'not used',
  'uses.by': ({ facts }: Args<'facts'>, say: Speaker) => `used by ${say.list(facts.map(say.say))}`,
  'uses.formulas': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# formula', other: '# formulas' }),
  'uses.flours': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# flour', other: '# flours' }),
  'uses.ingredients': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# ingredient', other: '# ingredients' }),
  'uses.mixers': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# mixer', other: '# mixers' }),
  'uses.bakeries': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# bakery', other: '# bakeries' }),
  'uses.experiments': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# experiment', other: '# experiments' }),
  'uses.plans': ({ count }: Args<'count'>, say: Speaker) =>
    say.count(count, { one: '# plan', other: '# plans' }),

  'goes-into.catalogue': () => 'catalogue',
  'goes-into.role': ({ written }: Args<'written'>) => `all ${written}`,
  'goes-into.several': ({ count }: Args<'count'>, say: Speaker) =>
    `defined ${say.count(count, { one: '# time', other: '# times' })}`,
  'goes-into.not-defined': () => 'not defined',
  'goes-into.drawn': () => 'drawn',
  'goes-into.part-of': ({ section, name }: Args<'section' | 'name'>) => `${section} of ${name}`,
  'goes-into.part': ({ section }: Args<'section'>) => `${section} of a formula`,

  'overview.hydration': ({ fraction }: Args<'fraction'>, say: Speaker) => say.percent(fraction),
  'overview.dough': ({ doughGrams }: Args<'doughGrams'>, say: Speaker) => say.mass(doughGrams),
  'overview.room': ({ celsius }: Args<'celsius'>, say: Speaker) => `room ${say.celsius(celsius)}`,
  'overview.flour': ({ celsius }: Args<'celsius'>, say: Speaker) => `flour ${say.celsius(celsius)}`,
  'overview.tap-water': ({ celsius }: Args<'celsius'>, say: Speaker) => `tap water ${say.celsius(celsius)}`,
  'overview.protein': ({ fraction }: Args<'fraction'>, say: Speaker) => `${say.percent(fraction)} protein`,
  'overview.bowl-most': ({ mostGrams }: Args<'mostGrams'>, say: Speaker) => `up to ${say.mass(mostGrams)}`,
  'overview.bowl': ({ leastGrams, mostGrams }: Args<'leastGrams' | 'mostGrams'>, say: Speaker) =>
    `${say.mass(leastGrams)} to ${say.mass(mostGrams)}`,
  'overview.ready': ({ when }: Args<'when'>, say: Speaker) => `ready ${say.say(when)}`,
};
