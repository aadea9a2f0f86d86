import { catalogueNames } from '../catalogue/catalogue.ts';
import { formatEdits } from '../features/actions/format.ts';
import { headerName } from '../features/completion/templates.ts';
import { findIngredient } from '../model/found-ingredient.ts';
import type { Scope } from '../model/scope.ts';
import { parseFile } from '../syntax/file.ts';
import { indent } from '../syntax/layout.ts';
import { parseLine } from '../syntax/line.ts';
import type { SectionKind } from '../syntax/tree.ts';
import { withEdits } from '../text/edits.ts';
import { entryOf } from '../text/element.ts';
import { trimmed } from '../text/figures.ts';
import { foldName } from '../text/names.ts';
import { nearestWord } from '../text/nearest.ts';
import { type Message, message } from '../words/message.ts';
import { basisOf } from './basis.ts';
import { chooseColumns, numbersOf } from './column-choice.ts';
import { columnsOf } from './columns.ts';
import { cellsOf } from './delimited.ts';
import { settledSigns } from './doubt-settlement.ts';
import { fedByCulture } from './fed-by-culture.ts';
import { floursByName } from './flours-by-name.ts';
import { tellColumns, tellNumbers } from './guess-notes.ts';
import { listed, Notes, type TableNote } from './notes.ts';
import { quantityOf, type Signs, signsOf } from './numbers.ts';
import { partsOf, type TableFormula, type TablePart } from './parts.ts';
import { suggestName } from './suggest-names.ts';
import { tidied } from './table-layout.ts';
import { type ReadRow, readRows } from './table-rows.ts';

export type { TableNote } from './notes.ts';

/** A table as a formula. */
export interface ImportedTable<Words = string> {
  /** The text of a file in canonical form; empty where nothing in the table could be read as a formula. */
  readonly text: string;
  readonly formulas: readonly string[];
  /** What was guessed, left out and checked, in the order of the work. */
  readonly notes: readonly TableNote<Words>[];
}

/** More rows than any formula has: a whole price list pasted by mistake. */
const mostRows = 2000;

const nothing = (why: Message): ImportedTable<Message> => ({
  text: '',
  formulas: [],
  notes: [{ message: why, doubtful: true }],
});

/**
 * Makes formulas of a pasted table: commas, semicolons, tabs, bars or blanks between its cells, with a heading or
 * without. Names are looked up in the scope. `name` is the formula’s where the table has none. Never throws: what cannot
 * be read is told, and what is no line of a formula becomes a comment in it.
 */
export function importTable(table: string, scope: Scope, name?: string): ImportedTable<Message> {
  const notes = new Notes();
  const cells = tidied(cellsOf(table), notes);
  if (cells.rows.length > mostRows)
    return nothing(message('import.too-many-rows', { count: cells.rows.length, otherCount: mostRows }));
  if (cells.rows.length === 0) return nothing(message('import.nothing'));
  const columns = columnsOf(cells);
  if (columns === undefined) return nothing(message('import.no-columns'));
  const lookUp = (text: string) => findIngredient({ text, folded: foldName(text), start: 0, end: 0 }, scope);
  const isKnown = (text: string): boolean =>
    lookUp(text).kind !== 'unknown' || scope.find('formula', foldName(text)).length > 0;
  const isOwn = (text: string): boolean => {
    const found = lookUp(text);
    return found.kind === 'found' && found.ingredient.definition !== undefined;
  };
  const keyOf = (text: string): string | undefined => {
    const found = lookUp(text);
    return found.kind === 'found' ? found.ingredient.key : undefined;
  };
  const isSame = (one: string, other: string): boolean =>
    keyOf(one) !== undefined && keyOf(one) === keyOf(other);
  const isFlour = (text: string): boolean => {
    const found = lookUp(suggestName(text, isKnown, isOwn, isSame).name);
    return found.kind === 'found' && found.ingredient.isFlour;
  };
  const hasPieces = (text: string): boolean => {
    const found = lookUp(text);
    return found.kind === 'found' && found.ingredient.pieceGrams !== undefined;
  };
  const choose = (some: Signs) => chooseColumns(columns, some, isFlour);
  const signs = settledSigns(columns, signsOf(numbersOf(columns), cells.delimiter), choose, notes);
  const chosen = choose(signs);
  const own = floursByName(columns, readRows(columns, chosen, signs), { isKnown, isFlour });
  tellColumns(cells, columns, chosen, notes);
  tellNumbers(columns, chosen, signs, notes);
  const formulas = partsOf(
    readRows(columns, chosen, signs).map((row) =>
      inPieces(withMeantName(row, { isKnown, isOwn, isSame }, notes), hasPieces, notes),
    ),
    name ?? columns.title ?? 'New Formula',
    isKnown,
    notes,
  );
  const isOneOfThem = (text: string): boolean => isFlour(text) || own.has(foldName(text));
  const fed = new Set<ReadRow>();
  const written = formulas.map((formula) => formulaText(formula, isOneOfThem, notes, fed));
  for (const name of own.values()) {
    notes.say(message('import.flour-by-name', { name }));
    written.push(`flour ${headerName(name)}:\n`);
  }
  tellUnknown(namesOf(formulas, fed), formulas, {
    isKnown: (text) => isKnown(text) || own.has(foldName(text)),
    scope,
    notes,
  });
  return {
    text: canonical(written.join('\n')),
    formulas: formulas.map((formula) => formula.name),
    notes: notes.all,
  };
}

