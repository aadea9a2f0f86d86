/** The first value that is wanted; undefined where none is. */
export function firstOf<T>(values: Iterable<T>, wanted: (value: T) => boolean): T | undefined {
  for (const value of values) if (wanted(value)) return value;
  return undefined;
}
