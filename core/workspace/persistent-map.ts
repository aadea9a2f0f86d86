/** So many children a node of the tree has at most: two to the power of `bits`. */
const bits = 5;
const width = 1 << bits;
/** Below so many places a table is not worth making anew, however many of them are empty. */
const fewPlaces = 256;

/** A node holds nodes, or on the lowest level values; undefined where there is none. */
type Node = readonly unknown[];

/** Where keys stand in the tree; one table for all versions that came of one another, to which keys are only added. */
interface Places {
  readonly byKey: Map<string, number>;
  readonly keys: string[];
}

/**
 * An immutable map by text, of which many versions live side by side. Its values stand in a flat tree in the order in which
 * their keys came. The next version shares all nodes but those on the way to what is other in it, so it costs the
 * same however many entries there are, and two versions tell where they differ by the nodes that they do not share.
 */
export class PersistentMap<V> {
  static readonly none: PersistentMap<never> = new PersistentMap<never>(
    { byKey: new Map(), keys: [] },
    [],
    0,
    0,
  );

  /** How many entries there are. */
  readonly size: number;
  readonly #places: Places;
  readonly #root: Node;
  /** How many levels of nodes lie above the values, less one. */
  readonly #depth: number;

  private constructor(places: Places, root: Node, depth: number, size: number) {
    this.#places = places;
    this.#root = root;
    this.#depth = depth;
    this.size = size;
  }

  get(key: string): V | undefined {
    const place = this.#places.byKey.get(key);
    return place === undefined || place >= capacity(this.#depth)
      ? undefined
      : (valueAt(this.#root, this.#depth, place) as V | undefined);
  }

  *keys(): Iterable<string> {
    for (const [key] of this.entries()) yield key;
  }

  /** In the order in which their keys came first. */
  *entries(): Iterable<readonly [string, V]> {
    for (const [place, value] of valuesIn(this.#root, this.#depth, 0))
      yield [this.#places.keys[place] ?? '', value as V];
  }

  /** The map with some entries set, and those removed that are undefined; this very map where that changes nothing. */
  with(changes: Iterable<readonly [key: string, value: V | undefined]>): PersistentMap<V> {
    // A table of its own for each map that begins with nothing.
    const places = this.size === 0 ? { byKey: new Map<string, number>(), keys: [] } : this.#places;
    let [root, depth, size] = this.size === 0 ? [[] as Node, 0, 0] : [this.#root, this.#depth, this.size];
    const own = new Set<Node>();
    for (const [key, value] of changes) {
      let place = places.byKey.get(key);
      if (place === undefined) {
        if (value === undefined) continue;
        place = places.keys.push(key) - 1;
        places.byKey.set(key, place);
      }
      const before = place < capacity(depth) ? valueAt(root, depth, place) : undefined;
      if (before === value) continue;
      for (; place >= capacity(depth); depth++) root = owned([root], own);
      root = withValue(root, depth, place, value, own);
      size += (value === undefined ? 0 : 1) - (before === undefined ? 0 : 1);
    }
    if (root === this.#root || (size === 0 && this.size === 0)) return this;
    const made = new PersistentMap<V>(places, root, depth, size);
    // Keys that are there no more, half-typed names say, would fill the table for good.
    return places.keys.length > Math.max(fewPlaces, 2 * size)
      ? (PersistentMap.none as PersistentMap<V>).with([...made.entries()])
      : made;
  }

  /** The keys whose entries differ from those of another version. */
  *differing(other: PersistentMap<V>): Iterable<string> {
    if (other === this) return;
    if (this.#places === other.#places) {
      const depth = Math.max(this.#depth, other.#depth);
      const [some, others] = [
        lifted(this.#root, this.#depth, depth),
        lifted(other.#root, other.#depth, depth),
      ];
      for (const place of differingIn(some, others, depth, 0)) yield this.#places.keys[place] ?? '';
      return;
    }
    for (const [key, value] of this.entries()) if (other.get(key) !== value) yield key;
    for (const key of other.keys()) if (this.get(key) === undefined) yield key;
  }
}

/** How many values a tree of a depth has room for. */
function capacity(depth: number): number {
  return 2 ** (bits * (depth + 1));
}

function valueAt(root: Node, depth: number, place: number): unknown {
  let node: Node | undefined = root;
  for (let level = depth; level > 0; level--)
    node = node?.[(place >>> (bits * level)) & (width - 1)] as Node | undefined;
  return node?.[place & (width - 1)];
}

/** A node with a value set below it; nodes that are `own`, made in the same change, are changed where they stand. */
function withValue(
  node: Node | undefined,
  level: number,
  place: number,
  value: unknown,
  own: Set<Node>,
): Node {
  const made = node !== undefined && own.has(node) ? (node as unknown[]) : owned([...(node ?? [])], own);
  const at = (place >>> (bits * level)) & (width - 1);
  // An array with holes is slow to read.
  while (made.length < at) made.push(undefined);
  made[at] = level === 0 ? value : withValue(made[at] as Node | undefined, level - 1, place, value, own);
  return made;
}

function owned(node: unknown[], own: Set<Node>): unknown[] {
  own.add(node);
  return node;
}

function* valuesIn(node: Node, level: number, first: number): Iterable<readonly [number, unknown]> {
  for (const [at, child] of node.entries()) {
    if (child === undefined) continue;
    const place = first + at * width ** level;
    if (level === 0) yield [place, child];
    else yield* valuesIn(child as Node, level - 1, place);
  }
}

/** A tree as one that is deeper. */
function lifted(root: Node, depth: number, wanted: number): Node {
  let node = root;
  for (let level = depth; level < wanted; level++) node = [node];
  return node;
}

function* differingIn(some: Node, others: Node, level: number, first: number): Iterable<number> {
  if (some === others) return;
  for (let at = 0; at < Math.max(some.length, others.length); at++) {
    const [one, other] = [some[at], others[at]];
    if (one === other) continue;
    const place = first + at * width ** level;
    if (level === 0) yield place;
    else yield* differingIn((one ?? []) as Node, (other ?? []) as Node, level - 1, place);
  }
}
