/** What a column counts: bytes, 16-bit units or characters of Unicode. */
export type ColumnUnit = 'utf-8' | 'utf-16' | 'utf-32';

/**
 * The UTF-16 column in a line for one counted in other units. A column within a character is that of its beginning, one behind
 * the end that of the end, one before the beginning the first.
 */
export function toUtf16(line: string, column: number, unit: ColumnUnit): number {
  let at = 0;
  for (let left = column; at < line.length; ) {
    const code = line.codePointAt(at)!;
    left -= unitsOf(code, unit);
    if (left < 0) break;
    at += code > 0xffff ? 2 : 1;
  }
  return at;
}

/** The column in other units for one in UTF-16; what lies outside the line or within a character as for `toUtf16`. */
export function fromUtf16(line: string, column: number, unit: ColumnUnit): number {
  let units = 0;
  for (let at = 0; at < line.length; ) {
    const code = line.codePointAt(at)!;
    at += code > 0xffff ? 2 : 1;
    if (at > column) break;
    units += unitsOf(code, unit);
  }
  return units;
}

function unitsOf(code: number, unit: ColumnUnit): number {
  if (unit === 'utf-32') return 1;
  if (unit === 'utf-16') return code > 0xffff ? 2 : 1;
  // Half of a pair alone is written as the replacement character, which takes three bytes like its neighbours.
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code > 0xffff ? 4 : 3;
}
