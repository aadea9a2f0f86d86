import type { SheetView } from '../../server/protocol.ts';
import { lineNumber } from './elements.ts';

/** Which line holds a sheet up, and which figures stand below; empty for a sheet that is whole. */
export function heldWords(sheet: SheetView, hasGood: boolean): string {
  if (sheet.state !== 'held') return '';
  const figures = hasGood
    ? ' The figures below are the last that were whole.'
    : ' What is known so far stands below.';
  if (!sheet.heldBy) return `Not everything is known yet.${figures}`;
  const message = sheet.heldBy.message.replace(/[.\s]*$/u, '.');
  return `Line ${lineNumber(sheet.heldBy.line)} holds this up: ${message}${figures}`;
}
