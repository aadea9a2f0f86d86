import type { Definition, Scope } from '../model/scope.ts';
import type { Name } from '../syntax/tree.ts';
import { folderOf } from '../text/folder.ts';
import { allOf, type DefinitionIndex } from './definition-index.ts';

/** Where names are looked for, besides which there are: the roots of the workspace, and what holds where no bakery says otherwise. */
export interface Surroundings extends Pick<Scope, 'usual'> {
  readonly roots: readonly string[];
}

type Levels = readonly (readonly Definition[])[];

/** Lists of definitions parted into levels, by the list; one that any definition is another of is another list. */
export type PartedLists = WeakMap<readonly Definition[], Levels>;

/**
 * The names as seen from a file: first its own folder, then each folder above it up to the root, then all others. `parted`
 * gives what is kept for the folder and its root.
 */
export function scopeFrom(
  index: DefinitionIndex,
  { roots, usual }: Surroundings,
  uri: string,
  parted: (folder: string, root: string) => PartedLists,
): Scope {
  const folder = folderOf(uri);
  const root = rootOf(folder, roots);
  const known = parted(folder, root);
  const levels = (definitions: readonly Definition[]): Levels => {
    if (definitions.length <= 1) return levelsOf(definitions, folder, root);
    let found = known.get(definitions);
    if (found === undefined) {
      found = levelsOf(definitions, folder, root);
      known.set(definitions, found);
    }
    return found;
  };
  return {
    ...(usual === undefined ? {} : { usual }),
    find: (kind, folded) => levels(index.kinds.get(kind)?.byName.get(folded) ?? none),
    nearest: (kind) => levels(allOf(index.kinds.get(kind)))[0]?.[0],
    names: (kind) => inOneList(levels(allOf(index.kinds.get(kind)))),
    from: (other) => scopeFrom(index, { roots, ...(usual === undefined ? {} : { usual }) }, other, parted),
  };
}

/** The scope of a file if a definition had another name: what a rename would come to. */
export function scopeIf(
  scope: Scope,
  index: DefinitionIndex,
  { roots }: Surroundings,
  uri: string,
  definition: Definition,
  name: Name,
): Scope {
  const folder = folderOf(uri);
  const isIt = (one: Definition): boolean =>
    one.uri === definition.uri && one.firstLine === definition.firstLine;
  return {
    ...scope,
    find: (kind, folded) => {
      if (kind !== definition.kind) return scope.find(kind, folded);
      const others = (index.kinds.get(kind)?.byName.get(folded) ?? none).filter((one) => !isIt(one));
      const all = folded === name.folded ? [...others, { ...definition, name }] : others;
      return levelsOf(all, folder, rootOf(folder, roots));
    },
  };
}

/** Definitions of one name or kind in levels from near to far; only levels with a hit are listed. */
function levelsOf(definitions: readonly Definition[], folder: string, root: string): Levels {
  if (definitions.length <= 1) return definitions.length === 0 ? none : [definitions];
  const byLevel = new Map<number, Definition[]>();
  for (const definition of definitions) {
    const where = folderOf(definition.uri);
    const above = folder.startsWith(where) && where.length >= root.length;
    const level = above ? folder.length - where.length : Number.MAX_SAFE_INTEGER;
    const list = byLevel.get(level);
    if (list === undefined) byLevel.set(level, [definition]);
    else list.push(definition);
  }
  return [...byLevel.entries()].sort(([one], [other]) => one - other).map(([, list]) => list);
}

/** Nearest first, the same list for the same levels: as many formulas as ask for all names of a kind share it. */
function inOneList(levels: Levels): readonly Definition[] {
  if (levels.length <= 1) return levels[0] ?? none;
  let list = inOne.get(levels);
  if (list === undefined) {
    list = levels.flat();
    inOne.set(levels, list);
  }
  return list;
}

const inOne = new WeakMap<Levels, readonly Definition[]>();

function rootOf(folder: string, roots: readonly string[]): string {
  let best = '';
  for (const root of roots) if (folder.startsWith(root) && root.length > best.length) best = root;
  return best === '' ? folder : best;
}

const none: readonly never[] = [];
