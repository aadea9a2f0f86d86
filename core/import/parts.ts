import { lastOf } from '../text/element.ts';
import { foldName } from '../text/names.ts';
import { type Message, message } from '../words/message.ts';
import { listed, type Notes } from './notes.ts';
import type { ReadRow } from './table-rows.ts';
import { isAboutBatch, isDoughName, isGroupName, isTotalName, sectionKindOf } from './table-words.ts';

/** A formula as a table has it: the dough first, then its parts. */
export interface TableFormula {
  readonly name: string;
  readonly parts: readonly TablePart[];
}

export interface TablePart {
  readonly name: string;
  /** The section word, or `dough`. */
  readonly kind: string;
  readonly lines: readonly TableLine[];
}

/** A line of a part, or a row that became none and is kept as a comment. */
export type TableLine = { readonly row: ReadRow } | { readonly comment: string };

interface OpenPart {
  name: string;
  kind: string;
  lines: TableLine[];
}

/**
 * Rows as formulas and their parts: by the columns that say so, else by rows that are a name alone. Sums are left out.
 * `isKnown` says whether a name is an ingredient.
 */
export function partsOf(
  rows: readonly ReadRow[],
  name: string,
  isKnown: (name: string) => boolean,
  notes: Notes,
): TableFormula[] {
  const hasPartColumn = rows.some(({ part }) => part !== '');
  const formulas = new Map<string, ReadRow[]>();
  for (const row of rows) {
    const key = row.formula || name;
    formulas.set(key, [...(formulas.get(key) ?? []), row]);
  }
  const sums: string[] = [];
  const made = [...formulas].map(([formula, own]): TableFormula => {
    const parts: OpenPart[] = [];
    const named = new Set(own.map(({ part }) => foldName(part)));
    let heading = '';
    own.forEach((row, index) => {
      const next = own[index + 1];
      const isTaken = own.some((other) => other !== row && foldName(other.name) === foldName(row.name));
      const isGroup = isGroupName(row.name) && !isTaken;
      if (
        isHeading(row) &&
        !isGroup &&
        !hasPartColumn &&
        !isKnown(row.name) &&
        next !== undefined &&
        !isHeading(next)
      ) {
        heading = row.name;
        named.add(foldName(heading));
        notes.say(message('import.heading', { number: row.number, name: row.name }));
        return;
      }
      const part = openPart(parts, formula, row.part || heading, row.kind);
      if (isSum(row, part, (other) => isKnown(other) || named.has(foldName(other))))
        sums.push(row.name || row.said);
      else part.lines.push(lineOf(row, isKnown, notes));
    });
    return { name: formula, parts: withDoughFirst(parts) };
  });
  const assumed = made.flatMap(({ parts }) =>
    parts.flatMap(({ lines }) =>
      lines.flatMap((line) =>
        'row' in line && line.row.percent === undefined && line.row.weight?.assumed ? [line.row.name] : [],
      ),
    ),
  );
  if (assumed.length > 0) notes.doubt(message('import.grams-assumed', { parts: listed(assumed) }));
  if (sums.length > 0) notes.say(message('import.sums', { parts: listed(sums) }));
  return made;
}

const isHeading = (row: ReadRow): boolean =>
  row.name !== '' &&
  row.percent === undefined &&
  row.weight === undefined &&
  !row.unread &&
  !isTotalName(row.name);

function openPart(parts: OpenPart[], formula: string, name: string, kind: string): OpenPart {
  const isDough =
    name === '' || foldName(kind) === 'dough' || foldName(name) === foldName(formula) || isDoughName(name);
  const found = parts.find((part) =>
    isDough ? part.kind === 'dough' : foldName(part.name) === foldName(name),
  );
  if (found !== undefined) return found;
  const made = { name, kind: isDough ? 'dough' : sectionKindOf(name, kind), lines: [] };
  parts.push(made);
  return made;
}

/** Without a dough the last part is one: it is what the others go into. */
function withDoughFirst(parts: OpenPart[]): OpenPart[] {
  const dough = parts.find(({ kind }) => kind === 'dough') ?? lastOf(parts);
  dough.kind = 'dough';
  return [dough, ...parts.filter((part) => part !== dough)];
}

/** A sum by its name, or by a name nobody knows whose figures are those of all rows above it together. */
function isSum(row: ReadRow, part: OpenPart, isKnown: (name: string) => boolean): boolean {
  if (isTotalName(row.name)) return true;
  if (row.name !== '' && isKnown(row.name)) return false;
  const above = part.lines.flatMap((line) => ('row' in line ? [line.row] : []));
  if (above.length < 2) return false;
  const comesTo = (key: 'percent' | 'weight'): boolean => {
    const own = row[key]?.value;
    if (own === undefined || own === 0) return false;
    const sum = above.reduce((all, other) => all + (other[key]?.value ?? 0), 0);
    return Math.abs(sum - own) <= own / 1000;
  };
  return comesTo('weight') || (row.weight === undefined && comesTo('percent'));
}

function lineOf(row: ReadRow, isKnown: (name: string) => boolean, notes: Notes): TableLine {
  const amount = row.percent ?? row.weight;
  if (amount !== undefined && isAboutBatch(row.name) && !isKnown(row.name)) {
    notes.doubt(message('import.about-batch', { number: row.number, written: row.said }));
    return { comment: row.said };
  }
  if (
    row.name !== '' &&
    amount !== undefined &&
    [row.percent, row.weight].some((one) => one && one.value > 0)
  )
    return { row };
  if (row.name !== '' && amount?.value === 0)
    notes.say(message('import.zero', { number: row.number, name: row.name }));
  else if (
    row.name !== '' &&
    row.percent === undefined &&
    row.weight === undefined &&
    !row.unread &&
    !isKnown(row.name)
  )
    notes.say(message('import.no-amount', { number: row.number, name: row.name }));
  else notes.doubt(whyNot(row));
  return { comment: row.said };
}

/** Why a row became no line. */
function whyNot({ number, name, said: written, unread, percent, weight }: ReadRow): Message {
  if (name === '') return message('import.row-no-name', { number, written });
  if (unread) return message('import.row-not-read', { number, written });
  const isEmpty = percent === undefined && weight === undefined;
  return message(isEmpty ? 'import.row-no-amount' : 'import.row-negative', { number, written });
}
