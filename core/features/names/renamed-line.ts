import { mentionsOfLine } from '../../model/mentions.ts';
import { amountColumn } from '../../syntax/layout.ts';
import { parseLine } from '../../syntax/line.ts';
import { below, type Surroundings } from '../../syntax/surroundings.ts';
import type { Name, ParsedLine, SourceFile } from '../../syntax/tree.ts';
import type { TextEdit } from '../../text/edits.ts';
import { elementAt } from '../../text/element.ts';
import type { Place } from '../../text/span.ts';

/**
 * The edits that put a new name in places of one line, in quotes where it would else be read as something other than a
 * name. `undefined` when the line cannot say the name. The amount of the line keeps its column where there is room.
 */
export function renamedLine(
  source: SourceFile,
  row: number,
  places: readonly Place[],
  name: Name,
): TextEdit[] | undefined {
  const parsed = elementAt(source.lines, row);
  const around = surroundingsOf(source, row);
  for (const written of [name.text, `"${name.text}"`]) {
    const edits = places.map((place) => replacing(parsed, place, written));
    const text = edits
      .toSorted((one, other) => other.start - one.start)
      .reduce((line, { start, end, insert }) => line.slice(0, start) + insert + line.slice(end), parsed.text);
    if (saysTheSame(parsed, parseLine(text, around), places, name)) return edits;
  }
  return undefined;
}

function replacing({ text, statement }: ParsedLine, place: Place, written: string): TextEdit {
  const edit = { line: place.line, start: place.start, end: place.end, insert: written };
  // `soaker:` goes by the word of its section, which stays.
  if (
    statement.kind === 'header' &&
    statement.keyword.start === place.start &&
    statement.keyword.end === place.end
  )
    return { ...edit, start: place.end, insert: ` ${written}` };
  if (statement.kind !== 'ingredient' && statement.kind !== 'planned') return edit;
  const gap = /^ {2,}(?=\S)/.exec(text.slice(place.end))?.[0].length;
  if (gap === undefined) return edit;
  const before = place.end + gap;
  const column = gap === 2 ? Math.min(before, amountColumn) : before;
  const blanks = Math.max(2, column - place.start - written.length);
  return { ...edit, end: before, insert: written + ' '.repeat(blanks) };
}

function surroundingsOf({ lines }: SourceFile, row: number): Surroundings {
  let within: Omit<Surroundings, 'afterBlank'> = { context: 'none' };
  for (let above = row - 1; above >= 0; above--) {
    const { statement } = elementAt(lines, above);
    if (statement.kind !== 'header') continue;
    within = below(statement);
    break;
  }
  const above = lines[row - 1];
  const afterBlank =
    above === undefined || (above.empty && above.tokens.every((token) => token.kind === 'blank'));
  return { ...within, afterBlank };
}

/** Whether the new line reads as the old one does, but for the new name in the places of the old one. */
function saysTheSame(before: ParsedLine, after: ParsedLine, places: readonly Place[], name: Name): boolean {
  const [old, now] = [mentionsOfLine(before, 0), mentionsOfLine(after, 0)];
  if (old.length !== now.length) return false;
  const isRenamed = (start: number): boolean => places.some((place) => place.start === start);
  for (const [index, one] of old.entries()) {
    const { otherwise } = one;
    const chosen = otherwise !== undefined && places.some((place) => place.end === otherwise.end);
    const was = chosen ? otherwise : one.name;
    const mention = elementAt(now, index);
    const folded = isRenamed(was.start) ? name.folded : was.folded;
    if (mention.name.folded !== folded || mention.use !== one.use) return false;
    if (mention.otherwise !== undefined && isRenamed(was.start)) return false;
    if (chosen) return mention.otherwise === undefined && after.problems.length === 0;
  }
  return shapeOf(before) === shapeOf(after) && codesOf(before) === codesOf(after);
}

const placesAndNames = new Set([
  'name',
  'part',
  'mixer',
  'base',
  'names',
  'words',
  'start',
  'end',
  'span',
  'keyword',
  'valueSpan',
]);

function shapeOf({ statement }: ParsedLine): string {
  return JSON.stringify(statement, (key, value) => (placesAndNames.has(key) ? undefined : value));
}

function codesOf({ problems }: ParsedLine): string {
  return problems.map(({ code }) => code).join(' ');
}
