import { type ColumnUnit, fromUtf16 } from './encoded-columns.ts';

/** Semantic tokens come in fives: lines on, columns on, length, kind, modifiers. */
const size = 5;

/** An answer with semantic tokens, their columns and lengths counted in other units than UTF-16. */
export function convertedTokens(
  result: Record<string, unknown>,
  lineOf: (line: number) => string | undefined,
  unit: ColumnUnit,
): Record<string, unknown> {
  const { data } = result;
  if (!Array.isArray(data)) return result;
  const converted = [...(data as number[])];
  let line = 0;
  let column = 0;
  let told = 0;
  for (let at = 0; at + size <= converted.length; at += size) {
    const [linesOn, columnsOn, length] = data.slice(at, at + 3) as [number, number, number];
    line += linesOn;
    column = linesOn > 0 ? columnsOn : column + columnsOn;
    const text = lineOf(line);
    const start = text === undefined ? column : fromUtf16(text, column, unit);
    const end = text === undefined ? column + length : fromUtf16(text, column + length, unit);
    converted[at + 1] = linesOn > 0 ? start : start - told;
    converted[at + 2] = end - start;
    told = start;
  }
  return { ...result, data: converted };
}