/** What is asked of names: whether they are known, the baker's own, of one ingredient. */
interface Names {
  readonly isKnown: (name: string) => boolean;
  readonly isOwn: (name: string) => boolean;
  readonly isSame: (one: string, other: string) => boolean;
}

/** The row under the name that is meant by what its cell says. */
function withMeantName(row: ReadRow, { isKnown, isOwn, isSame }: Names, notes: Notes): ReadRow {
  const { name, celsius, remark, isGuess } = suggestName(row.name, isKnown, isOwn, isSame);
  if (name === row.name || (row.percent ?? row.weight) === undefined) return row;
  const told = { number: row.number, name: row.name, otherName: name };
  if (isGuess) notes.doubt(message('import.taken-as-one-of', told));
  else notes.say(message('import.taken-as', told));
  return {
    ...row,
    name,
    ...(celsius === undefined ? {} : { celsius }),
    ...(remark === undefined
      ? {}
      : { remark: row.remark === undefined ? remark : `${remark}, ${row.remark}` }),
  };
}

/** More eggs than anybody counts one by one in a table whose other rows have units. */
const mostPieces = 60;

/** `1 egg` among rows with units is a piece, where it is known what one weighs. */
function inPieces(row: ReadRow, hasPieces: (name: string) => boolean, notes: Notes): ReadRow {
  const { weight, percent, number, name } = row;
  if (percent !== undefined || weight?.assumed !== true || !hasPieces(name)) return row;
  const written = weight.quantity.number;
  const count = Number(written);
  const unit = count === 1 ? 'piece' : 'pieces';
  const quantity = Number.isInteger(count) && count <= mostPieces ? quantityOf(written, unit) : undefined;
  if (quantity === undefined) return row;
  notes.say(message('import.in-pieces', { number, name }));
  return { ...row, weight: { text: `${written} ${unit}`, quantity, value: count } };
}

function formulaText(
  { name, parts }: TableFormula,
  isFlour: (name: string) => boolean,
  notes: Notes,
  fed: Set<ReadRow>,
): string {
  const [dough, ...rest] = parts;
  const basis = basisOf(dough!, isFlour, notes);
  const taken = new Set(dough!.lines.flatMap((line) => ('row' in line ? [foldName(line.row.name)] : [])));
  const lines = linesOf(dough!, 'formula', basis.amountOf, notes);
  let added = 0;
  for (const part of rest) {
    const isTaken = parts.some(
      (other) =>
        other !== part &&
        other.lines.some((line) => 'row' in line && foldName(line.row.name) === foldName(part.name)),
    );
    if (isTaken || taken.has(foldName(part.name)) || ['filling', 'topping', 'bath'].includes(part.kind))
      continue;
    const grams = gramsOf(part);
    if (grams === undefined) {
      notes.doubt(message('import.part-without-line', { part: part.name }));
      continue;
    }
    added += grams;
    const amount =
      basis.wholeGrams === undefined
        ? `${trimmed(grams, 2)} g`
        : `${trimmed((grams / basis.wholeGrams) * 100, 3)}%`;
    notes.say(message('import.part-all', { part: part.name, grams }));
    lines.push(ingredientLine(part.name, amount, 'formula') ?? `${indent}# ${part.name}  ${amount}`);
  }
  const yieldLine =
    basis.yieldGrams === undefined ? [] : [`${indent}yield ${trimmed(basis.yieldGrams + added, 2)} g`, ''];
  const sections = rest.flatMap((part) => {
    const kind = part.kind as SectionKind;
    const own = basisOf(part, isFlour, notes);
    const said = kind === 'preferment' ? fedByCulture(part, own, isFlour, { notes, fed }) : part;
    return ['', `${kind} ${headerName(part.name)}:`, ...linesOf(said, kind, own.amountOf, notes)];
  });
  return [`formula ${headerName(name)}:`, ...yieldLine, ...lines, ...sections, ''].join('\n');
}

