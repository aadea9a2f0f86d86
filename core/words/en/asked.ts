import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What a batch sheet is asked for and cannot give, and words of the asking that cannot be read. */
export const asked = {
  'asked.not-in-pieces': () =>
    'It cannot be sized in pieces: the formula does not say what a piece weighs. Write a yield, for example “yield 24 pieces of 880 g”.',
  'asked.not-every-weight': () => 'It cannot be sized yet: not every weight of the formula is known.',
  'asked.not-baked': () =>
    'It cannot be sized by baked weight: the formula does not say its bake loss. Write it, for example “bake loss 12%”.',
  'asked.not-by-bowl': () =>
    'It cannot be sized by the bowl: the mixer does not say what its bowl takes. Write it in the mixer’s section, for example “bowl 5 kg to 60 kg”.',
  'asked.not-on-hand': ({ name }: Args<'name'>) =>
    `It cannot be sized by “${name}”: the dough has none of it, or its weight is not known.`,
  'asked.no-such-mixer': ({ name }: Args<'name'>) =>
    `The mixer “${name}” is not known, or several are called so; the sheet is for the file’s own.`,
  'asked.nothing-mixed': () => 'The formula has no mixing programme, so the mixer changes nothing.',
  'asked.no-room': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `Today’s room is left out: ${say.celsius(celsius)} is no temperature of a bakery.`,
  'asked.no-flour': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `Today’s flour is left out: ${say.celsius(celsius)} is no temperature of a bakery.`,
  'asked.no-tap': ({ celsius }: Args<'celsius'>, say: Speaker) =>
    `Today’s tap water is left out: ${say.celsius(celsius)} is no temperature of a bakery.`,
  'asked.no-scale-step': () => 'Today’s scale step is left out: it has to be above 0.',
  'asked.not-in-variant': () =>
    'It cannot be written into a variant as it stands. Written out in full it can be kept.',
  'asked.no-line': () =>
    'The minutes are left out: the programme has another line there by now, or other minutes.',
  'asked.no-minutes': ({ minutes }: Args<'minutes'>, say: Speaker) =>
    `The minutes are left out: ${say.number(minutes, 2)} are none that a line of a programme can last.`,
  'asked.no-water': () =>
    'The water is left out: the dough has no line of water with a percent or a weight that can be changed.',
  'asked.no-such-flour': ({ name }: Args<'name'>) =>
    `The flour is left out: the formula has no flour “${name}”, or not every weight of it is known.`,
  'asked.no-other-flour': ({ name }: Args<'name'>) =>
    `The flour is left out: no other flour is called “${name}”.`,
  'asked.no-feel': ({ name }: Args<'name'>) =>
    `The water stays as it is: how much of it “${name}” takes is not known.`,
  'asked.stands-already': () => 'All of it stands in the file as it is.',

  'asked.write-ingredient': () => 'write the ingredient and its weight, for example "bread flour=12 kg".',
  'asked.write-clock': () => 'write a time of day from 00:00 to 23:59, for example 05:00.',
  'asked.write-count': () => 'write a whole number above 0, for example 24.',
  'asked.write-weight': () => 'write a weight above 0 with its unit, for example 20 kg or 850 g.',
  'asked.write-temperature': () => 'write a temperature with its unit, for example 26 °C.',
  'asked.write-unit': ({ choices }: Args<'choices'>, say: Speaker) =>
    `write a unit behind the number, for example ${say.anyOf(choices)}.`,
  'asked.two-readings': ({ choices }: Args<'choices'>, say: Speaker) =>
    `that can be read in more ways than one: write ${say.anyOf(choices)}.`,
  'asked.beyond': ({ meant }: Args<'meant'>) =>
    `that is beyond what a bakery can mean: write at most ${meant}.`,
  'asked.beyond-both': ({ meant, otherMeant }: Args<'meant' | 'otherMeant'>) =>
    `that is beyond what a bakery can mean: write from ${meant} to ${otherMeant}.`,
};
