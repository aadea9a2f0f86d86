import type { DefinitionKind, Scope } from '../model/scope.ts';
import { Multimap } from './multimap.ts';

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
  readonly #byName = new Map<DefinitionKind, Multimap<string, Dependent>>();
  readonly #byKind = new Map<DefinitionKind, Multimap<WholeKind, Dependent>>();
  /** One object for each, however many names it has looked up. */
  readonly #all = new Map<string, Dependent>();
  #size = 0;

  /** How many notes there are. */
  get size(): number {
    return this.#size;
  }

  clear(): void {
    this.#byName.clear();
    this.#byKind.clear();
    this.#all.clear();
    this.#size = 0;
  }

  note(kind: DefinitionKind, folded: string, dependent: Dependent): void {
    this.#add(this.#byName, kind, folded, dependent);
  }

  noteKind(kind: DefinitionKind, whole: WholeKind, dependent: Dependent): void {
    this.#add(this.#byKind, kind, whole, dependent);
  }

  /** The files whose look-ups of a name find another definition now than before. */
  *ofName(kind: DefinitionKind, folded: string, before: Scope, now: Scope): Iterable<string> {
    for (const { uri, from } of this.#byName.get(kind)?.get(folded) ?? []) {
      if (!sameLevels(before.from(from).find(kind, folded), now.from(from).find(kind, folded))) yield uri;
    }
  }

  /** The files whose look-ups of the nearest or all of a kind find others now than before. */
  *ofKind(kind: DefinitionKind, before: Scope, now: Scope): Iterable<string> {
    const whole = this.#byKind.get(kind);
    for (const { uri, from } of whole?.get('nearest') ?? []) {
      if (before.from(from).nearest(kind)?.block !== now.from(from).nearest(kind)?.block) yield uri;
    }
    for (const { uri, from } of whole?.get('names') ?? []) {
      if (!sameBlocks(before.from(from).names(kind), now.from(from).names(kind))) yield uri;
    }
  }

  #add<K extends string>(
    to: Map<DefinitionKind, Multimap<K, Dependent>>,
    kind: DefinitionKind,
    key: K,
    { uri, from }: Dependent,
  ): void {
    let ofKind = to.get(kind);
    if (ofKind === undefined) {
      ofKind = new Multimap();
      to.set(kind, ofKind);
    }
    const name = from === uri ? uri : `${uri}\n${from}`;
    let dependent = this.#all.get(name);
    if (dependent === undefined) {
      dependent = { uri, from };
      this.#all.set(name, dependent);
    }
    if (ofKind.add(key, dependent)) this.#size++;
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
