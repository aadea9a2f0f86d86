import { foldName } from '../text/names.ts';
import type { Columns } from './columns.ts';
import type { ReadRow } from './table-rows.ts';

const flourWords = /(?:^|\s)(?:flour|farine|harina|farina)(?:\s|$)|mehl(?:\s|$)/;

/**
 * Names that nobody knows and that have a word for flour in them, by their folded form, where the percentages prove that they are
 * flour: with them the flours come to 100, and without them they do not.
 */
export function floursByName(
  { part, formula }: Columns,
  rows: readonly ReadRow[],
  names: { readonly isKnown: (name: string) => boolean; readonly isFlour: (name: string) => boolean },
): ReadonlyMap<string, string> {
  const none = new Map<string, string>();
  // Of several parts each has its own hundred.
  if (part !== undefined || formula !== undefined) return none;
  const found = rows.filter(
    ({ name, percent }) =>
      percent !== undefined && !names.isFlour(name) && !names.isKnown(name) && isSaid(name),
  );
  if (found.length === 0) return none;
  const sum = (some: readonly ReadRow[]): number =>
    some.reduce((all, { percent }) => all + (percent?.value ?? 0), 0);
  const known = sum(rows.filter(({ name }) => names.isFlour(name)));
  if (Math.abs(known + sum(found) - 100) > 0.25) return none;
  return new Map(found.map(({ name }) => [foldName(name), name]));
}

function isSaid(name: string): boolean {
  return flourWords.test(foldName(name));
}
