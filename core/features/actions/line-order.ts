import type { SolvedLine } from '../../calc/formula/formula-result.ts';
import type { LineModel, SectionModel } from '../../model/formula-model.ts';
import type { Block } from '../../syntax/tree.ts';
import { elementAt, firstOf, lastOf } from '../../text/element.ts';
import type { Message } from '../../words/message.ts';
import type { ActionContext, Offer } from './action.ts';
import { sectionAt, selectedLines, solvedLines } from './action-places.ts';
import { LineChanges } from './line-changes.ts';

interface Placed {
  /** The first of the comment lines right above it, else the line itself. */
  readonly first: number;
  readonly line: LineModel;
  readonly solved: SolvedLine | undefined;
}

/** Offers to put the lines of a section in the order of a rank, smallest first, where they are not so already. */
export function* orderOffer(
  context: ActionContext,
  title: Message,
  rank: (line: Placed) => number,
): Iterable<Offer> {
  const section = sectionAt(context);
  if (section === undefined || section.lines.length < 2) return;
  const solved = solvedLines(context, section);
  const groups = groupsOf(context.block, section, linesIn(context, section), solved);
  const sorted = groups.map((group) =>
    [...group].sort((one, other) => compared(rank(one), rank(other)) || one.line.line - other.line.line),
  );
  if (groups.every((group, index) => group.every((one, at) => one === elementAt(sorted, index)[at]))) return;
  yield {
    title,
    edits: () => {
      const changes = new LineChanges(context);
      for (const [index, group] of groups.entries()) {
        const texts = elementAt(sorted, index).flatMap(({ first, line }) =>
          Array.from({ length: line.line - first + 1 }, (_, at) => changes.text(first + at)),
        );
        const [from, to] = [firstOf(group).first, lastOf(group).line.line];
        for (let line = from; line <= to; line++) changes.replace(line, elementAt(texts, line - from));
      }
      return changes.edits();
    },
  };
}

// Infinite ranks would leave each other’s difference unknown.
function compared(one: number, other: number): number {
  return one === other ? 0 : one < other ? -1 : 1;
}

function linesIn(context: ActionContext, section: SectionModel): readonly LineModel[] {
  const selected = context.isSelection ? selectedLines(context, section) : section.lines;
  return selected.length < 2 ? section.lines : selected;
}

/** The lines that follow each other with nothing but their own comments between. */
function groupsOf(
  block: Block,
  section: SectionModel,
  lines: readonly LineModel[],
  solved: ReadonlyMap<string, SolvedLine>,
): Placed[][] {
  const groups: Placed[][] = [];
  let end = -2;
  for (const line of lines) {
    let first = line.line;
    while (first - 1 > Math.max(section.headerLine, end) && isComment(block, first - 1)) first--;
    const placed = { first, line, solved: solved.get(line.id) };
    const group = groups[groups.length - 1];
    if (group !== undefined && first === end + 1) group.push(placed);
    else groups.push([placed]);
    end = line.line;
  }
  return groups;
}

function isComment(block: Block, line: number): boolean {
  const { empty, tokens } = elementAt(block.lines, line);
  return empty && tokens.some((token) => token.kind === 'comment');
}
