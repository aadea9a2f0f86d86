import type { Scope } from '../../model/scope.ts';
import { type Slot, type SlotName, slots } from '../../syntax/line-forms.ts';
import type { Block } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import type { Span } from '../../text/span.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { Completion, CompletionKind } from '../answers.ts';
import { lineSoFar } from './line-reading.ts';

/** A completion whose place is a stretch of the line asked about, and whose lines are counted in the block. */
export type LineCompletion = Omit<Completion, 'replace'> & { readonly replace: Span };

export interface Asked {
  readonly block: Block;
  readonly line: number;
  readonly text: string;
  /** What stands before the cursor on the line. */
  readonly before: string;
  readonly column: number;
  readonly scope: Scope;
  /** Whoever words what stands beside a completion. */
  readonly speaker: Speaker;
}

/** Where the word begins that the cursor stands in or behind. */
export function wordStart(asked: Asked): number {
  return asked.before.length - /[^\s,]*$/.exec(asked.before)![0].length;
}

/** Where the words of the line begin. */
export function lineStart({ before }: Asked): number {
  return before.length - before.trimStart().length;
}

/** What is written of the line, with one blank between words; a blank at the end stays. */
export function wordsBefore({ before }: Asked): string {
  return before.trimStart().replace(/\s+/g, ' ');
}

/** A completion that replaces what is typed from `start` on, else the word before the cursor. */
export function make(
  asked: Asked,
  label: string,
  kind: CompletionKind,
  more: Partial<LineCompletion> & { start?: number } = {},
): LineCompletion {
  const { start, ...rest } = more;
  return {
    label,
    kind,
    insert: label,
    replace: { start: start ?? wordStart(asked), end: asked.column },
    ...rest,
  };
}

export interface PlaceInLine {
  /** What may be filled in here. */
  readonly slots: readonly SlotName[];
  /** Words of the form that may come here. */
  readonly words: readonly string[];
  /** Whole amounts that may come here, where none is begun. */
  readonly amounts: readonly string[];
  /** Where the name begins that may be going on here. */
  readonly nameStart?: number;
}

/** What may come at a column, by the forms that the line before it may take. */
export function placeAt({ block, line, scope }: Asked, column: number): PlaceInLine {
  const soFar = lineSoFar(block, line, column, scope);
  const found = { slots: new Set<SlotName>(), words: new Set<string>(), amounts: new Set<string>() };
  let nameStart: number | undefined;
  for (const { pattern, match } of soFar?.readings ?? []) {
    if (match === undefined) continue;
    const { elements } = pattern;
    for (const at of match.next) {
      const { slot, text } = elementAt(elements, at);
      if (slot !== undefined) found.slots.add(slot);
      else if (text !== ',' && (match.taken.length > 0 || soFar!.property !== undefined))
        found.words.add(text);
      else if (text !== ',') found.amounts.add(amountOf(pattern.label));
    }
    const last = match.taken.at(-1);
    const slot = last === undefined ? undefined : elementAt(elements, last).slot;
    if (slot === undefined || (slots[slot] as Slot).quantity !== undefined) continue;
    found.slots.add(slot);
    const tokens = soFar!.tokens.slice(-match.taken.length);
    nameStart = elementAt(tokens, match.taken.indexOf(last!)).start;
  }
  return {
    slots: [...found.slots],
    words: [...found.words],
    amounts: [...found.amounts],
    ...(nameStart === undefined ? {} : { nameStart }),
  };
}

/** A whole amount, as a pattern that begins with its words has it. */
function amountOf(pattern: string): string {
  return pattern.replace(/\[.*$/, '').replace('PERCENT', '70%');
}
