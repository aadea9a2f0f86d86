import { findCatalogue } from '../catalogue/catalogue.ts';
import { findCatalogueMixer } from '../catalogue/mixers.ts';
import type { Block, Name } from '../syntax/tree.ts';
import { roleWords } from '../syntax/vocabulary.ts';
import { findIngredient } from './found-ingredient.ts';
import { type Mention, partsOf } from './mentions.ts';
import { type Definition, definitionOf, noScope, type Scope } from './scope.ts';
import { basesOf } from './variant.ts';

/** A block where it stands now. */
export interface PlacedBlock {
  readonly uri: string;
  readonly firstLine: number;
  readonly block: Block;
}

/** What a name comes to. */
export type Meaning =
  | { readonly is: 'definition'; readonly definition: Definition }
  /** A part of the formula of this block, by the line of its header counted in the block. */
  | { readonly is: 'part'; readonly at: PlacedBlock; readonly headerLine: number }
  /** Known without being defined in a file; `key` is the name all its spellings and aliases share. */
  | { readonly is: 'catalogue'; readonly what: 'ingredient' | 'mixer'; readonly key: string }
  | { readonly is: 'role'; readonly role: string }
  /** Defined more than once where it is looked for, so that none counts. */
  | { readonly is: 'several'; readonly definitions: readonly Definition[] }
  | {
      readonly is: 'unknown';
      readonly what: 'ingredient' | 'mixer' | 'formula' | 'experiment' | 'part';
      readonly folded: string;
    };

/** What a name of a block means, looked for as the resolving of formulas does. */
export function meaningOf(at: PlacedBlock, mention: Mention, scope: Scope): Meaning {
  const { block } = at;
  const name = chosenName(at, mention, scope);
  switch (mention.use) {
    case 'definition':
      return (
        (at.block.top?.headerLine === mention.line ? undefined : partMeaning(at, name, scope)) ??
        ownMeaning(at, mention)
      );
    case 'mixer':
      return mixerMeaning(name, scope);
    case 'planned':
    case 'base':
      return formulaMeaning(name, scope) ?? { is: 'unknown', what: 'formula', folded: name.folded };
    case 'experiment':
      return (
        ofLevel(scope.find('experiment', name.folded)[0]) ?? {
          is: 'unknown',
          what: 'experiment',
          folded: name.folded,
        }
      );
    case 'stock':
      return ingredientMeaning(name, scope, 0);
    case 'role':
      return { is: 'role', role: name.folded };
    case 'part': {
      const isDough = block.top?.kind === 'formula' && block.top.header.name?.folded === name.folded;
      if (isDough) return ownMeaning(at, { ...mention, line: 0 });
      return partMeaning(at, name, scope) ?? { is: 'unknown', what: 'part', folded: name.folded };
    }
    case 'like': {
      const isOwn = block.top?.header.name?.folded === name.folded;
      return ingredientMeaning(name, scope, isOwn ? 1 : 0);
    }
    case 'draw': {
      const role = roleNamed(name);
      const isDrawnByRole = role !== undefined && role !== 'water' && role !== 'salt';
      if (isDrawnByRole && scope.find('ingredient', name.folded).length === 0) return { is: 'role', role };
      return partMeaning(at, name, scope) ?? ingredientMeaning(name, scope, 0);
    }
    case 'load all': {
      const role = roleNamed(name);
      if (role !== undefined) return { is: 'role', role };
      return partMeaning(at, name, scope) ?? ingredientMeaning(name, scope, 0);
    }
    default:
      return partMeaning(at, name, scope) ?? ingredientMeaning(name, scope, 0);
  }
}

/** The name of a mention in the reading of its line that holds. */
export function chosenName(at: PlacedBlock, { name, use, otherwise }: Mention, scope: Scope): Name {
  if (otherwise === undefined) return name;
  const isKnown =
    use === 'planned'
      ? scope.find('formula', otherwise.folded).length > 0
      : partMeaning(at, otherwise, scope) !== undefined ||
        findIngredient(otherwise, scope).kind !== 'unknown';
  return isKnown ? otherwise : name;
}

