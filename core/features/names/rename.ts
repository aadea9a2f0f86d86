import { findIngredient, type IngredientFound } from '../../model/found-ingredient.ts';
import { isSameMeaning, type Meaning, meaningOf } from '../../model/meaning.ts';
import { type Mention, mentionsOf, partsOf } from '../../model/mentions.ts';
import type { Definition, Scope } from '../../model/scope.ts';
import type { Name } from '../../syntax/tree.ts';
import { roleWords } from '../../syntax/vocabulary.ts';
import type { FileEdit } from '../../text/edits.ts';
import { foldName } from '../../text/names.ts';
import type { Place } from '../../text/span.ts';
import type { Steps } from '../../text/steps.ts';
import { type Message, message } from '../../words/message.ts';
import type { Refusal } from '../../words/refusal.ts';
import { type NameBook, type NameTarget, type NameUse, nameAt, placeOfUse, usesOf } from './name-book.ts';
import { renamedLine } from './renamed-line.ts';

/** A book that can also tell how names would be seen if a definition had another name. */
export interface RenameBook extends NameBook {
  scopeIf(uri: string, definition: Definition, name: Name): Scope;
  /** How a file is called in a sentence. */
  fileName(uri: string): string;
}

/** Where the name stands that is to be renamed, and how it is called now; `undefined` where no name stands. */
export function renameStartAt(
  book: RenameBook,
  uri: string,
  line: number,
  column: number,
): { readonly place: Place; readonly text: string } | Refusal | undefined {
  const target = nameAt(book, uri, line, column);
  if (target === undefined) return undefined;
  const refused = whyNot(book, target);
  return refused === undefined
    ? { place: placeOfUse(book, target), text: target.mention.name.text }
    : { refused };
}

/**
 * The edits that give what the name at a column means another name, wherever it is named; or why that cannot be. No
 * other name may come to mean something else by it.
 */
export function* renameAt(
  book: RenameBook,
  uri: string,
  line: number,
  column: number,
  wanted: string,
): Steps<FileEdit[] | Refusal> {
  const target = nameAt(book, uri, line, column);
  if (target === undefined) return { refused: message('rename.no-name') };
  const name = cleanName(wanted);
  const refused = whyNot(book, target) ?? whyNotCalled(name);
  if (refused !== undefined) return { refused };
  const clash = yield* clashOf(book, target, name);
  if (clash !== undefined) return { refused: clash };
  const uses = yield* usesOf(book, target);
  const byLine = new Map<string, NameUse[]>();
  for (const use of uses) {
    const key = `${use.at.firstLine + use.mention.line} ${use.at.uri}`;
    byLine.set(key, [...(byLine.get(key) ?? []), use]);
  }
  const edits = new Map<string, FileEdit['edits'][number][]>();
  for (const onLine of byLine.values()) {
    const [{ at, mention }] = onLine as [NameUse];
    const row = at.firstLine + mention.line;
    const places = onLine.map((use) => placeOfUse(book, use));
    const changed = renamedLine(book.source(at.uri)!, row, places, name);
    if (changed === undefined) {
      const where = { number: row + 1, file: book.fileName(at.uri) };
      return { refused: message('rename.not-a-name', { ...where, name: name.text }) };
    }
    edits.set(at.uri, [...(edits.get(at.uri) ?? []), ...changed]);
    yield;
  }
  return [...edits].map(([of, list]) => ({
    uri: of,
    edits: list.toSorted((one, other) => one.line - other.line || one.start - other.start),
  }));
}

function cleanName(wanted: string): Name {
  const unquoted = /^\s*"([^"]*)"?\s*$/.exec(wanted)?.[1] ?? wanted;
  const text = unquoted.replace(/\s+/g, ' ').trim().normalize('NFC');
  return { text, folded: foldName(text), start: 0, end: text.length };
}

function whyNot(book: RenameBook, { meaning, mention }: NameTarget): Message | undefined {
  const { text: name } = mention.name;
  switch (meaning.is) {
    case 'role':
      return message('rename.role', { name });
    case 'catalogue':
      return message('rename.catalogue', { name });
    case 'several':
      return message('rename.several', { name, count: meaning.definitions.length });
    case 'unknown':
      return message(meaning.what === 'part' ? 'rename.no-part' : 'rename.not-defined', { name });
    case 'part':
      return undefined;
    case 'definition': {
      const { definition } = meaning;
      if (keepsItsStuff(book, definition, definition, nobodysName)) return undefined;
      return message('rename.lent', { name: definition.name.text });
    }
  }
}

const nobodysName: Name = { text: '\u0000', folded: '\u0000', start: 0, end: 1 };

/** Whether what is known of an ingredient stays as it is when a definition, this or another, gets a new name. */
function keepsItsStuff(book: RenameBook, of: Definition, renamed: Definition, name: Name): boolean {
  if (of.kind !== 'ingredient' || renamed.kind !== 'ingredient') return true;
  const isIt = isAt(of, renamed);
  const before = findIngredient(of.name, book.scopeOf(of.uri));
  // One of several, none of which counts, has nothing to lose.
  if (before.kind !== 'found') return true;
  const after = findIngredient(isIt ? name : of.name, book.scopeIf(of.uri, renamed, name));
  return stuffOf(before) === stuffOf(after);
}

