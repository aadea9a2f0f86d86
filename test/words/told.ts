import { plainSpeaker } from '../../core/words/speak.ts';
import type { Said } from '../../core/words/speaker.ts';

/**
 * A message as tests write it down: which it is, and its figures and names. `about` is the code of the finding that it
 * belongs to, which is not said again.
 */
export function tellMessage(said: Said, about?: string): string {
  const code =
    about !== undefined && said.code.startsWith(`${about}.`) ? said.code.slice(about.length) : said.code;
  const args = Object.entries(said.args).map(([name, value]) => ` ${name} ${tellValue(value)}`);
  return `${code}${args.join('')}`;
}

function tellValue(value: unknown): string {
  if (typeof value === 'number') return String(Number(value.toPrecision(6)));
  if (typeof value === 'string') return JSON.stringify(value);
  if (Array.isArray(value)) return `[${value.map(tellValue).join(', ')}]`;
  return `(${tellMessage(value as Said)})`;
}

/** A message in plain English. */
export function inWords(said: Said): string {
  return plainSpeaker.say(said);
}
