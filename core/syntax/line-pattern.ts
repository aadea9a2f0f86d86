import { elementAt, lastOf } from '../text/element.ts';
import { type SlotName, slots } from './line-forms.ts';
import type { Token } from './tree.ts';

/** One word of a pattern: what a baker fills in, a word as it stands, or a comma. Columns are of the pattern's label. */
export interface Element {
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly slot?: SlotName;
  /** The brackets that it begins end before this element. */
  readonly skipTo?: number;
}

export interface Pattern {
  /** The pattern as it is shown. */
  readonly label: string;
  readonly elements: readonly Element[];
  /** Each comma begins it anew. */
  readonly repeats: boolean;
}

const read = new Map<string, Pattern>();

/** A pattern as `line-forms.ts` writes it, taken apart: `[…]` may be left out, `SLOT` stands for a value, all else for itself. */
export function patternOf(text: string): Pattern {
  const before = read.get(text);
  if (before !== undefined) return before;
  const elements: (Element & { skipTo?: number })[] = [];
  let opened: number | undefined;
  for (const { 0: piece, index } of text.matchAll(/\[|\]|,|:|…|[^\s[\],:…]+/g)) {
    if (piece === '[') opened = elements.length;
    else if (piece === ']') {
      const first = opened === undefined ? undefined : elements[opened];
      if (first !== undefined) elements[opened!] = { ...first, skipTo: elements.length };
      opened = undefined;
    } else if (piece !== '…' && piece !== ':') {
      const slot = piece in slots ? { slot: piece as SlotName } : {};
      elements.push({ text: piece, start: index, end: index + piece.length, ...slot });
    }
  }
  const repeats = text.endsWith('…');
  const made = { label: text, elements: repeats ? elements.slice(0, -1) : elements, repeats };
  read.set(text, made);
  return made;
}

/** Where in a pattern the tokens of a line lead. */
export interface Match {
  /** The element that each token stands for. */
  readonly taken: readonly number[];
  /** The elements that may come next, an optional one before what follows it. */
  readonly next: readonly number[];
  /** What is written may end here. */
  readonly isWhole: boolean;
}

/** Follows a pattern along tokens without blanks and comments; `undefined` where they are not of it. */
export function followPattern(pattern: Pattern, tokens: readonly Token[]): Match | undefined {
  const last = pattern.repeats ? tokens.findLastIndex(({ kind }) => kind === 'comma') : -1;
  const taken = follow(pattern.elements, 0, tokens.slice(last + 1), 0);
  if (taken === undefined) return undefined;
  const from = taken.length === 0 ? 0 : lastOf(taken) + 1;
  const next: number[] = [];
  let at = from;
  // Within brackets that were begun only the next element can come; at their start what follows them can as well.
  while (at < pattern.elements.length) {
    next.push(at);
    const { skipTo } = elementAt(pattern.elements, at);
    if (skipTo === undefined) break;
    at = skipTo;
  }
  return { taken, next, isWhole: at >= pattern.elements.length };
}

function follow(
  elements: readonly Element[],
  at: number,
  tokens: readonly Token[],
  token: number,
): readonly number[] | undefined {
  const now = tokens[token];
  if (now === undefined) return [];
  const element = elements[at];
  if (element === undefined) return undefined;
  if (fits(element, now)) {
    // A name goes on as long as words do, and gives way to a word of the form.
    const isName = element.slot !== undefined && slots[element.slot].quantity === undefined;
    const rest =
      follow(elements, at + 1, tokens, token + 1) ??
      (isName && token + 1 < tokens.length ? follow(elements, at, tokens, token + 1) : undefined);
    if (rest !== undefined) return [at, ...rest];
  }
  return element.skipTo === undefined ? undefined : follow(elements, element.skipTo, tokens, token);
}

function fits({ text, slot }: Element, token: Token): boolean {
  if (slot === undefined)
    return text === ',' ? token.kind === 'comma' : token.text.toLowerCase() === text.toLowerCase();
  const wanted: string | undefined = slots[slot].quantity;
  const isNumber = token.kind === 'quantity';
  if (wanted === undefined)
    return isNumber ? token.quantity?.kind === 'bare' : token.kind !== 'comma' && token.kind !== 'colon';
  // A number without its unit may become any quantity; a range or a number in groups of three has its own finding.
  return isNumber && [wanted, 'bare', 'range', 'grouped', 'beyond'].includes(token.quantity!.kind);
}
