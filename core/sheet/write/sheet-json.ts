import type { SheetOrigin } from '../build/origin.ts';
import type { SheetDocument } from '../build/sheet-document.ts';

/** One batch sheet, and where it comes from. */
export interface FiledSheet {
  readonly view: SheetDocument;
  readonly origin: SheetOrigin;
}

/**
 * Sheets as a list for another program: each document as it is with its version, its file by the path its reader knows,
 * and lines counted from one as in the other outputs.
 */
export function sheetsAsJson(sheets: readonly FiledSheet[]): string {
  const told = sheets.map(
    ({ view: { uri: _, labels: _labels, ...view }, origin: { date: _date, ...origin } }) => ({
      ...origin,
      ...view,
    }),
  );
  const fromOne = (key: string, value: unknown): unknown =>
    key === 'line' && typeof value === 'number' ? value + 1 : value;
  return `${JSON.stringify(told, fromOne, 2)}\n`;
}
