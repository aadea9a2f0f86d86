import type { Definition, DefinitionKind } from '../model/scope.ts';
import { PersistentMap } from './persistent-map.ts';
import type { FileText } from './snapshot.ts';

/** The definitions of one kind by folded name; a name that is not defined has no list. */
export interface KindIndex {
  /** Another whenever a definition of the kind comes, goes or changes; one that only moves is the same still. */
  readonly stamp: number;
  readonly byName: PersistentMap<readonly Definition[]>;
}

/** Who defines what among the texts of a workspace. */
export interface DefinitionIndex {
  readonly texts: PersistentMap<FileText>;
  /** Another whenever a definition of any kind comes, goes or changes. */
  readonly stamp: number;
  readonly kinds: ReadonlyMap<DefinitionKind, KindIndex>;
}

export const emptyIndex: DefinitionIndex = { texts: PersistentMap.none, stamp: 0, kinds: new Map() };

let stamps = 0;

/** The index of other texts, from one that is known: costs a look at the files that differ. */
export function indexFrom(
  before: DefinitionIndex,
  texts: PersistentMap<FileText>,
  definitionsOf: (file: FileText) => readonly Definition[],
): DefinitionIndex {
  if (before.texts === texts) return before;
  const changes = new IndexChanges(before);
  const definedBy = (file: FileText | undefined) => (file === undefined ? [] : definitionsOf(file));
  for (const uri of texts.differing(before.texts))
    changes.exchange(definedBy(before.texts.get(uri)), definedBy(texts.get(uri)));
  return changes.index(texts);
}

/** Every definition of a kind, by place. */
export function allOf(kind: KindIndex | undefined): readonly Definition[] {
  if (kind === undefined) return [];
  let all = sorted.get(kind.byName);
  if (all === undefined) {
    all = [...kind.byName.entries()].flatMap(([, list]) => list).sort(byPlace);
    sorted.set(kind.byName, all);
  }
  return all;
}

const sorted = new WeakMap<PersistentMap<readonly Definition[]>, readonly Definition[]>();

class IndexChanges {
  readonly #before: DefinitionIndex;
  readonly #lists = new Map<DefinitionKind, Map<string, readonly Definition[]>>();
  /** Kinds of which more than a place is another. */
  readonly #changed = new Set<DefinitionKind>();

  constructor(before: DefinitionIndex) {
    this.#before = before;
  }

  /** Puts new definitions of a file in the place of those it had. */
  exchange(held: readonly Definition[], made: readonly Definition[]): void {
    const isAligned =
      held.length === made.length &&
      made.every(({ kind, name }, index) => {
        const before = held[index]!;
        return before.kind === kind && before.name.folded === name.folded;
      });
    if (isAligned) {
      for (const [index, one] of made.entries()) if (one !== held[index]) this.#replace(held[index], one);
      return;
    }
    // Definitions of one name are held in the order of their lines, so all of the file go and come.
    for (const one of held) this.#replace(one, undefined);
    for (const one of made) this.#replace(undefined, one);
  }

  index(texts: PersistentMap<FileText>): DefinitionIndex {
    const kinds = new Map(this.#before.kinds);
    for (const [kind, lists] of this.#lists) {
      const before = kinds.get(kind) ?? { stamp: 0, byName: PersistentMap.none };
      kinds.set(kind, {
        stamp: this.#changed.has(kind) ? ++stamps : before.stamp,
        byName: before.byName.with(
          [...lists].map(([name, list]) => [name, list.length === 0 ? undefined : list]),
        ),
      });
    }
    return { texts, stamp: this.#changed.size > 0 ? ++stamps : this.#before.stamp, kinds };
  }

  #replace(before: Definition | undefined, after: Definition | undefined): void {
    this.#replaceIn((before ?? after)!.kind, before, after);
    if (before?.tried || after?.tried)
      this.#replaceIn('tried', before?.tried ? before : undefined, after?.tried ? after : undefined);
  }

  #replaceIn(kind: DefinitionKind, before: Definition | undefined, after: Definition | undefined): void {
    const { folded } = (before ?? after)!.name;
    const lists = this.#lists.get(kind) ?? new Map<string, readonly Definition[]>();
    this.#lists.set(kind, lists);
    if (before === undefined || after === undefined || before.block !== after.block) this.#changed.add(kind);
    const list = lists.get(folded) ?? this.#before.kinds.get(kind)?.byName.get(folded) ?? [];
    lists.set(folded, inPlace(list, before, after));
  }
}

/** The definitions of one name with one of them gone, come or exchanged, in an order that no order of reading changes. */
function inPlace(
  list: readonly Definition[],
  before: Definition | undefined,
  after: Definition | undefined,
): readonly Definition[] {
  const come = after === undefined ? [] : [after];
  if (before !== undefined) return list.flatMap((one) => (one === before ? come : [one]));
  const at = list.findLastIndex((one) => byPlace(one, after!) < 0) + 1;
  return [...list.slice(0, at), ...come, ...list.slice(at)];
}

function byPlace(one: Definition, other: Definition): number {
  if (one.uri !== other.uri) return one.uri < other.uri ? -1 : 1;
  return one.firstLine - other.firstLine;
}
