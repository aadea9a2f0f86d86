import { memoByBlock } from '../syntax/block-memo.ts';
import { nameBetween } from '../syntax/name-reading.ts';
import type { Block, Name, ParsedLine, PropertyStatement, Section, Token } from '../syntax/tree.ts';
import { holdsIngredients } from '../syntax/vocabulary.ts';

/** What a name stands in a line for. Two names of one use in one block mean the same when they fold alike. */
export type MentionUse =
  /** The header of a section gives the name: a definition, or a part of a formula. */
  | 'definition'
  /** An ingredient line says how much of it there is. */
  | 'line'
  /** A plan says how much of it is baked. */
  | 'planned'
  /** A part draws it from the formula. */
  | 'draw'
  /** A `load` or `add` puts it into the bowl. */
  | 'load'
  /** A `load` or `add` puts all of its role into the bowl. */
  | 'load all'
  /** The header of a mix or a process, or an `enclose` step, names a part. */
  | 'part'
  /** A trial says how warm it was. */
  | 'measured'
  | 'mixer'
  /** How much of an ingredient is on hand. */
  | 'stock'
  | 'like'
  /** The experiment that a trial belongs to. */
  | 'experiment'
  /** The formula that a variant is of. */
  | 'base'
  /** What a variant does not take of its base. */
  | 'without'
  /** `counts as` says what it is for. */
  | 'role';

/** A name where a line says it; lines are counted in the block. */
export interface Mention {
  readonly line: number;
  readonly name: Name;
  readonly use: MentionUse;
  /** The name as the other reading of the line has it, where that one is known (`type 550 500 g`). */
  readonly otherwise?: Name;
}

/** Every name that a block says, in the order of its text. Remembered for the blocks asked about last. */
export const mentionsOf: (block: Block) => readonly Mention[] = memoByBlock((block) =>
  block.lines.flatMap((parsed, line) => mentionsOfLine(parsed, line)),
);

/** Every name that a block says, for who gathers those of a whole workspace once and asks for none of them again. */
export function* namesIn(block: Block): Iterable<Name> {
  for (const parsed of block.lines)
    for (const { name, otherwise } of namesOfLine(parsed)) {
      if (name.folded === '') continue;
      yield name;
      if (otherwise !== undefined) yield otherwise;
    }
}

/** The names that one line says, from left to right. */
export function mentionsOfLine(parsed: ParsedLine, line: number): Mention[] {
  return namesOfLine(parsed)
    .filter(({ name }) => name.folded !== '')
    .map(({ name, use, otherwise }) =>
      otherwise === undefined ? { line, name, use } : { line, name, use, otherwise },
    );
}

type NameUse = Omit<Mention, 'line'>;

function namesOfLine(parsed: ParsedLine): NameUse[] {
  const { statement, otherwise } = parsed;
  switch (statement.kind) {
    case 'header': {
      const { section, name, part, mixer, base } = statement;
      if (section === 'unknown') return [];
      return [
        ...(name === undefined ? [] : [{ name, use: 'definition' as const }]),
        ...(part === undefined ? [] : [{ name: part, use: 'part' as const }]),
        ...(mixer === undefined ? [] : [{ name: mixer, use: 'mixer' as const }]),
        ...(base === undefined ? [] : [{ name: base, use: 'base' as const }]),
      ];
    }
    case 'ingredient':
    case 'planned': {
      const use = statement.kind === 'ingredient' ? 'line' : 'planned';
      return [
        { name: statement.name, use, ...(otherwise === undefined ? {} : { otherwise: otherwise.name }) },
      ];
    }
    case 'property':
      return namesOfProperty(parsed, statement);
    case 'step': {
      if (statement.known !== 'enclose') return [];
      const { start, end } = statement.words;
      const verb = /^\S+\s+/.exec(parsed.text.slice(start, end));
      return verb === null
        ? []
        : [{ name: nameBetween(parsed.text, start + verb[0].length, end), use: 'part' }];
    }
    default:
      return [];
  }
}

/** What the name that a property gives is of, where it is no mixer. */
const useOfName: Readonly<Record<string, MentionUse>> = { like: 'like', experiment: 'experiment' };

function namesOfProperty(parsed: ParsedLine, statement: PropertyStatement): NameUse[] {
  const { value, property } = statement;
  switch (value?.form) {
    case 'name':
      return [{ name: value.name, use: useOfName[property] ?? 'mixer' }];
    case 'names':
      return property === 'without' ? value.names.map((one) => ({ name: one, use: 'without' })) : [];
    case 'testedDough':
      return [
        { name: value.name, use: 'planned' },
        ...(value.mixer === undefined ? [] : [{ name: value.mixer, use: 'mixer' as const }]),
      ];
    case 'stock':
      return [{ name: value.name, use: 'stock' }];
    case 'mixedIn':
      return value.name === undefined ? [] : [{ name: value.name, use: 'mixer' }];
    case 'draws':
      return [{ name: value.name, use: 'draw' }];
    case 'load':
      return value.items.flatMap(({ name, all, allBut }): NameUse[] =>
        allBut === undefined
          ? [{ name, use: all ? 'load all' : 'load' }]
          : allBut.map((one) => ({ name: one, use: 'load' })),
      );
    case 'partTemperature':
      return [{ name: value.name, use: 'measured' }];
    case 'word':
      return property === 'counts as'
        ? [{ name: nameBetween(parsed.text, value.span.start, value.span.end), use: 'role' }]
        : [];
    case undefined:
      return property === 'load' || property === 'add' || property === 'draws'
        ? halfTyped(parsed, statement)
        : [];
    default:
      return [];
  }
}

const betweenNames = new Set(['all', 'but', 'everything', 'of', 'remaining', 'at']);

/** The names of a list that does not read as a whole yet: `load flour, water 5, night poolish`. */
function halfTyped({ text, tokens }: ParsedLine, { property, valueSpan }: PropertyStatement): NameUse[] {
  const found: NameUse[] = [];
  let run: Token[] = [];
  const close = (): void => {
    const [first, last] = [run[0], run.at(-1)];
    run = [];
    if (first === undefined || last === undefined) return;
    found.push({
      name: nameBetween(text, first.start, last.end),
      use: property === 'draws' ? 'draw' : 'load',
    });
  };
  for (const token of tokens) {
    if (token.start < valueSpan.start || token.kind === 'blank' || token.kind === 'comment') continue;
    const isName =
      token.kind === 'quoted' || (token.kind === 'word' && !betweenNames.has(token.text.toLowerCase()));
    if (isName) run.push(token);
    else close();
  }
  close();
  return found;
}

/** The named parts of a formula's block, by folded name; of two with one name the first counts. */
export const partsOf: (block: Block) => ReadonlyMap<string, Section> = memoByBlock((block) => {
  const parts = new Map<string, Section>();
  for (const section of block.subs) {
    const folded = section.header.name?.folded;
    if (folded === undefined || folded === '' || section.kind === 'unknown') continue;
    if (holdsIngredients(section.kind) && !parts.has(folded)) parts.set(folded, section);
  }
  return parts;
});
