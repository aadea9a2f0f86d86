import type { Connection, Range, TextEdit } from 'vscode-languageserver';
import { toTextEdit } from '../convert/convert.ts';
import type { About } from './about.ts';

/** Answers what brings a document, a stretch of it or the line just typed into the canonical form. */
export function answerFormatting(connection: Connection, about: About): void {
  connection.onDocumentFormatting(
    about<{ textDocument: { uri: string } }, TextEdit[]>('Formatting', [], 'now', (service, uri) =>
      service.format(uri).map(toTextEdit),
    ),
  );
  connection.onDocumentRangeFormatting(
    about<{ textDocument: { uri: string }; range: Range }, TextEdit[]>(
      'Formatting lines',
      [],
      'now',
      (service, uri, { range }) => service.format(uri, linesOf(range)).map(toTextEdit),
    ),
  );
  connection.onDocumentOnTypeFormatting(
    about('Formatting while typing', [], 'now', (service, uri, { position, ch }) =>
      service.formatTyped(uri, position.line, position.character, ch).map(toTextEdit),
    ),
  );
}

/** The lines a range covers; one that ends before the first letter of a line does not cover it. */
function linesOf({ start, end }: Range): { firstLine: number; lastLine: number } {
  const isOpen = end.character === 0 && end.line > start.line;
  return { firstLine: start.line, lastLine: isOpen ? end.line - 1 : end.line };
}
