import type { Definition } from '../model/scope.ts';

/** The definitions of one name with one of them gone, come or exchanged, in an order that no order of reading changes. */
export function inPlace(
  list: readonly Definition[],
  before: Definition | undefined,
  after: Definition | undefined,
): readonly Definition[] {
  const come = after === undefined ? [] : [after];
  if (before !== undefined) return list.flatMap((one) => (one === before ? come : [one]));
  const at = list.findLastIndex((one) => byPlace(one, after!) < 0) + 1;
  return [...list.slice(0, at), ...come, ...list.slice(at)];
}

export function byPlace(one: Definition, other: Definition): number {
  if (one.uri !== other.uri) return one.uri < other.uri ? -1 : 1;
  return one.firstLine - other.firstLine;
}
