/*
 * What a list, a map or a match is known to have. Each of these throws a RangeError where it has it not: that is a fault of the
 * program, never of a text, and nothing computes on with a figure that is not there.
 */

/** The element at an index from 0. For a text it is the UTF-16 unit there. */
export function elementAt<T>(list: ArrayLike<T | undefined>, index: number): T {
  const element = list[index];
  if (element === undefined) throw missing(`element ${index} of ${list.length}`);
  return element;
}

/**
 * The same for rows of numbers: apart, so that the engine keeps it quick. The four innermost loops of a solved formula (`addMass`, `weigh`,
 * `perGramOf`, `subtractMultiple`) do without it all the same, for it costs them a fifth.
 */
export function figureAt(row: readonly number[], index: number): number {
  const figure = row[index];
  if (figure === undefined) throw missing(`figure ${index} of ${row.length}`);
  return figure;
}

/** The first element of a list that is not empty. */
export function firstOf<T>(list: ArrayLike<T | undefined>): T {
  return elementAt(list, 0);
}

/** The last element of a list that is not empty. */
export function lastOf<T>(list: ArrayLike<T | undefined>): T {
  return elementAt(list, list.length - 1);
}

/** What a map holds under a key that it has. */
export function entryOf<K, V>(map: { get(key: K): V | undefined }, key: K): V {
  const entry = map.get(key);
  if (entry === undefined) throw missing(`entry for ${typeof key === 'object' ? 'an object' : String(key)}`);
  return entry;
}

/** What a group of a pattern matched, counted from 1; 0 is the whole. The group must be one that takes part in every match. */
export function groupOf(match: ArrayLike<string | undefined>, group: number): string {
  const text = match[group];
  if (text === undefined) throw missing(`group ${group} of a match`);
  return text;
}

function missing(what: string): RangeError {
  return new RangeError(`There is no ${what}.`);
}
