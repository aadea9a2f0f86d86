import { memoByBlock } from '../syntax/block-memo.ts';
import { nameBetween } from '../syntax/name-reading.ts';
import type { Block, IngredientStatement, Name } from '../syntax/tree.ts';
import { holdsIngredients } from '../syntax/vocabulary.ts';

/**
 * The part that an ingredient line without an amount takes whole: `biga`, `all the biga` or `biga all` where the block has a part
 * of that name. `text` is the text of the line. Common practice, no source.
 */
export function partTakenWhole(block: Block, text: string, statement: IngredientStatement): Name | undefined {
  if (statement.amount.kind !== 'unknown' || statement.amount.reason !== 'missing') return undefined;
  const { name } = statement;
  for (const one of [name, withoutAll(text, name)])
    if (one !== undefined && namesOfParts(block).has(one.folded)) return one;
  return undefined;
}

const namesOfParts = memoByBlock(
  ({ subs }: Block): ReadonlySet<string> =>
    new Set(subs.filter(isPart).flatMap(({ header }) => header.name?.folded ?? [])),
);

function isPart({ kind }: Block['subs'][number]): boolean {
  return kind !== 'unknown' && holdsIngredients(kind);
}

function withoutAll(text: string, name: Name): Name | undefined {
  const written = text.slice(name.start, name.end);
  const before = /^all\s+(?:of\s+)?(?:the\s+)?/i.exec(written)?.[0].length ?? 0;
  const behind = /\s+all$/i.exec(written)?.[0].length ?? 0;
  return before + behind === 0 ? undefined : nameBetween(text, name.start + before, name.end - behind);
}
