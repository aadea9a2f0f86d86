import { mergeInAnyOrder } from './any-order.ts';
import { matchedSide } from './matched-lines.ts';
import { withNewTrialsMatched } from './matched-trials.ts';
import { type BlockUnit, type LineUnit, type SectionUnit, type TextLine, unitsOf } from './merge-units.ts';
import { conflictIn, leftBehind, mergeLead, mergeLine, type Piece, pieceOf } from './merged-lines.ts';
import { withMovedApart } from './moved-apart.ts';
import { isOrderInDoubt, mergeInOrder } from './ordered.ts';
import { withRenamed } from './renamed.ts';

/** How the two sides of a conflict are marked. */
export interface MergeMarks {
  readonly ours: string;
  readonly theirs: string;
  /** How many signs a mark has. */
  readonly size: number;
}

export interface Merged {
  readonly text: string;
  /** How many lines or sections somebody has to decide on. */
  readonly conflicts: number;
}

export const usualMarks: MergeMarks = { ours: 'ours', theirs: 'theirs', size: 7 };

/**
 * Makes one text of two that came of the same one. Lines are matched by their section and by what they are about, so that
 * changes of neighbours, and lines that both sides add, come together; sections of one name that both sides add unite. A
 * line that the two sides say differently, or that one changed and the other took out, is marked with both. Never throws.
 */
export function mergeTexts(base: string, ours: string, theirs: string, marks = usualMarks): Merged {
  if (ours === theirs || theirs === base) return { text: ours, conflicts: 0 };
  if (ours === base) return { text: theirs, conflicts: 0 };
  const root = unitsOf(base);
  const [one, other] = [ours, theirs].map((text) => withRenamed(root, unitsOf(text)));
  const pieces = [
    ...mergeInAnyOrder<BlockUnit>(root.blocks, one!.blocks, other!.blocks, mergeBlock),
    { lines: mergeLead(root.tail, one!.tail, other!.tail) },
  ];
  return written(pieces, endingOf(ours), marks);
}

function mergeBlock(
  base: BlockUnit | undefined,
  ours: BlockUnit | undefined,
  theirs: BlockUnit | undefined,
): Piece[] {
  const gone = takenOut(base, ours, theirs, linesOfBlock);
  if (gone !== undefined) return gone;
  let [one, other] = [ours, theirs];
  if (one !== undefined && other !== undefined) {
    [one, other] = withNewTrialsMatched(base, one, other);
    if (base !== undefined) [one, other] = withMovedApart(base, one, other);
  }
  return mergeInAnyOrder<SectionUnit>(
    base?.sections ?? [],
    one?.sections ?? [],
    other?.sections ?? [],
    mergeSection,
  );
}

function mergeSection(
  base: SectionUnit | undefined,
  ours: SectionUnit | undefined,
  theirs: SectionUnit | undefined,
): Piece[] {
  const gone = takenOut(base, ours, theirs, linesOfSection);
  if (gone !== undefined) return gone;
  const { isOrdered } = (ours ?? theirs)!;
  const merge = isOrdered ? mergeInOrder : mergeLinesInAnyOrder;
  return [
    ...mergeLine(base?.header, ours?.header, theirs?.header),
    ...merge(base?.lines ?? [], ours?.lines ?? [], theirs?.lines ?? []),
  ];
}

function mergeLinesInAnyOrder(
  base: readonly LineUnit[],
  ours: readonly LineUnit[],
  theirs: readonly LineUnit[],
): Piece[] {
  const stepsOf = (lines: readonly LineUnit[]) => lines.filter(({ isStep }) => isStep === true);
  if (isOrderInDoubt(stepsOf(base), stepsOf(ours), stepsOf(theirs))) return conflictIn(ours, theirs);
  return mergeInAnyOrder(
    base,
    matchedSide(base, ours, false, theirs).lines,
    matchedSide(base, theirs, false, ours).lines,
    mergeLine,
  );
}

/**
 * Of what was there before and one side lacks: nothing where the other left it as it was, else both sides marked.
 * `undefined` where neither side took it out.
 */
function takenOut<T>(
  base: T | undefined,
  ours: T | undefined,
  theirs: T | undefined,
  saidBy: (unit: T) => readonly LineUnit[],
): Piece[] | undefined {
  if (base === undefined || (ours !== undefined && theirs !== undefined)) return undefined;
  const left = ours ?? theirs;
  const says = (unit: T): string =>
    saidBy(unit)
      .map(({ meaning }) => meaning)
      .join('\n');
  if (left === undefined) return [];
  if (says(left) === says(base)) return leftBehind(saidBy(base)[0]?.lead ?? [], saidBy(left)[0]?.lead ?? []);
  const lines = saidBy(left).flatMap((unit) => pieceOf(unit).lines);
  return [
    { lines: [], conflict: ours === undefined ? { ours: [], theirs: lines } : { ours: lines, theirs: [] } },
  ];
}

function linesOfBlock({ sections }: BlockUnit): readonly LineUnit[] {
  return sections.flatMap(linesOfSection);
}

function linesOfSection({ header, lines }: SectionUnit): readonly LineUnit[] {
  return header === undefined ? lines : [header, ...lines];
}

function endingOf(text: string): string {
  return /\r\n|\r|\n/.exec(text)?.[0] ?? '\n';
}

/** The pieces as a text, each line ended as our side ends its lines. */
function written(pieces: readonly Piece[], ending: string, marks: MergeMarks): Merged {
  const lines: TextLine[] = [];
  let conflicts = 0;
  const mark = (sign: string, label: string): void => {
    lines.push({ text: `${sign.repeat(marks.size)}${label === '' ? '' : ` ${label}`}`, ending });
  };
  for (const piece of pieces) {
    lines.push(...piece.lines);
    if (piece.conflict === undefined) continue;
    conflicts++;
    mark('<', marks.ours);
    lines.push(...piece.conflict.ours);
    mark('=', '');
    lines.push(...piece.conflict.theirs);
    mark('>', marks.theirs);
  }
  const text = lines.map((line, at) => {
    const isLast = at === lines.length - 1;
    return line.text + (isLast && line.ending === '' ? '' : ending);
  });
  return { text: text.join(''), conflicts };
}
