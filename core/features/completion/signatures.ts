import type { Scope } from '../../model/scope.ts';
import { type Slot, slots } from '../../syntax/line-forms.ts';
import type { Block } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import type { Span } from '../../text/span.ts';
import type { Speaker } from '../../words/speaker.ts';
import { type LineReading, type LineSoFar, lineSoFar } from './line-reading.ts';

/** A form that the line at the cursor may take. */
export interface LineSignature {
  readonly label: string;
  readonly documentation?: string;
  /** What is filled in or written, one after the other, as stretches of the label. */
  readonly parameters: readonly (Span & { readonly documentation?: string })[];
  /** The parameter at the cursor. */
  readonly active: number;
}

export interface SignatureAnswer {
  readonly signatures: readonly LineSignature[];
  /** The first form that what is written so far is of. */
  readonly active: number;
}

/** The forms that a line may take, and what comes at the cursor; nothing where all is said or nothing can be told. */
export function signaturesOf(
  block: Block,
  line: number,
  column: number,
  scope: Scope,
  speaker: Speaker,
): SignatureAnswer | undefined {
  const soFar = lineSoFar(block, line, column, scope);
  if (soFar === undefined) return undefined;
  const wanted = soFar.readings.map((reading) => elementFor(soFar, reading));
  const fitting = wanted.flatMap((element, index) => (element === undefined ? [] : [index]));
  if (fitting.length === 0) return undefined;
  const literals = ({ match, pattern }: LineReading): number =>
    (match?.taken ?? []).filter((at) => elementAt(pattern.elements, at).slot === undefined).length;
  const active = fitting.reduce((best, index) =>
    literals(elementAt(soFar.readings, index)) > literals(elementAt(soFar.readings, best)) ? index : best,
  );
  return {
    active,
    signatures: soFar.readings.map((reading, index) => signature(soFar, reading, wanted[index], speaker)),
  };
}

/** The element that the cursor stands at or before; `undefined` where the form does not fit or is done. */
function elementFor(
  { head, isTouching, tokens }: LineSoFar,
  { match, pattern }: LineReading,
): number | undefined {
  if (match === undefined) return undefined;
  const last = match.taken.at(-1);
  // A number keeps its place until it has its unit.
  const slot = last === undefined ? undefined : elementAt(pattern.elements, last).slot;
  const wanted: string | undefined = slot === undefined ? undefined : (slots[slot] as Slot).quantity;
  if (wanted !== undefined && wanted !== 'bare' && tokens.at(-1)?.quantity?.kind === 'bare') return last;
  // The name in a header may go on after a blank.
  const isBetween = !isTouching && (head !== '' || match.next.length > 0);
  const at = isBetween || tokens.length === 0 ? match.next[0] : last;
  if (at === undefined) return undefined;
  return elementAt(pattern.elements, at).text === ',' ? at + 1 : at;
}

function signature(
  { head, property }: LineSoFar,
  { pattern, meaning }: LineReading,
  element: number | undefined,
  speaker: Speaker,
): LineSignature {
  const before = head === '' ? '' : `${head}  `;
  const shown = pattern.elements.flatMap((one, index) => (one.text === ',' ? [] : [{ ...one, index }]));
  const said = meaning ?? property?.meaning;
  return {
    label: before + pattern.label,
    parameters: shown.map(({ start, end, slot }) => ({
      start: before.length + start,
      end: before.length + end,
      ...(slot === undefined
        ? {}
        : { documentation: `${speaker.say(slots[slot].meaning)}: ${slots[slot].example}` }),
    })),
    active: Math.max(
      0,
      shown.findIndex(({ index }) => index === element),
    ),
    ...(said === undefined ? {} : { documentation: speaker.say(said) }),
  };
}
