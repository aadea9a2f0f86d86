import { roleOf } from '../../model/found-ingredient.ts';
import { chosenName, isSameMeaning, type Meaning, meaningOf, type PlacedBlock } from '../../model/meaning.ts';
import { type Mention, mentionsOf } from '../../model/mentions.ts';
import { noScope, type Scope } from '../../model/scope.ts';
import { basesOf, isVariant } from '../../model/variant.ts';
import { blockAt, sectionAt } from '../../syntax/line-place.ts';
import type { Block, SourceFile } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import type { Place } from '../../text/span.ts';
import type { Steps } from '../../text/steps.ts';

/** The names of a workspace: what every feature about names reads. */
export interface NameBook {
  source(uri: string): SourceFile | undefined;
  scopeOf(uri: string): Scope;
  /** The files that mention a folded name. */
  mentioning(folded: string): readonly string[];
  /** Every folded name that is mentioned anywhere. */
  names(): Iterable<string>;
}

/** A name where it stands in a file. */
export interface NameUse {
  readonly at: PlacedBlock;
  readonly mention: Mention;
}

export interface NameTarget extends NameUse {
  readonly meaning: Meaning;
}

/** The name at a column, the end of the name included, and what it means; `undefined` where no name stands. */
export function nameAt(book: NameBook, uri: string, line: number, column: number): NameTarget | undefined {
  const at = placedBlockAt(book, uri, line);
  if (at === undefined) return undefined;
  const scope = book.scopeOf(uri);
  const touched = mentionsOf(at.block).filter((mention) => {
    if (mention.line !== line - at.firstLine) return false;
    const { start, end } = chosenName(at, mention, scope);
    return start <= column && column <= end;
  });
  const mention = touched.at(-1);
  return mention === undefined ? undefined : { at, mention, meaning: meaningOf(at, mention, scope) };
}

/** The block that holds a line of a file. */
export function placedBlockAt(book: NameBook, uri: string, line: number): PlacedBlock | undefined {
  const source = book.source(uri);
  const found = source === undefined ? undefined : blockAt(source, line);
  if (found === undefined || line >= found.firstLine + found.block.lines.length) return undefined;
  return { uri, ...found };
}

/** Where a name stands, in lines of its file. */
export function placeOfUse(book: NameBook, { at, mention }: NameUse): Place {
  const { start, end } = chosenName(at, mention, book.scopeOf(at.uri));
  return { line: at.firstLine + mention.line, start, end };
}

/** Every name of the workspace with one meaning, headers of definitions included; or only those of one file. */
export function* usesOf(book: NameBook, { at, meaning }: NameTarget, onlyIn?: string): Steps<NameUse[]> {
  const folded = foldedNamesOf(book, meaning);
  // Parts, and names of parts that are not there, are nobody’s business outside their formula.
  const isOfFormula = meaning.is === 'part' || (meaning.is === 'unknown' && meaning.what === 'part');
  const found: NameUse[] = [];
  if (isOfFormula) {
    usesInBlock(book, at, folded, meaning, found);
    if (meaning.is === 'part') yield* usesAround(book, at, meaning, folded, found, onlyIn);
    return found;
  }
  const files = new Set(onlyIn === undefined ? [...folded].flatMap((one) => book.mentioning(one)) : [onlyIn]);
  for (const uri of files) {
    for (const placed of book.source(uri)?.blocks ?? [])
      usesInBlock(book, { uri, ...placed }, folded, meaning, found);
    yield;
  }
  return found;
}

/** A part of a formula is a part of its variants too: the uses in the blocks beside that of the question. */
function* usesAround(
  book: NameBook,
  at: PlacedBlock,
  meaning: Extract<Meaning, { is: 'part' }>,
  folded: ReadonlySet<string>,
  found: NameUse[],
  onlyIn: string | undefined,
): Steps<void> {
  const files = new Set([...folded].flatMap((one) => book.mentioning(one)));
  for (const uri of files) {
    if (onlyIn !== undefined && uri !== onlyIn) continue;
    for (const placed of book.source(uri)?.blocks ?? []) {
      const isIt = placed.block === at.block && uri === at.uri;
      const mayUse = isVariant(placed.block) || placed.block === meaning.at.block;
      if (!isIt && mayUse) usesInBlock(book, { uri, ...placed }, folded, meaning, found);
    }
    yield;
  }
}

