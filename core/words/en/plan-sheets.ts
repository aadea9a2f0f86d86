import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** A production plan as it is shown: when what is done, and what does not fit. */
export const planSheets = {
  'plan.make': ({ part, grams, names }: Make, say: Speaker) =>
    `make ${part}, ${say.mass(grams)}, for ${say.list(names)}`,
  'plan.make-stands': ({ part, grams, names, seconds }: Make & Args<'seconds'>, say: Speaker) =>
    `make ${part}, ${say.mass(grams)}, stands ${say.duration(seconds)}, for ${say.list(names)}`,
  'plan.dough-batch': ({ name, number, count }: Args<'name' | 'number' | 'count'>) =>
    `${name}, batch ${number} of ${count}`,
  'plan.size': ({ grams }: Args<'grams'>, say: Speaker) => say.mass(grams),
  'plan.size-pieces': ({ count, grams }: Args<'count' | 'grams'>, say: Speaker) =>
    `${say.count(count, { one: '# piece', other: '# pieces' })}, ${say.mass(grams)}`,
  'plan.mix': ({ name, figures }: Batch, say: Speaker) => `mix ${name}: ${say.say(figures)}`,
  'plan.mix-in': ({ name, figures, place }: Batch & Args<'place'>, say: Speaker) =>
    `mix ${name}: ${say.say(figures)} ${say.say(place)}`,
  'plan.mix-long': ({ name, figures, seconds }: Batch & Args<'seconds'>, say: Speaker) =>
    `mix ${name}: ${say.say(figures)}, ${say.duration(seconds)}`,
  'plan.mix-in-long': ({ name, figures, place, seconds }: Batch & Args<'place' | 'seconds'>, say: Speaker) =>
    `mix ${name}: ${say.say(figures)} ${say.say(place)}, ${say.duration(seconds)}`,
  'plan.bake': ({ name, seconds }: Args<'name' | 'seconds'>, say: Speaker) =>
    `bake ${name}, ${say.duration(seconds)}`,
  'plan.bake-loads': ({ name, seconds, count }: Args<'name' | 'seconds' | 'count'>, say: Speaker) =>
    `bake ${name}, ${say.duration(seconds)}, ${say.count(count, { one: '# load', other: '# loads one behind another' })}`,
  'plan.out': ({ name }: Args<'name'>) => `${name} out of the oven`,
  'plan.done': ({ name }: Args<'name'>) => `${name} ready`,
  'plan.done-late': ({ name, seconds }: Args<'name' | 'seconds'>, say: Speaker) =>
    `${name} ready, ${say.duration(seconds)} late`,

  'plan.line': ({ number, sentence }: Args<'number' | 'sentence'>) => `Line ${number}: ${sentence}`,
  'plan.line-left-out': ({ number, name, reason }: Args<'number' | 'name' | 'reason'>, say: Speaker) =>
    `Line ${number}, ${name}, is not in the plan: ${say.say(reason)}.`,
  'plan.late': ({ name, seconds }: Args<'name' | 'seconds'>, say: Speaker) =>
    `${name} cannot be ready in time: ${say.duration(seconds)} late.`,
  'plan.late-because': ({ name, seconds, reason }: Args<'name' | 'seconds' | 'reason'>, say: Speaker) =>
    `${name} cannot be ready in time: ${say.duration(seconds)} late; ${say.say(reason)}.`,
  'plan.untimed': ({ names }: Args<'names'>, say: Speaker) =>
    `Nobody is counted for ${say.list(names)}: no time is written for that work.`,
  'plan.no-temperature': ({ names }: Args<'names'>, say: Speaker) =>
    `No temperature is written for the bake of ${say.list(names)}: the oven is not brought to another one for it.`,
  'plan.shared-load': ({ names, when }: Args<'names' | 'when'>, say: Speaker) =>
    `One load of the oven, ${say.say(when)}: ${say.list(names)}.`,
  'plan.heat': ({ seconds }: Args<'seconds'>, say: Speaker) => `heat the oven, ${say.duration(seconds)}`,
  'plan.heat-to': ({ celsius, seconds }: Args<'celsius' | 'seconds'>, say: Speaker) =>
    `heat the oven to ${say.celsius(celsius)}, ${say.duration(seconds)}`,
  'plan.change-to': ({ celsius, seconds }: Args<'celsius' | 'seconds'>, say: Speaker) =>
    `bring the oven to ${say.celsius(celsius)}, ${say.duration(seconds)}`,
  'plan.heating': () => 'heating up',
  'plan.to-degrees': ({ celsius }: Args<'celsius'>, say: Speaker) => `to ${say.celsius(celsius)}`,
  'plan.person': ({ number }: Args<'number'>) => `Person ${number}`,
  'plan.hands': () => 'hands at once',
  'plan.hands-from': ({ number, written }: Args<'number' | 'written'>) => `${number}, first ${written}`,
  'plan.hands-at-least': ({ number, written }: Args<'number' | 'written'>) =>
    `at least ${number}, first ${written}`,
  'plan.people': () => 'people',
  'plan.work-of': ({ name, written }: Args<'name' | 'written'>) => `${name}: ${written}`,
  'plan.too-little': (
    { name, grams, leastGrams, otherName }: Args<'name' | 'grams' | 'leastGrams' | 'otherName'>,
    say: Speaker,
  ) => `${name}: ${say.mass(grams)} is less than the ${say.mass(leastGrams)} that ${otherName} wants.`,
  'plan.gap': (
    {
      name,
      otherName,
      count,
      grams,
      leastGrams,
    }: Args<'name' | 'otherName' | 'count' | 'grams' | 'leastGrams'>,
    say: Speaker,
  ) =>
    `${name}: one batch is too much for ${otherName} and ${say.number(count, 0)} are too little, ${say.mass(grams)} each where it wants ${say.mass(leastGrams)}.`,
  'plan.several-loads': ({ name }: Args<'name'>) =>
    `${name}: a batch fills the oven more than once, so some of it waits while the first load bakes.`,
  'plan.no-mixing': ({ name }: Args<'name'>) =>
    `${name} has no mixing programme that can be run: no time is planned for it.`,
  'plan.no-baking': ({ name }: Args<'name'>) => `${name} has no step that bakes: no oven is planned for it.`,
  'plan.cost-not-known': ({ reason }: Args<'reason'>, say: Speaker) =>
    `What the stores cost is not known: ${say.say(reason)}.`,
  'plan.cost-without': ({ names }: Args<'names'>, say: Speaker) =>
    `The cost of the stores is without ${say.list(names)}: no usable price.`,

  'plan.ready': () => 'ready',
  'plan.first-work': () => 'first work',
  'plan.first-dough': () => 'first dough',
  'plan.late-by': () => 'late by',
  'plan.stores-cost': () => 'stores cost',
  'plan.and-more': ({ written }: Args<'written'>) => `${written} and more`,
  'plan.by-hand': () => 'by hand',
  'plan.bench': () => 'Bench and proof',
  'plan.oven': () => 'Oven',
  'plan.lanes': () => 'Who and what is busy when',
  'plan.lanes-told': ({ names }: Args<'names'>, say: Speaker) => `${say.list(names)} against the clock.`,
  'plan.lanes-late': ({ names }: Args<'names'>, say: Speaker) => `Late: ${say.list(names)}.`,
  'plan.timeline': () => 'Timeline',
  'plan.batches': () => 'Batches',
  'plan.before-doughs': () => 'Before the doughs',
  'plan.stores': () => 'Stores',
  'plan.of': ({ number, count }: Args<'number' | 'count'>) => `${number} of ${count}`,
  'plan-column.at': () => 'at',
  'plan-column.work': () => 'work',
  'plan-column.dough': () => 'dough',
  'plan-column.batch': () => 'batch',
  'plan-column.pieces': () => 'pieces',
  'plan-column.dough-weight': () => 'dough weight',
  'plan-column.mixer': () => 'mixer',
  'plan-column.mixed': () => 'mixed',
  'plan-column.oven': () => 'oven',
  'plan-column.ready': () => 'ready',
  'plan-column.part': () => 'part',
  'plan-column.weight': () => 'weight',
  'plan-column.made': () => 'made',
  'plan-column.stands': () => 'stands',
  'plan-column.needed': () => 'needed',
  'plan-column.for': () => 'for',
  'plan-column.ingredient': () => 'ingredient',
  'plan-column.cost': () => 'cost',
};

type Make = Args<'part' | 'grams' | 'names'>;
type Batch = Args<'name' | 'figures'>;
