import type { paragraphs as english } from '../en/paragraphs.ts';
import type { Translation } from '../message.ts';

/** Mehrere Sätze als einer. */
export const paragraphs: Translation<typeof english> = {
  'paragraph.of': ({ parts }, say) => parts.map(say.say).join(' '),
};
