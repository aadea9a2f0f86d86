import type { Definition } from '../../model/scope.ts';
import type { Name } from '../../syntax/tree.ts';
import { holdsIngredients } from '../../syntax/vocabulary.ts';
import { foldName } from '../../text/names.ts';
import type { Place } from '../../text/span.ts';
import type { Steps } from '../../text/steps.ts';
import type { SymbolKind } from '../answers.ts';

/** A section of the workspace that is found by its name. */
export interface FoundSymbol {
  readonly name: string;
  readonly kind: SymbolKind;
  /** The formula that a part belongs to. */
  readonly container?: string;
  readonly uri: string;
  readonly place: Place;
}

/** More than anybody reads; with fewer letters typed, the best of them are told. */
const mostTold = 400;
const step = 500;

/**
 * The sections whose names match, best first: the whole name, its beginning, the beginning of a word, a stretch of it,
 * then its letters in their order with others between. Accents and case do not matter.
 */
export function* symbolsMatching(definitions: Iterable<Definition>, query: string): Steps<FoundSymbol[]> {
  const wanted = loosened(foldName(query));
  const found: { readonly symbol: () => FoundSymbol; readonly rank: number; readonly name: string }[] = [];
  let looked = 0;
  for (const { kind, name, uri, firstLine, block } of definitions) {
    const rank = rankOf(name, wanted);
    const symbol = (): FoundSymbol => ({
      name: name.text,
      kind: kind === 'ingredient' && block.top?.kind === 'flour' ? 'flour' : kind,
      uri,
      place: { line: firstLine, start: name.start, end: name.end },
    });
    if (rank !== undefined) found.push({ symbol, rank, name: name.text });
    for (const { kind: of, header, headerLine } of block.subs) {
      const part = header.name;
      if (part === undefined || part.folded === '' || !holdsIngredients(of)) continue;
      const partRank = rankOf(part, wanted);
      if (partRank === undefined) continue;
      const place = { line: firstLine + headerLine, start: part.start, end: part.end };
      // Of equal names the formula comes before the part.
      const rankBehind = partRank + 0.5;
      const made = (): FoundSymbol => ({ name: part.text, kind: 'part', container: name.text, uri, place });
      found.push({ symbol: made, rank: rankBehind, name: part.text });
    }
    if (++looked % step === 0) yield;
  }
  found.sort(
    (one, other) =>
      one.rank - other.rank || one.name.length - other.name.length || (one.name < other.name ? -1 : 1),
  );
  return found.slice(0, mostTold).map(({ symbol }) => symbol());
}

const looseNames = new WeakMap<Name, string>();

function rankOf(name: Name, wanted: string): number | undefined {
  if (wanted === '') return 0;
  let loose = looseNames.get(name);
  if (loose === undefined) {
    loose = loosened(name.folded);
    looseNames.set(name, loose);
  }
  const at = loose.indexOf(wanted);
  if (at === 0) return loose.length === wanted.length ? 0 : 1;
  if (at > 0) return /[\p{L}\p{N}]/u.test(loose.charAt(at - 1)) ? 3 : 2;
  if (wanted.includes(' ') && wanted.split(' ').every((word) => loose.includes(word))) return 4;
  return holdsInOrder(loose, wanted.replaceAll(' ', '')) ? 5 : undefined;
}

function holdsInOrder(text: string, letters: string): boolean {
  let at = 0;
  for (const letter of letters) {
    at = text.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}

function loosened(folded: string): string {
  return /^[\x20-\x7e]*$/.test(folded) ? folded : folded.normalize('NFD').replace(/\p{M}+/gu, '');
}
