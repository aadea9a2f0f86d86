import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Why a line is not in a plan, as clauses behind a colon, and what is found of a plan. */
export const plans = {
  'plan.no-ready': ({ example }: Args<'example'>) =>
    `nothing states when it has to be ready; write “${example}” in the plan`,
  'plan.no-weights': () => 'its weights are not known yet',
  'plan.no-piece-weight': ({ example }: Args<'example'>) =>
    `its formula does not state what a piece weighs; write “${example}” there`,
  'plan.no-bake-loss': ({ example }: Args<'example'>) =>
    `its formula does not state its bake loss; write “${example}” there`,
  'plan.too-many': ({ count }: Args<'count'>, say: Speaker) =>
    `with it the day would have more than ${say.count(count, { one: '# batch', other: '# batches' })}, for bowl and oven as they are written; ask for less of it`,
  'plan.none': () => 'none of it is asked for',
  'plan.no-formula': () => 'no formula has this name',
  'plan.several-formulas': () => 'several formulas have this name; give each a name of its own',
  'plan.no-amount': ({ choices }: Args<'choices'>, say: Speaker) =>
    `how much of it is stated neither in pieces nor in weight; write ${say.anyOf(choices.map((one) => `“${one}”`))}`,

  'cannot-be-planned.because': ({ name, reason }: Args<'name' | 'reason'>, say: Speaker) =>
    `“${name}” is not in the plan: ${say.say(reason)}.`,

  'late.alone': () => 'from “begin” on its own work takes longer than there is time',
  'late.heating': () => 'the oven is not hot yet when it could go in',
  'late.people': () => 'all hands are at other work',
  'late.change': () => 'the oven has to come to another temperature first',
  'late.oven': () => 'the oven is taken by other loads',
  'late.mixer': () => 'its mixer is taken by other doughs',
  'late.together': () => 'mixer, oven and hands are taken by other doughs',
  'not-ready-in-time.because': (
    { name, seconds, reason }: Args<'name' | 'seconds' | 'reason'>,
    say: Speaker,
  ) =>
    `“${name}” is ready ${say.duration(seconds)} too late: ${say.say(reason)}. Begin earlier, ask for less, or write a later “ready”.`,
  'not-ready-in-time.late': ({ name, seconds }: Args<'name' | 'seconds'>, say: Speaker) =>
    `“${name}” is ready ${say.duration(seconds)} too late, as no dough is mixed before “begin”. Begin earlier, ask for less, or write a later “ready”.`,
};
