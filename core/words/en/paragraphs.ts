import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Several sentences as one. */
export const paragraphs = {
  'paragraph.of': ({ facts }: Args<'facts'>, say: Speaker) => facts.map(say.say).join(' '),
};
