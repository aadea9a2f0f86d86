import type { SheetView } from '../../server/protocol.ts';
import { lineNumber } from './elements.ts';

/** What stands there while there is no sheet: what is so, and what to do. */
export const nothingWords = {
  'no-formula': [
    'No formula at the cursor.',
    'Put the cursor into a formula of a .dough file; its batch sheet stands here.',
  ],
  'no-server': [
    'The language server is not running.',
    'The command “Doughwright: Restart Language Server” starts it again.',
  ],
} as const;

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
