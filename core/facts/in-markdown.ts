import type { Message } from '../words/message.ts';
import { escapeMarkdown } from './formula-words.ts';

/** A message for a place that reads Markdown: the names and pieces of files that it was given are shown as they stand there. */
export function inMarkdown(said: Message): Message {
  return { code: said.code, args: escaped(said.args) as object };
}

function escaped(value: unknown): unknown {
  if (typeof value === 'string') return escapeMarkdown(value);
  if (Array.isArray(value)) return value.map(escaped);
  if (typeof value !== 'object' || value === null) return value;
  const isMessage = 'code' in value && 'args' in value;
  return isMessage
    ? inMarkdown(value as Message)
    : Object.fromEntries(Object.entries(value).map(([name, one]) => [name, escaped(one)]));
}
