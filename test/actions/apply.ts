import type { FileEdit, TextEdit } from '../../core/index.ts';

/** A text after the edits of an action, as an editor makes them; edits that overlap are an error of the test. */
export function edited(text: string, edits: readonly TextEdit[]): string {
  const starts = [0];
  for (const ending of text.matchAll(/\r\n|\n|\r/g)) starts.push(ending.index + ending[0].length);
  const offset = (line: number, column: number): number => {
    const start = starts[line];
    const end = (starts[line + 1] ?? text.length + 1) - (line + 1 < starts.length ? 0 : 1);
    if (start === undefined || start + column > end)
      throw new Error(`no place ${line}:${column} in the text`);
    return start + column;
  };
  const placed = edits.map((edit) => ({
    from: offset(edit.line, edit.start),
    to: offset(edit.endLine ?? edit.line, edit.end),
    insert: edit.insert,
  }));
  placed.sort((one, other) => other.from - one.from || other.to - one.to);
  let after = text;
  let before = Number.POSITIVE_INFINITY;
  for (const { from, to, insert } of placed) {
    if (to > before || to < from) throw new Error('edits overlap');
    after = after.slice(0, from) + insert + after.slice(to);
    before = from;
  }
  return after;
}

/** The edits of one file. */
export function editsOf(files: readonly FileEdit[] | undefined, uri: string): readonly TextEdit[] {
  return (files ?? []).filter((one) => one.uri === uri).flatMap(({ edits }) => edits);
}
