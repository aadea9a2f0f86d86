/**
 * An immutable map by text, of which many versions live side by side. A version is what many others are laid over, and the
 * little that it has of its own: the next one copies that little alone, and two of them tell quickly where they differ.
 */
export class Layered<V> {
  static readonly none: Layered<never> = new Layered<never>(
    new Map<string, never>(),
    new Map<string, never>(),
    0,
  );

  /** How many entries there are. */
  readonly size: number;
  readonly #base: ReadonlyMap<string, V>;
  /** What is other than in the base; undefined where an entry of it is removed. */
  readonly #own: ReadonlyMap<string, V | undefined>;

  private constructor(base: ReadonlyMap<string, V>, own: ReadonlyMap<string, V | undefined>, size: number) {
    this.#base = base;
    this.#own = own;
    this.size = size;
  }

  get(key: string): V | undefined {
    const own = this.#own.get(key);
    return own !== undefined || this.#own.has(key) ? own : this.#base.get(key);
  }

  *keys(): Iterable<string> {
    for (const [key] of this.entries()) yield key;
  }

  /** In the order in which they came, whatever was set anew since. */
  *entries(): Iterable<readonly [string, V]> {
    for (const [key, value] of this.#base) {
      const now = this.#own.has(key) ? this.#own.get(key) : value;
      if (now !== undefined) yield [key, now];
    }
    for (const [key, value] of this.#own) if (value !== undefined && !this.#base.has(key)) yield [key, value];
  }

  /** The map with some entries set, and those removed that are undefined; this very map where that changes nothing. */
  with(changes: Iterable<readonly [key: string, value: V | undefined]>): Layered<V> {
    let own: Map<string, V | undefined> | undefined;
    let { size } = this;
    for (const [key, value] of changes) {
      const before = own === undefined || own.has(key) ? (own ?? this).get(key) : this.#base.get(key);
      if (before === value) continue;
      own ??= new Map(this.#own);
      if (value !== undefined || this.#base.has(key)) own.set(key, value);
      else own.delete(key);
      size += (value === undefined ? 0 : 1) - (before === undefined ? 0 : 1);
    }
    if (own === undefined) return this;
    const laid = new Layered<V>(this.#base, own, size);
    // So the copies for many changes one by one cost their square root each, and so does what lies over the base.
    return own.size * own.size > this.#base.size + 1024
      ? new Layered(new Map(laid.entries()), new Map(), size)
      : laid;
  }

  /** The keys whose entries differ from those of another version. */
  *differing(other: Layered<V>): Iterable<string> {
    if (other === this) return;
    if (this.#base === other.#base) {
      for (const key of this.#own.keys()) if (this.get(key) !== other.get(key)) yield key;
      for (const key of other.#own.keys())
        if (!this.#own.has(key) && this.get(key) !== other.get(key)) yield key;
      return;
    }
    for (const [key, value] of this.entries()) if (other.get(key) !== value) yield key;
    for (const key of other.keys()) if (this.get(key) === undefined) yield key;
  }
}
