import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Why flours make no blend that does what is asked: clauses that stand behind a colon. */
export const blends = {
  'blend.several-definitions': ({ name }: Args<'name'>) =>
    `“${name}” is defined several times here, so none of them counts`,
  'blend.not-defined': ({ name }: Args<'name'>) => `“${name}” is not defined`,
  'blend.not-a-flour': ({ name }: Args<'name'>) => `“${name}” is not a flour`,
  'blend.one-protein': ({ fraction, usualFraction }: Args<'fraction' | 'usualFraction'>, say: Speaker) =>
    `all of these flours have ${say.percent(usualFraction, 2)} of protein at 14% moisture, and ${say.percent(fraction, 2)} is wanted`,
  'blend.protein': (
    { fraction, lowFraction, highFraction }: Args<'fraction' | 'lowFraction' | 'highFraction'>,
    say: Speaker,
  ) =>
    `these flours reach from ${say.percent(lowFraction, 2)} to ${say.percent(highFraction, 2)} of protein at 14% moisture, and ${say.percent(fraction, 2)} is wanted`,
  'blend.least-ash': ({ fraction, lowFraction }: Args<'fraction' | 'lowFraction'>, say: Speaker) =>
    `the least ash of these flours is ${say.percent(lowFraction, 2)} of dry matter, and no more than ${say.percent(fraction, 2)} is wanted`,
  'blend.ash': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `no blend of these flours has as little ash as ${say.percent(fraction, 2)} of dry matter with all else that is wanted`,
  'blend.none': () => 'no blend of these flours keeps all the shares that are set',
};
