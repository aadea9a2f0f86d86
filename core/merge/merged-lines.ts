import { elementAt } from '../text/element.ts';
import type { LineUnit, TextLine } from './merge-units.ts';

/** A stretch of the merged text: lines, then two sides that somebody has to decide between, where there are such. */
export interface Piece {
  readonly lines: readonly TextLine[];
  readonly conflict?: { readonly ours: readonly TextLine[]; readonly theirs: readonly TextLine[] };
  /** The two sides say the same or more at other places: it is the order that somebody has to decide on. */
  readonly asksOrder?: true;
}

/** A line that all sides agree on, with the comments and blank lines above it. */
export function pieceOf({ lead, line }: LineUnit): Piece {
  return { lines: [...lead, line] };
}

/** Two sides of which somebody has to take one, less what both begin and end with. */
export function conflictIn(ours: readonly LineUnit[], theirs: readonly LineUnit[]): Piece[] {
  const [mine, yours] = [ours, theirs].map((units) => units.flatMap((unit) => pieceOf(unit).lines)) as [
    TextLine[],
    TextLine[],
  ];
  const most = Math.min(mine.length, yours.length);
  const isAlike = (one: TextLine | undefined, other: TextLine | undefined): boolean =>
    one?.text === other?.text;
  let [first, last] = [0, 0];
  while (first < most && isAlike(mine[first], yours[first])) first++;
  while (last < most - first && isAlike(mine.at(-1 - last), yours.at(-1 - last))) last++;
  const middle = (lines: readonly TextLine[]): TextLine[] => lines.slice(first, lines.length - last);
  return [
    {
      lines: mine.slice(0, first),
      conflict: { ours: middle(mine), theirs: middle(yours) },
      asksOrder: true,
    },
    { lines: mine.slice(mine.length - last) },
  ];
}

/** One line of three states; each may lack it. */
export function mergeLine(
  base: LineUnit | undefined,
  ours: LineUnit | undefined,
  theirs: LineUnit | undefined,
): Piece[] {
  if (ours === undefined && theirs === undefined) return [];
  if (base !== undefined && (ours === undefined || theirs === undefined)) {
    const left = (ours ?? theirs)!;
    if (left.meaning === base.meaning) return leftBehind(base.lead, left.lead);
    const lines = [left.line];
    return [
      {
        lines: left.lead,
        conflict: ours === undefined ? { ours: [], theirs: lines } : { ours: lines, theirs: [] },
      },
    ];
  }
  if (ours === undefined || theirs === undefined) {
    const { isDoubted, lead, line } = (ours ?? theirs)!;
    if (isDoubted !== true) return [{ lines: [...lead, line] }];
    const [mine, yours] = ours === undefined ? [[], [line]] : [[line], []];
    return [{ lines: lead, conflict: { ours: mine, theirs: yours } }];
  }
  const lead = mergeLead(base?.lead ?? [], ours.lead, theirs.lead);
  const line = chosen(base, ours, theirs);
  return line === undefined
    ? [{ lines: lead, conflict: { ours: [ours.line], theirs: [theirs.line] } }]
    : [{ lines: [...lead, line] }];
}

/**
 * What of the comments and blank lines above a line that goes is to stay: what was not there before, be it new or the lead of
 * a line above that this side took out.
 */
export function leftBehind(base: readonly TextLine[], left: readonly TextLine[]): Piece[] {
  const own = left.slice(left.length - base.length);
  const before = new Set(base.map(({ text }) => text.trim()));
  const lines =
    left.length >= base.length && isSame(own, base)
      ? left.slice(0, left.length - base.length)
      : left.filter(({ text }) => text.trim() !== '' && !before.has(text.trim()));
  return lines.length === 0 ? [] : [{ lines }];
}

/** The line that counts, by what it says first and by how it is laid out where all say the same. */
function chosen(base: LineUnit | undefined, ours: LineUnit, theirs: LineUnit): TextLine | undefined {
  if (ours.meaning !== theirs.meaning) {
    if (ours.meaning === base?.meaning) return theirs.line;
    return theirs.meaning === base?.meaning ? ours.line : undefined;
  }
  return ours.line.text === base?.line.text ? theirs.line : ours.line;
}

/** Comments and blank lines of three states: those of the side that changed them, or of both, ours first. */
export function mergeLead(
  base: readonly TextLine[],
  ours: readonly TextLine[],
  theirs: readonly TextLine[],
): readonly TextLine[] {
  if (isSame(ours, theirs) || isSame(theirs, base)) return ours;
  if (isSame(ours, base)) return theirs;
  const there = new Set([...base, ...ours].map(({ text }) => text.trim()));
  return [...ours, ...theirs.filter(({ text }) => text.trim() !== '' && !there.has(text.trim()))];
}

function isSame(some: readonly TextLine[], others: readonly TextLine[]): boolean {
  return some.length === others.length && some.every(({ text }, at) => text === elementAt(others, at).text);
}
