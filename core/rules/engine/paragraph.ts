import { type Message, message } from '../../words/message.ts';

/** Whole sentences as one message, in their order; one alone is itself. Absent ones are left out. */
export function paragraph(first: Message, ...more: readonly (Message | undefined)[]): Message {
  const parts = [first, ...more].filter((one) => one !== undefined);
  return parts.length === 1 ? first : message('paragraph.of', { parts });
}
