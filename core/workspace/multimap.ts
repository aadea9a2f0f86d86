/** Sets of values by key. Most keys have one value, which then costs no set. */
export class Multimap<K, V extends string | object> {
  readonly #byKey = new Map<K, V | Values<V>>();

  /** Whether the value is new to its key. */
  add(key: K, value: V): boolean {
    const held = this.#byKey.get(key);
    if (held === undefined) this.#byKey.set(key, value);
    else if (held instanceof Values) {
      if (held.all.has(value)) return false;
      held.all.add(value);
    } else if (held === value) return false;
    else this.#byKey.set(key, new Values(new Set([held, value])));
    return true;
  }

  delete(key: K, value: V): void {
    const held = this.#byKey.get(key);
    if (held instanceof Values) {
      held.all.delete(value);
      if (held.all.size > 0) return;
    } else if (held !== value) return;
    this.#byKey.delete(key);
  }

  /** The values of a key in the order in which they came. */
  get(key: K): Iterable<V> {
    const held = this.#byKey.get(key);
    return held === undefined ? [] : held instanceof Values ? held.all : [held];
  }

  keys(): Iterable<K> {
    return this.#byKey.keys();
  }
}

/** So told apart from a value that is a set itself. */
class Values<V> {
  readonly all: Set<V>;

  constructor(all: Set<V>) {
    this.all = all;
  }
}
