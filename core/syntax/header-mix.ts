import type { IToken } from 'chevrotain';
import type { Span } from '../text/span.ts';
import { message } from '../words/message.ts';
import { nameBetween, nameOf } from './name-reading.ts';
import { problem, replaceFix } from './problem.ts';
import type { HeaderRead } from './surroundings.ts';
import { endOf, Quoted } from './tokens.ts';
import type { HeaderStatement, Name } from './tree.ts';
import { mixerKinds } from './word-lists.ts';

const wordAt = (tokens: readonly IToken[], index: number): string => {
  const token = tokens[index];
  return token === undefined || token.tokenType === Quoted ? '' : token.image.toLowerCase();
};

export const isIn = (tokens: readonly IToken[], index: number): boolean => wordAt(tokens, index) === 'in';
export const isByHand = (tokens: readonly IToken[]): boolean =>
  wordAt(tokens, tokens.length - 2) === 'by' && wordAt(tokens, tokens.length - 1) === 'hand';

/** Reads what stands behind `mix` in its header: `in MIXER`, `by hand`, and before either the part that is mixed. */
export function mixHeader(line: string, rest: readonly IToken[], keyword: Span): HeaderRead {
  const header = { kind: 'header', section: 'mix', keyword } as const;
  const byHand = isByHand(rest);
  if (byHand) {
    const part = nameOf(line, rest.slice(0, -2));
    return { statement: { ...header, byHand: true, ...(part ? { part } : {}) }, problems: [] };
  }
  let at = -1;
  for (let index = 0; index < rest.length; index++) if (isIn(rest, index)) at = index;
  const mixer = at < 0 ? undefined : nameOf(line, rest.slice(at + 1));
  const part = nameOf(line, at < 0 ? rest : rest.slice(0, at));
  const statement: HeaderStatement = { ...header, ...(part ? { part } : {}), ...(mixer ? { mixer } : {}) };
  if (mixer !== undefined) return sized(line, mixer, statement, keyword) ?? { statement, problems: [] };
  const said = part === undefined ? undefined : saidOtherwise(line, rest, keyword);
  return said ?? { statement, problems: [problem('missing-mixer', message('missing-mixer.where'), keyword)] };
}

/** A header whose end says something more; what stands behind it, its colon and a remark, stays. */
function withRemark(head: string, behind: string, remark: string): string {
  const kept = behind.trimEnd();
  return `${head}${kept === '' ? ':' : kept}${kept.includes('#') ? ', ' : '  # '}${remark}`;
}

/** `mix in spiral 40 kg:`: how much the mixer holds is no part of what a kind of mixer is called. */
function sized(line: string, mixer: Name, statement: HeaderStatement, keyword: Span): HeaderRead | undefined {
  const [, name, size] = kindAlone.exec(mixer.text) ?? [];
  if (name === undefined || size === undefined) return undefined;
  const start = mixer.start + mixer.text.indexOf(name);
  const named = nameBetween(line, start, start + name.length);
  const meant = `${line.slice(keyword.start, mixer.start)}${named.text}:`;
  const said = message('missing-mixer.said-otherwise', { written: mixer.text, meant });
  const span = { start: mixer.start, end: mixer.end };
  const whole = { start: mixer.start, end: line.length };
  const fix = replaceFix(
    message('fix.write', { meant }),
    whole,
    withRemark(named.text, line.slice(mixer.end), size),
    true,
  );
  return { statement: { ...statement, mixer: named }, problems: [problem('missing-mixer', said, span, fix)] };
}

const kinds = [...mixerKinds.filter((kind) => kind !== 'hand'), 'stand'].join('|');
/** `spiral`, `spiral mixer 40 kg`: a kind of mixer alone, and what may be said of its size. */
const kindAlone = new RegExp(
  String.raw`^(?:(?:the|a|my|our)\s+)?((?:${kinds})(?:\s+mixer)?)(?:\s+(\d[\d.,]*\s*(?:kg|l|g|qt|quart)))?$`,
  'i',
);
/** `on the spiral`, `with a stand mixer`. */
const led = /^(?:on|with|using|at|inside|into)\s+(?:(?:the|a|an|my|our)\s+)?(\S.*)$/i;
const hands =
  /^(?:(?:with|using|in)\s+)?(?:(?:the|my|our|your|both)\s+)?(?:hands?|hand mixing|hand kneading)$/i;

/** `mix on the spiral:`, `mix spiral:`, `mix with hands:`: read as meant, with the fix that writes it. */
function saidOtherwise(line: string, rest: readonly IToken[], keyword: Span): HeaderRead | undefined {
  const [first, last] = [rest[0], rest.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const span = { start: first.startOffset, end: endOf(last) };
  const text = line.slice(span.start, span.end);
  const header = { kind: 'header', section: 'mix', keyword } as const;
  const told = (meant: string, remark = ''): HeaderRead['problems'] => {
    const written = `mix ${meant}:`;
    const said = message('missing-mixer.said-otherwise', { written: text, meant: written });
    const whole = { start: span.start, end: remark === '' ? span.end : line.length };
    const insert = remark === '' ? meant : withRemark(meant, line.slice(span.end), remark);
    return [
      problem(
        'missing-mixer',
        said,
        span,
        replaceFix(message('fix.write', { meant: written }), whole, insert, true),
      ),
    ];
  };
  if (hands.test(text)) return { statement: { ...header, byHand: true }, problems: told('by hand') };
  const alone = kindAlone.exec(text);
  const name = alone?.[1] ?? led.exec(text)?.[1];
  if (name === undefined) return undefined;
  const start = span.start + text.indexOf(name);
  const mixer = nameBetween(line, start, start + name.length);
  return { statement: { ...header, mixer }, problems: told(`in ${mixer.text}`, alone?.[2]) };
}
