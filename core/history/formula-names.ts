import { parseFile } from '../syntax/file.ts';

/** The names of the formulas of a text, as they are written, in its order; empty where a text has none. */
export function formulaNames(text: string): string[] {
  if (!/formula/i.test(text)) return [];
  return parseFile(text).blocks.flatMap(({ block }) =>
    block.top?.kind === 'formula' && block.top.header.name !== undefined ? [block.top.header.name.text] : [],
  );
}
