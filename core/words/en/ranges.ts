import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Shares out of the usual range. */
export const ranges = {
  'salt-range.little': (share: Args<'fraction' | 'lowFraction' | 'highFraction'>, say: Speaker) =>
    `${say.percent(share.fraction)} salt on all flour is unusually little: ${usual(share, say)} is common practice.`,
  'salt-range.much': (share: Args<'fraction' | 'lowFraction' | 'highFraction'>, say: Speaker) =>
    `${say.percent(share.fraction)} salt on all flour is unusually much: ${usual(share, say)} is common practice.`,

  'no-salt.none': (share: Args<'lowFraction' | 'highFraction'>, say: Speaker) =>
    `There is no salt in this dough. If that is not meant: ${usual(share, say)} of flour is common practice.`,

  'yeast-range.lean': ({ fraction, usualFraction }: Args<'fraction' | 'usualFraction'>, say: Speaker) =>
    `Yeast like ${say.percent(fraction)} of fresh yeast on all flour: up to ${say.percent(usualFraction)} is common practice for a lean dough.`,
  'yeast-range.sweet': ({ fraction, usualFraction }: Args<'fraction' | 'usualFraction'>, say: Speaker) =>
    `Yeast like ${say.percent(fraction)} of fresh yeast on all flour: up to ${say.percent(usualFraction)} is common practice for a sweet dough.`,
  'yeast-range.overnight': (
    { fraction, part, usualFraction, hours }: Args<'fraction' | 'part' | 'usualFraction' | 'hours'>,
    say: Speaker,
  ) =>
    `Yeast like ${say.percent(fraction)} of fresh yeast on the flour of “${part}”: up to ${say.percent(usualFraction)} is common practice where it stands ${say.number(hours, 0)} h.`,

  'hydration-range.wet': (water: Water, say: Speaker) =>
    `${say.percent(water.fraction)} water for the flour${held(water, say)}: ${say.points(water.apartFraction)} points above the ${say.percent(water.usualFraction)} that it takes. The dough will run. Take less water, or a stronger flour. (The limit is common practice.)`,
  'hydration-range.dry': (water: Water, say: Speaker) =>
    `${say.percent(water.fraction)} water for the flour${held(water, say)}: ${say.points(water.apartFraction)} points below the ${say.percent(water.usualFraction)} that it takes. The dough will stay dry. Take more water. (The limit is common practice.)`,
  'hydration-range.flour': ({ name }: Args<'name'>) => `the flour “${name}”`,
  'hydration-range.flour-absorption': ({ name, fraction }: Args<'name' | 'fraction'>, say: Speaker) =>
    `the flour “${name}”, absorption ${say.percent(fraction)}`,
};

type Water = Args<'fraction' | 'heldFraction' | 'apartFraction' | 'usualFraction'>;

function held({ heldFraction }: Water, say: Speaker): string {
  return heldFraction > 0.005 ? `, not counting ${say.percent(heldFraction)} that seeds hold` : '';
}

function usual({ lowFraction, highFraction }: Args<'lowFraction' | 'highFraction'>, say: Speaker): string {
  return `${say.number(lowFraction * 100, 2)} to ${say.percent(highFraction)}`;
}