function gramsOf(part: TablePart): number | undefined {
  const rows = part.lines.flatMap((line) => ('row' in line ? [line.row] : []));
  if (rows.length === 0 || rows.some((row) => row.weight?.quantity.kind !== 'mass')) return undefined;
  return rows.reduce((sum, row) => sum + row.weight!.value, 0);
}

function linesOf(
  part: TablePart,
  kind: SectionKind,
  amountOf: ReturnType<typeof basisOf>['amountOf'],
  notes: Notes,
): string[] {
  return part.lines.map((line) => {
    if ('comment' in line) return `${indent}# ${line.comment}`;
    const { row } = line;
    const warmth = row.celsius === undefined ? '' : `, at ${trimmed(row.celsius, 1)} °C`;
    const written = ingredientLine(row.name, `${amountOf(row)}${warmth}`, kind);
    if (written !== undefined) return row.remark === undefined ? written : `${written}  # ${row.remark}`;
    notes.doubt(message('import.row-no-line', { number: row.number, written: row.said }));
    return `${indent}# ${row.said}`;
  });
}

/** The line that says this name and this amount, in quotes where the name would else be read as something else. */
function ingredientLine(name: string, amount: string, context: SectionKind): string | undefined {
  if (foldName(name) === 'ripe culture') return cultureLine(amount, context);
  for (const written of [name, `"${name}"`]) {
    const line = `${indent}${written}  ${amount}`;
    const { statement, problems } = parseLine(line, { context, afterBlank: false });
    if (problems.length > 0 || statement.kind !== 'ingredient') continue;
    if (statement.name.folded === foldName(name) && statement.amount.kind !== 'unknown') return line;
  }
  return undefined;
}

/** Ripe culture is no ingredient of its own: a property of a section says how much of it there is, in percent. */
function cultureLine(amount: string, context: SectionKind): string | undefined {
  const line = `${indent}ripe culture ${amount}`;
  const { statement, problems } = parseLine(line, { context, afterBlank: false });
  return statement.kind === 'property' && problems.length === 0 ? line : undefined;
}

/** The names of all rows that became lines under their own name. */
function namesOf(formulas: readonly TableFormula[], fed: ReadonlySet<ReadRow>): string[] {
  return formulas.flatMap(({ parts }) =>
    parts.flatMap(({ lines }) =>
      lines.flatMap((line) => ('row' in line && !fed.has(line.row) ? [line.row.name] : [])),
    ),
  );
}

function tellUnknown(
  names: readonly string[],
  formulas: readonly TableFormula[],
  {
    isKnown,
    scope,
    notes,
  }: { readonly isKnown: (name: string) => boolean; readonly scope: Scope; readonly notes: Notes },
): void {
  const parts = new Set(formulas.flatMap((formula) => formula.parts.map((part) => foldName(part.name))));
  const own = new Set(formulas.map((formula) => foldName(formula.name)));
  const unknown = new Map(
    names
      .filter(
        (name) =>
          !isKnown(name) &&
          foldName(name) !== 'ripe culture' &&
          !parts.has(foldName(name)) &&
          !own.has(foldName(name)),
      )
      .map((name) => [foldName(name), name]),
  );
  if (unknown.size === 0) return;
  const known = [...catalogueNames(), ...scope.names('ingredient').map((one) => one.name.text)];
  const byFolded = new Map(known.map((one) => [foldName(one), one]));
  const meant = [...unknown].flatMap(([folded, name]) => {
    const near = nearestWord(folded, byFolded.keys());
    return near === undefined ? [] : [message('import.may-be', { name, otherName: entryOf(byFolded, near) })];
  });
  const told = listed([...unknown.values()]);
  notes.doubt(
    meant.length === 0
      ? message('import.not-known', { parts: told })
      : message('import.not-known-meant', { parts: told, facts: meant.slice(0, 6) }),
  );
}

function canonical(text: string): string {
  return withEdits(text, formatEdits(parseFile(text)));
}
