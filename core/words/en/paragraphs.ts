import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Several sentences as one. */
export const paragraphs = {
  'paragraph.of': ({ parts }: Args<'parts'>, say: Speaker) => parts.map(say.say).join(' '),
};