function usesInBlock(
  book: NameBook,
  at: PlacedBlock,
  folded: ReadonlySet<string>,
  meaning: Meaning,
  found: NameUse[],
): void {
  const scope = book.scopeOf(at.uri);
  for (const mention of mentionsOf(at.block)) {
    if (!folded.has(mention.name.folded) && !folded.has(mention.otherwise?.folded ?? '')) continue;
    if (isSameMeaning(meaningOf(at, mention, scope), meaning)) found.push({ at, mention });
  }
}

/** The folded names under which a meaning may be mentioned: one, but for the aliases of the catalogue. */
function foldedNamesOf(book: NameBook, meaning: Meaning): ReadonlySet<string> {
  switch (meaning.is) {
    case 'definition':
      return new Set([meaning.definition.name.folded]);
    case 'part':
      return new Set(
        [elementAt(meaning.at.block.lines, meaning.headerLine).statement].flatMap((statement) =>
          statement.kind === 'header' && statement.name !== undefined ? [statement.name.folded] : [],
        ),
      );
    case 'role':
      return new Set([meaning.role]);
    case 'several':
      return new Set(meaning.definitions.map((one) => one.name.folded));
    case 'unknown':
      return new Set([meaning.folded]);
    case 'catalogue':
      return new Set(
        [...book.names()].filter((folded) => isSameMeaning(builtIn(meaning.what, folded), meaning)),
      );
  }
}

const nowhere: PlacedBlock = { uri: '', firstLine: 0, block: { lines: [], subs: [], problems: [] } };

function builtIn(what: 'ingredient' | 'mixer', folded: string): Meaning {
  const name = { text: folded, folded, start: 0, end: folded.length };
  return meaningOf(nowhere, { line: 0, name, use: what === 'mixer' ? 'mixer' : 'line' }, noScope);
}

/**
 * The ingredient lines of its own formula that a drawn, loaded or measured name stands for; none where it stands for a
 * part, or where no line brings it.
 */
export function linesStoodFor(book: NameBook, { at, mention, meaning }: NameTarget): NameUse[] {
  if (!['load', 'load all', 'draw', 'measured'].includes(mention.use) || meaning.is === 'part') return [];
  const { block } = at;
  const scope = book.scopeOf(at.uri);
  const from = headerOfMixed(block, mention);
  const own = mentionsOf(block)
    .filter((one) => one.use === 'line' && sectionAt(block, one.line)?.headerLine === from)
    .filter((one) =>
      meaning.is === 'role'
        ? roleOf(chosenName(at, one, scope), scope) === meaning.role
        : isSameMeaning(meaningOf(at, one, scope), meaning),
    )
    .map((one) => ({ at, mention: one }));
  if (own.length > 0 || from !== block.top?.headerLine) return own;
  // What a variant does not say itself is said by the nearest base that does.
  for (const base of basesOf(block, scope)) {
    const said = mentionsOf(base.block)
      .filter((one) => one.use === 'line' && sectionAt(base.block, one.line) === base.block.top)
      .filter((one) => isSameMeaning(meaningOf(base, one, book.scopeOf(base.uri)), meaning));
    if (said.length > 0) return said.map((one) => ({ at: base, mention: one }));
  }
  return own;
}

/** The header of the section whose lines a mention is about: of the part that is mixed, else of the dough. */
function headerOfMixed(block: Block, { line, use }: Mention): number | undefined {
  const section = sectionAt(block, line);
  const part = use === 'load' || use === 'load all' ? section?.header.part : undefined;
  const named =
    part === undefined ? undefined : block.subs.find(({ header }) => header.name?.folded === part.folded);
  return (named ?? block.top)?.headerLine;
}
