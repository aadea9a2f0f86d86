import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What a mixer is and has. */
export const mixers = {
  'no-mixer-kind.assumed': ({ meant, example }: Args<'meant' | 'example'>) =>
    `Of what kind is this mixer? A ${meant} is assumed. Write it: ${example}`,

  'no-such-speed.hand': ({ choices }: Args<'choices'>, say: Speaker) =>
    `Hands have no speeds. Write what they do: ${say.anyOf(choices)}.`,
  'no-such-speed.none': ({ name, number, example }: Args<'name' | 'number' | 'example'>) =>
    `“${name}” has no speed ${number}, so the warming and the development cannot be computed. Its section states none; a new one is written there as: ${example}`,
  'no-such-speed.others': (
    { name, number, choices, example }: Args<'name' | 'number' | 'choices' | 'example'>,
    say: Speaker,
  ) =>
    `“${name}” has no speed ${number}, so the warming and the development cannot be computed. It has ${say.list(choices)}; a new one is written there as: ${example}`,
  'no-such-speed.stands': ({ written, name, meant }: Args<'written' | 'name' | 'meant'>) =>
    `“${written}” is work by hand, and no line of this programme runs “${name}”. Where the mixer does it, write its speed: ${meant}`,
  'no-such-speed.section': () => 'its section',
};