function stuffOf(found: IngredientFound): string {
  return JSON.stringify(found, (key, value) =>
    ['key', 'name', 'source', 'definition', 'definitions', 'provenance'].includes(key) ? undefined : value,
  );
}

function whyNotCalled(name: Name): Message | undefined {
  if (name.folded === '') return message('rename.empty');
  if (name.text.includes('"')) return message('rename.quote-mark');
  if ((roleWords as readonly string[]).includes(name.folded))
    return message('rename.to-role', { name: name.text });
  return undefined;
}

function clashOf(book: RenameBook, target: NameTarget, name: Name): Steps<Message | undefined> {
  const { meaning } = target;
  return meaning.is === 'definition'
    ? clashOfDefinition(book, meaning, name)
    : clashOfPart(book, target, name);
}

const looksForParts = new Set<Mention['use']>(['line', 'draw', 'load', 'load all', 'measured', 'part']);

/** Why a part cannot be called so: a part is seen by its own formula and by nothing else. */
// biome-ignore lint/correctness/useYield: one block is one step
function* clashOfPart(book: RenameBook, { at, meaning }: NameTarget, name: Name): Steps<Message | undefined> {
  if (meaning.is !== 'part') return undefined;
  const { block } = at;
  const formula = block.top?.header.name;
  if (formula?.folded === name.folded) return message('rename.formula-itself', { name: formula.text });
  const other = partsOf(block).get(name.folded);
  if (other !== undefined && other.headerLine !== meaning.headerLine)
    return message('rename.part-already', { name: other.header.name!.text });
  const scope = book.scopeOf(at.uri);
  for (const mention of mentionsOf(block)) {
    if (mention.name.folded !== name.folded || !looksForParts.has(mention.use)) continue;
    const before = meaningOf(at, mention, scope);
    if (before.is === 'unknown' || isSameMeaning(before, meaning)) continue;
    const number = at.firstLine + mention.line + 1;
    return message('rename.would-mean-part', { number, name: mention.name.text });
  }
  return undefined;
}

/** Why a flour, ingredient, mixer, formula, bakery or plan cannot be called so: some name would mean another thing. */
function* clashOfDefinition(
  book: RenameBook,
  meaning: Extract<Meaning, { is: 'definition' }>,
  name: Name,
): Steps<Message | undefined> {
  const { definition } = meaning;
  const old = definition.name.folded;
  if (old === name.folded) return undefined;
  const own = book.scopeIf(definition.uri, definition, name);
  const beside = own
    .find(definition.kind, name.folded)
    .find((level) => level.some((one) => isAt(one, definition)))
    ?.find((one) => !isAt(one, definition));
  if (beside !== undefined) {
    return message('rename.defined-already', { ...placeOf(book, beside), name: beside.name.text });
  }
  if (!keepsItsStuff(book, definition, definition, name))
    return message('rename.would-lend', { name: name.text });
  const scope = book.scopeOf(definition.uri);
  for (const other of [old, name.folded].flatMap((folded) => scope.find('ingredient', folded).flat())) {
    if (isAt(other, definition) || keepsItsStuff(book, other, definition, name)) continue;
    return message('rename.other-lent', { ...placeOf(book, other), name: other.name.text });
  }
  for (const uri of new Set([...book.mentioning(old), ...book.mentioning(name.folded)])) {
    const [before, after] = [book.scopeOf(uri), book.scopeIf(uri, definition, name)];
    for (const placed of book.source(uri)?.blocks ?? []) {
      const at = { uri, ...placed };
      for (const mention of mentionsOf(at.block)) {
        const { folded } = mention.name;
        if ((folded !== old && folded !== name.folded) || mention.use === 'definition') continue;
        const was = meaningOf(at, mention, before);
        const isOurs = isSameMeaning(was, meaning);
        // The header of its own mix is renamed along with the formula.
        if (isOurs && mention.use === 'part') continue;
        if (!isOurs && (was.is === 'unknown' || was.is === 'several')) continue;
        const will = meaningOf(at, isOurs ? { ...mention, name } : mention, after);
        if (isSameMeaning(was, will)) continue;
        const where = placeOf(book, { uri, firstLine: at.firstLine + mention.line });
        return isOurs
          ? message('rename.means-already', { ...where, name: name.text })
          : message('rename.would-mean', { ...where, name: mention.name.text });
      }
    }
    yield;
  }
  return undefined;
}

/** A line as people count it, and its file. */
function placeOf(
  book: RenameBook,
  { uri, firstLine }: Pick<Definition, 'uri' | 'firstLine'>,
): { number: number; file: string } {
  return { number: firstLine + 1, file: book.fileName(uri) };
}

function isAt(one: Definition, other: Definition): boolean {
  return one.uri === other.uri && one.firstLine === other.firstLine;
}
