/** The properties that are known: those undefined, or numbers that are not finite, are left out. */
export function onlyKnown<T extends object>(properties: T): OnlyKnown<T> {
  const result: Record<string, unknown> = {};
  for (const name in properties) {
    const value = properties[name];
    if (value === undefined || (typeof value === 'number' && !Number.isFinite(value))) continue;
    result[name] = value === 0 ? 0 : value;
  }
  return result as OnlyKnown<T>;
}

type OnlyKnown<T> = { [Name in keyof T]?: Exclude<T[Name], undefined> };
