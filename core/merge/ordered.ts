import { diffArrays } from 'diff';
import { elementAt } from '../text/element.ts';
import type { LineUnit } from './merge-units.ts';
import { mergeLine, type Piece, pieceOf } from './merged-lines.ts';

/** What became of the lines of the base on one side, and what came between them. */
interface Side {
  /** By the place of the line in the base. */
  readonly kept: ReadonlyMap<number, LineUnit>;
  /** What came before the line of the base at that place, or at the end. */
  readonly come: ReadonlyMap<number, readonly LineUnit[]>;
}

/**
 * Merges lines whose order says something. Lines that both sides put at the same place are a conflict, for nobody but the
 * baker knows which comes first.
 */
export function mergeInOrder(
  base: readonly LineUnit[],
  ours: readonly LineUnit[],
  theirs: readonly LineUnit[],
): Piece[] {
  const [one, other] = [sideOf(base, ours), sideOf(base, theirs)];
  const pieces: Piece[] = [];
  for (let at = 0; at <= base.length; at++) {
    pieces.push(...mergeCome(one.come.get(at) ?? [], other.come.get(at) ?? []));
    const line = base[at];
    if (line !== undefined) pieces.push(...mergeLine(line, one.kept.get(at), other.kept.get(at)));
  }
  return pieces;
}

function mergeCome(ours: readonly LineUnit[], theirs: readonly LineUnit[]): Piece[] {
  const says = (lines: readonly LineUnit[]): string => lines.map(({ meaning }) => meaning).join('\n');
  if (ours.length === 0) return theirs.map(pieceOf);
  if (theirs.length === 0 || says(ours) === says(theirs)) return ours.map(pieceOf);
  const lines = (some: readonly LineUnit[]) => some.flatMap((unit) => pieceOf(unit).lines);
  return [{ lines: [], conflict: { ours: lines(ours), theirs: lines(theirs) } }];
}

/** Lines that say the same are matched first; between them those about the same thing, in their order. */
function sideOf(base: readonly LineUnit[], side: readonly LineUnit[]): Side {
  const kept = new Map<number, LineUnit>();
  const come = new Map<number, LineUnit[]>();
  let [from, to] = [0, 0];
  let [gone, put]: [number[], LineUnit[]] = [[], []];
  const flush = (): void => {
    let next = 0;
    for (const unit of put) {
      const match = gone.findIndex(
        (at, place) => place >= next && aboutOf(elementAt(base, at)) === aboutOf(unit),
      );
      if (match >= 0) {
        kept.set(elementAt(gone, match), unit);
        next = match + 1;
        continue;
      }
      // What comes without a partner stands before the line of the base that follows what is matched so far.
      const place = gone[next] ?? from;
      come.set(place, [...(come.get(place) ?? []), unit]);
    }
    [gone, put] = [[], []];
  };
  const meanings = (units: readonly LineUnit[]): string[] => units.map(({ meaning }) => meaning);
  for (const { count, added, removed } of diffArrays(meanings(base), meanings(side))) {
    if (removed) for (let at = from; at < from + count; at++) gone.push(at);
    else if (added) put.push(...side.slice(to, to + count));
    else {
      flush();
      for (let at = 0; at < count; at++) kept.set(from + at, elementAt(side, to + at));
    }
    if (!added) from += count;
    if (!removed) to += count;
  }
  flush();
  return { kept, come };
}

/** What a line is about, whichever of its name it is. */
function aboutOf({ id }: LineUnit): string {
  return id.replace(/ \(\d+\)$/, '');
}
