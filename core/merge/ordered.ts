import { elementAt } from '../text/element.ts';
import { type MatchedSide, matchedSide } from './matched-lines.ts';
import type { LineUnit } from './merge-units.ts';
import { conflictIn, mergeLine, type Piece, pieceOf } from './merged-lines.ts';

/**
 * Merges lines whose order says something. Lines that both sides put at the same place are a conflict, for nobody but the
 * baker knows which comes first; so is a line that one side moved and the other took out, one put beside lines that the other side
 * moved apart, and all of them where both sides moved lines otherwise.
 */
export function mergeInOrder(
  base: readonly LineUnit[],
  ours: readonly LineUnit[],
  theirs: readonly LineUnit[],
): Piece[] {
  const [one, other] = [matchedSide(base, ours, true), matchedSide(base, theirs, true)];
  const order = commonOrder(base, one, other);
  if (order === undefined) return conflictIn(ours, theirs);
  const root = new Map(base.map((unit) => [unit.id, unit]));
  const common = new Set(order);
  const [mine, yours] = [gapsOf(one.lines, common), gapsOf(other.lines, common)];
  const [lines, others] = [one, other].map((side) => new Map(side.lines.map((unit) => [unit.id, unit])));
  return [start, ...order].flatMap((id, at) => {
    const next = order[at];
    const line = id === start ? [] : mergeLine(root.get(id), lines!.get(id), others!.get(id));
    const left = leftAlone(mine.get(id), one, root, true);
    const leftOther = leftAlone(yours.get(id), other, root, false);
    return [...line, ...left, ...leftOther, ...mergePut(mine.get(id), yours.get(id), next)];
  });
}

/** Whether both sides changed the order of lines, or put some where it is not clear which comes first. */
export function isOrderInDoubt(
  base: readonly LineUnit[],
  ours: readonly LineUnit[],
  theirs: readonly LineUnit[],
): boolean {
  return mergeInOrder(base, ours, theirs).some(({ asksOrder }) => asksOrder === true);
}

/** What stands before the first line that both sides have. */
const start = '';

/** The lines of the base that both sides have, in the order of the side that changed it; `undefined` where both did, otherwise. */
function commonOrder(
  base: readonly LineUnit[],
  ...[ours, theirs]: readonly [MatchedSide, MatchedSide]
): readonly string[] | undefined {
  const idsOf = (units: readonly LineUnit[]): string[] => units.map(({ id }) => id);
  const [mine, yours] = [new Set(idsOf(ours.lines)), new Set(idsOf(theirs.lines))];
  const both = (units: readonly LineUnit[]): string[] =>
    idsOf(units).filter((id) => mine.has(id) && yours.has(id) && isOfBase.has(id));
  const isOfBase = new Set(idsOf(base));
  const [was, one, other] = [both(base), both(ours.lines), both(theirs.lines)];
  if (isSame(one, other) || isSame(other, was)) return one;
  return isSame(one, was) ? other : undefined;
}

/** What stands on one side between a line that both have and the next such. */
interface Gap {
  readonly units: readonly LineUnit[];
  /** The next line that both have; `undefined` at the end. */
  readonly next?: string;
}

function gapsOf(lines: readonly LineUnit[], common: ReadonlySet<string>): Map<string, Gap> {
  const gaps = new Map<string, Gap>();
  let [id, units]: [string, LineUnit[]] = [start, []];
  for (const unit of lines) {
    if (!common.has(unit.id)) {
      units.push(unit);
      continue;
    }
    gaps.set(id, { units, next: unit.id });
    [id, units] = [unit.id, []];
  }
  gaps.set(id, { units });
  return gaps;
}

/** Lines of the base that the other side took out. */
function leftAlone(
  gap: Gap | undefined,
  { moved }: MatchedSide,
  root: ReadonlyMap<string, LineUnit>,
  isOurs: boolean,
): Piece[] {
  return (gap?.units ?? []).flatMap((unit): Piece[] => {
    const before = root.get(unit.id);
    if (before === undefined) return [];
    if (moved.has(unit.id)) return [isOurs ? conflictOf([unit], []) : conflictOf([], [unit])];
    return isOurs ? mergeLine(before, unit, undefined) : mergeLine(before, undefined, unit);
  });
}

/** New lines of either side at one place. */
function mergePut(ours: Gap | undefined, theirs: Gap | undefined, next: string | undefined): Piece[] {
  const put = (gap: Gap | undefined): readonly LineUnit[] =>
    (gap?.units ?? []).filter(({ id }) => id.startsWith('new '));
  const says = (lines: readonly LineUnit[]): string => lines.map(({ meaning }) => meaning).join('\n');
  const [mine, yours] = [put(ours), put(theirs)];
  const isInPlace = (gap: Gap | undefined): boolean => gap?.next === next;
  if (says(mine) === says(yours)) return mine.map(pieceOf);
  if (yours.length === 0 && isInPlace(ours)) return mine.map(pieceOf);
  if (mine.length === 0 && isInPlace(theirs)) return yours.map(pieceOf);
  return [conflictOf(mine, yours)];
}

function conflictOf(ours: readonly LineUnit[], theirs: readonly LineUnit[]): Piece {
  const lines = (some: readonly LineUnit[]) => some.flatMap((unit) => pieceOf(unit).lines);
  return { lines: [], conflict: { ours: lines(ours), theirs: lines(theirs) }, asksOrder: true };
}

function isSame(some: readonly string[], others: readonly string[]): boolean {
  return some.length === others.length && some.every((one, at) => one === elementAt(others, at));
}
