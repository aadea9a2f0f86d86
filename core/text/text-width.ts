/** Signs of scripts and pictures that a terminal draws two columns wide, after Unicode Standard Annex #11. */
const wide =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}]|\p{Emoji_Presentation}/gu;

/** A mark for every column that a terminal takes for the text; tabs stay tabs, and signs that stand on others take none. */
export function inColumns(text: string, mark: string): string {
  return text
    .replace(/[\p{Mn}\p{Me}\p{Cf}]/gu, '')
    .replace(wide, mark + mark)
    .replace(/[^\t]/gu, mark);
}

/** How many columns a terminal takes for a text; a tab counts as one. */
export function columnsOf(text: string): number {
  return plain.test(text) ? text.length : inColumns(text, '.').length;
}

const plain = /^[ -~\u00a0-\u02ff]*$/;

/** A text with blanks behind it, so that it is so many columns wide at least. */
export function padEndTo(text: string, columns: number): string {
  return text + ' '.repeat(Math.max(0, columns - columnsOf(text)));
}

/** A text with blanks before it, so that it is so many columns wide at least. */
export function padStartTo(text: string, columns: number): string {
  return ' '.repeat(Math.max(0, columns - columnsOf(text))) + text;
}
