import type { DefinitionKind } from '../model/scope.ts';

/**
 * Which files have looked up which name, so that a change of one definition need not ask every file of the workspace. Files
 * that no longer do so may still be listed.
 */
export class Lookers {
  private readonly byName = new Map<DefinitionKind, Map<string, Set<string>>>();
  /** Those that asked for all names of a kind, or for the nearest of it, whatever its name. */
  private readonly anyName = new Map<DefinitionKind, Set<string>>();
  /** How many entries there are. */
  size = 0;

  note(kind: DefinitionKind, folded: string | undefined, uri: string): void {
    const uris = folded === undefined ? made(this.anyName, kind, newSet) : this.named(kind, folded);
    const before = uris.size;
    uris.add(uri);
    this.size += uris.size - before;
  }

  *of(kind: DefinitionKind, folded: string): Iterable<string> {
    yield* this.byName.get(kind)?.get(folded) ?? [];
    yield* this.anyName.get(kind) ?? [];
  }

  private named(kind: DefinitionKind, folded: string): Set<string> {
    return made(made(this.byName, kind, newMap), folded, newSet);
  }
}

const newSet = (): Set<string> => new Set();
const newMap = (): Map<string, Set<string>> => new Map();

function made<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let value = map.get(key);
  if (value === undefined) {
    value = make();
    map.set(key, value);
  }
  return value;
}
