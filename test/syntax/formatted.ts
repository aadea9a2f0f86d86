import { formatEdits } from '../../core/features/actions/format.ts';
import { parseFile } from '../../core/syntax/file.ts';
import { withEdits } from '../../core/text/edits.ts';

/** A text in its canonical form. */
export function formatted(text: string): string {
  return withEdits(text, formatEdits(parseFile(text)));
}
