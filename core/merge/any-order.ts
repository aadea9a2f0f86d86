import { elementAt } from '../text/element.ts';
import type { Piece } from './merged-lines.ts';

/**
 * Merges what is told apart by its id alone. The order is that of the side that changed it, ours where both did; what the
 * other side adds stands behind what it stood behind there.
 */
export function mergeInAnyOrder<T extends { readonly id: string }>(
  base: readonly T[],
  ours: readonly T[],
  theirs: readonly T[],
  merge: (base: T | undefined, ours: T | undefined, theirs: T | undefined) => Piece[],
): Piece[] {
  const [root, one, other] = [base, ours, theirs].map(
    (units) => new Map(units.map((unit) => [unit.id, unit])),
  ) as [Map<string, T>, Map<string, T>, Map<string, T>];
  const isMovedIn = (side: Map<string, T>): boolean => {
    const kept = [...root.keys()].filter((id) => side.has(id));
    const now = [...side.keys()].filter((id) => root.has(id));
    return kept.some((id, at) => id !== now[at]);
  };
  const [spine, added] = isMovedIn(other) && !isMovedIn(one) ? [other, one] : [one, other];
  const order = [...spine.keys()];
  const keys = [...added.keys()];
  for (const [at, id] of keys.entries()) {
    if (spine.has(id)) continue;
    // What the spine itself adds at the same place stands first.
    let place = placeBehind(order, keys.slice(0, at));
    while (place < order.length && !root.has(elementAt(order, place)) && !added.has(elementAt(order, place)))
      place++;
    order.splice(place, 0, id);
  }
  return order.flatMap((id) => merge(root.get(id), one.get(id), other.get(id)));
}

/** Behind the nearest of what stands before, as far as that is there; else at the start. */
function placeBehind(order: readonly string[], before: readonly string[]): number {
  for (const id of before.toReversed()) {
    const at = order.indexOf(id);
    if (at >= 0) return at + 1;
  }
  return 0;
}
