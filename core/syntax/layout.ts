/** Where things stand on a line of the canonical form, in columns as an editor with a fixed-width font counts them. */

/** Lines of a section stand in by this much. */
export const indent = '  ';
/** Where the amount of an ingredient or plan line begins, unless its name is too long. */
export const amountColumn = 21;
/** Where the temperature of a reading begins. */
export const readingColumn = 13;
/** Where a comment behind a line begins. */
export const commentColumn = 36;

const mark = /\p{M}|\p{Cf}/u;
const wide =
  /[\u1100-\u115F\u2E80-\u303E\u3041-\u33FF\u3400-\u4DBF\u4E00-\u9FFF\uA000-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6\u{1F300}-\u{1FAFF}\u{20000}-\u{3FFFD}]/u;
const narrow = /^[ -~]*$/;

/** How many columns a text takes: none for combining marks, two for the wide letters of East Asia and for pictures. */
export function columnsOf(text: string): number {
  if (narrow.test(text)) return text.length;
  let columns = 0;
  for (const letter of text) if (!mark.test(letter)) columns += wide.test(letter) ? 2 : 1;
  return columns;
}

/** The text with blanks behind it up to a column, and at least two of them. */
export function upTo(text: string, column: number): string {
  return text + ' '.repeat(Math.max(2, column - columnsOf(text)));
}
