import { type Definition, definitionOf } from '../model/scope.ts';
import { parseFile } from '../syntax/file.ts';
import { foldName } from '../text/names.ts';
import type { NamedAnew, Renaming } from './comparison.ts';
import type { DefinitionSummary, FileSummary, Formerly, FormulaSummary } from './file-summary.ts';
import { listOf } from './label-changes.ts';
import { pair } from './pairs.ts';
import type { SideTexts } from './possible-changes.ts';
import { writtenKeys, writtenSections } from './written.ts';

/** What got another name between two states: flours, ingredients, mixers and formulas. */
export function renamesBetween(before: SideTexts, after: SideTexts): Renaming[] {
  const files = [...new Set([...before.keys(), ...after.keys()])].filter(
    (file) => before.get(file) !== after.get(file),
  );
  const inAll = (texts: SideTexts) => files.flatMap((file) => definitionsIn(file, texts.get(file) ?? ''));
  return pair(inAll(before), inAll(after), 'same').flatMap(([was, is]): Renaming[] => {
    if (was === undefined || is === undefined || was.folded === is.folded) return [];
    const { kind, file, definition } = was;
    const { name, block, firstLine } = definition;
    const line = firstLine + (block.top?.headerLine ?? 0);
    const to = is.definition.name.text;
    return [{ kind, from: name.text, to, file, line, column: name.end - 1, fileNow: is.file }];
  });
}

const renamedKinds: ReadonlySet<string> = new Set(['ingredient', 'mixer', 'formula']);

function definitionsIn(file: string, text: string) {
  return parseFile(text).blocks.flatMap(({ block, firstLine }) => {
    const definition: Definition | undefined = definitionOf(file, firstLine, block);
    if (definition === undefined || !renamedKinds.has(definition.kind)) return [];
    const keys = writtenKeys(writtenSections(block, firstLine));
    const kind = block.top?.kind ?? definition.kind;
    return [{ file, folded: definition.name.folded, kind, keys, definition }];
  });
}

/**
 * The summary of a file before, with the new names in all that it says but in what it is called itself: so a flour that only got
 * another name is no other flour. `renamed` is the summary of the same file with its names written anew.
 */
export function underNewNames(
  was: FileSummary,
  renamed: FileSummary,
  renamings: readonly Renaming[],
): FileSummary {
  const over = <T extends FormulaSummary | DefinitionSummary>(written: T, now: T): T => ({
    ...now,
    name: written.name,
    folded: written.folded,
    keys: [...written.keys.slice(0, 1), ...now.keys.slice(1)],
    formerly: { written, renamings },
  });
  return {
    ...renamed,
    formulas: was.formulas.map((written, at) => {
      const now = renamed.formulas[at];
      if (now === undefined) return written;
      const { formula } = written.totals;
      return { ...over(written, now), totals: { ...now.totals, formula } };
    }),
    definitions: was.definitions.map((written, at) => {
      const now = renamed.definitions[at];
      return now === undefined ? written : over(written, now);
    }),
  };
}

interface Saying {
  readonly keys: readonly string[];
  /** Of a formula; a variant has ingredients that none of its own lines names. */
  readonly totals?: { readonly overall: readonly { readonly name: string }[] };
}

/** The state before that is to be held against the one after: under the new names where that has all of them and none of the old. */
export function heldAgainst<T extends Saying & { readonly formerly?: Formerly<T> }>(
  before: T | undefined,
  after: T | undefined,
): T | undefined {
  if (before?.formerly === undefined) return before;
  const { written, renamings } = before.formerly;
  const said = after === undefined ? [] : saidBy(after);
  const isTaken = ({ from, to }: Renaming): boolean =>
    said.some((one) => one.includes(words(to))) &&
    !said.some((one) => one.replaceAll(words(to), ' ').includes(words(from)));
  return renamings.every((one) => !isNamedIn(saidBy(written), one) || isTaken(one)) ? before : written;
}

/** The lines below the header, and what is in it. */
function saidBy({ keys, totals }: Saying): string[] {
  return [...keys.slice(1), ...(totals?.overall.map(({ name }) => name) ?? [])].map(words);
}

function isNamedIn(said: readonly string[], { from }: Renaming): boolean {
  return said.some((one) => one.includes(words(from)));
}

/** Words with blanks around them, so that none is found in a longer one. */
function words(text: string): string {
  return ` ${foldName(text.replace(/[:,"]/g, ' ')).replace(/\s+/g, ' ').trim()} `;
}

/** Which new names stand in a formula that is held against its former self under these. */
export function namedAnew(before: FormulaSummary): NamedAnew[] {
  const { formerly, totals } = before;
  if (formerly === undefined) return [];
  const { written, renamings } = formerly;
  const [list, newList] = [written.totals.label, totals.label].map((label) =>
    label === undefined ? '' : listOf(label),
  );
  return renamings.map((renaming) => ({
    renaming,
    inFormula: isNamedIn(written.keys.slice(1).map(words), renaming),
    onLabel: list !== newList && foldName(list ?? '').includes(foldName(renaming.from)),
  }));
}
