/** The blanks that a line begins with. */
export function indentOf(text: string): string {
  return text.slice(0, text.length - text.trimStart().length);
}