/** Whether two meanings are of one thing; both must be of the workspace as it is now. */
export function isSameMeaning(one: Meaning, other: Meaning): boolean {
  switch (one.is) {
    case 'definition':
      return other.is === 'definition' && isSameDefinition(one.definition, other.definition);
    case 'part':
      return (
        other.is === 'part' &&
        one.at.uri === other.at.uri &&
        one.at.firstLine === other.at.firstLine &&
        one.headerLine === other.headerLine
      );
    case 'catalogue':
      return other.is === 'catalogue' && one.what === other.what && one.key === other.key;
    case 'role':
      return other.is === 'role' && one.role === other.role;
    case 'several':
      return (
        other.is === 'several' &&
        one.definitions.length === other.definitions.length &&
        one.definitions.every((definition, index) => isSameDefinition(definition, other.definitions[index]!))
      );
    case 'unknown':
      return other.is === 'unknown' && one.what === other.what && one.folded === other.folded;
  }
}

function isSameDefinition(one: Definition, other: Definition): boolean {
  return one.uri === other.uri && one.firstLine === other.firstLine;
}

function ownMeaning(at: PlacedBlock, { line, name }: Pick<Mention, 'line' | 'name'>): Meaning {
  const isTop = at.block.top?.headerLine === line;
  if (!isTop) return { is: 'part', at, headerLine: line };
  const definition = definitionOf(at.uri, at.firstLine, at.block);
  return definition === undefined
    ? { is: 'unknown', what: 'part', folded: name.folded }
    : { is: 'definition', definition };
}

/** A part that a variant has from its base, or in its place, is that of the base: it has one name in both. */
function partMeaning(at: PlacedBlock, name: Name, scope: Scope): Meaning | undefined {
  for (const base of basesOf(at.block, scope).toReversed()) {
    const part = partsOf(base.block).get(name.folded);
    if (part !== undefined) return { is: 'part', at: base, headerLine: part.headerLine };
  }
  const part = partsOf(at.block).get(name.folded);
  return part === undefined ? undefined : { is: 'part', at, headerLine: part.headerLine };
}

function ofLevel(level: readonly Definition[] | undefined): Meaning | undefined {
  if (level === undefined) return undefined;
  return level.length === 1
    ? { is: 'definition', definition: level[0]! }
    : { is: 'several', definitions: level };
}

function mixerMeaning(name: Name, scope: Scope): Meaning {
  const defined = ofLevel(scope.find('mixer', name.folded)[0]);
  if (defined !== undefined) return defined;
  const usual = findCatalogueMixer(name.folded);
  return usual === undefined
    ? { is: 'unknown', what: 'mixer', folded: name.folded }
    : { is: 'catalogue', what: 'mixer', key: usual.name };
}

function formulaMeaning(name: Name, scope: Scope): Meaning | undefined {
  return ofLevel(scope.find('formula', name.folded)[0]);
}

function ingredientMeaning(name: Name, scope: Scope, fromLevel: number): Meaning {
  const defined = ofLevel(scope.find('ingredient', name.folded)[fromLevel]);
  if (defined !== undefined) return defined;
  const builtIn = findIngredient(name, noScope);
  if (builtIn.kind === 'found') {
    const { key } = builtIn.ingredient;
    const role = findCatalogue(key) === undefined ? roleNamed(name) : undefined;
    return role === undefined ? { is: 'catalogue', what: 'ingredient', key } : { is: 'role', role };
  }
  return formulaMeaning(name, scope) ?? { is: 'unknown', what: 'ingredient', folded: name.folded };
}

function roleNamed(name: Name): string | undefined {
  return roleWords.find((word) => word === name.folded);
}
