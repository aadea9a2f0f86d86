import type { paragraphs as english } from '../en/paragraphs.ts';
import type { Translation } from '../message.ts';

/** Plusieurs phrases en une. */
export const paragraphs: Translation<typeof english> = {
  'paragraph.of': ({ parts }, say) => parts.map(say.say).join(' '),
};
