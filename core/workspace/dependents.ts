import type { DefinitionKind, Scope } from '../model/scope.ts';

/** A file whose answers hang on a name, and from where it was looked up. */
export interface Dependent {
  readonly uri: string;
  /** A file of the folder that the name was looked up from. */
  readonly from: string;
}

/** How names of a kind were looked up besides by one name: the nearest of them, or all. */
export type WholeKind = 'nearest' | 'names';

/**
 * Which files have looked up which name, so that a change of one definition need not ask every file of the workspace. Files
 * that no longer do so may still be listed.
 */
export class Dependents {
  readonly #byName = new Map<DefinitionKind, Map<string, Map<string, Dependent>>>();
  readonly #byKind = new Map<DefinitionKind, Map<WholeKind, Map<string, Dependent>>>();
  #size = 0;

  /** How many notes there are. */
  get size(): number {
    return this.#size;
  }

  clear(): void {
    this.#byName.clear();
    this.#byKind.clear();
    this.#size = 0;
  }

  note(kind: DefinitionKind, folded: string, dependent: Dependent): void {
    this.#add(made(made(this.#byName, kind), folded), dependent);
  }

  noteKind(kind: DefinitionKind, whole: WholeKind, dependent: Dependent): void {
    this.#add(made(made(this.#byKind, kind), whole), dependent);
  }

  /** The files whose look-ups of a name find another definition now than before. */
  *ofName(kind: DefinitionKind, folded: string, before: Scope, now: Scope): Iterable<string> {
    for (const { uri, from } of this.#byName.get(kind)?.get(folded)?.values() ?? []) {
      if (!sameLevels(before.from(from).find(kind, folded), now.from(from).find(kind, folded))) yield uri;
    }
  }

  /** The files whose look-ups of the nearest or all of a kind find others now than before. */
  *ofKind(kind: DefinitionKind, before: Scope, now: Scope): Iterable<string> {
    const whole = this.#byKind.get(kind);
    for (const { uri, from } of whole?.get('nearest')?.values() ?? []) {
      if (before.from(from).nearest(kind)?.block !== now.from(from).nearest(kind)?.block) yield uri;
    }
    for (const { uri, from } of whole?.get('names')?.values() ?? []) {
      if (!sameBlocks(before.from(from).names(kind), now.from(from).names(kind))) yield uri;
    }
  }

  #add(to: Map<string, Dependent>, { uri, from }: Dependent): void {
    const key = from === uri ? uri : `${uri}\n${from}`;
    if (to.has(key)) return;
    to.set(key, { uri, from });
    this.#size++;
  }
}

type Found = ReturnType<Scope['names']>;

/** Whether the same blocks were found: a definition that only moved is another object of the same block. */
export function sameBlocks(some: Found, others: Found): boolean {
  return (
    some === others ||
    (some.length === others.length && some.every((one, index) => one.block === others[index]!.block))
  );
}

export function sameLevels(some: readonly Found[], others: readonly Found[]): boolean {
  return (
    some === others ||
    (some.length === others.length && some.every((level, index) => sameBlocks(level, others[index]!)))
  );
}

function made<K, L, V>(map: Map<K, Map<L, V>>, key: K): Map<L, V> {
  let value = map.get(key);
  if (value === undefined) {
    value = new Map();
    map.set(key, value);
  }
  return value;
}
