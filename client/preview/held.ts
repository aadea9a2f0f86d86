import type { SheetView } from '../../server/protocol.ts';
import { lineNumber } from './elements.ts';
import { filled } from './filled.ts';

/** Which line holds a sheet up, and which figures stand below; empty for a sheet that is whole. */
export function heldWords(sheet: SheetView, hasGood: boolean): string {
  if (sheet.state !== 'held') return '';
  const { labels, heldBy } = sheet;
  const held = heldBy
    ? filled(labels.heldBy, lineNumber(heldBy.line), heldBy.message.replace(/[.\s]*$/u, '.'))
    : labels.held;
  return `${held} ${hasGood ? labels.lastFigures : labels.knownSoFar}`;
}
