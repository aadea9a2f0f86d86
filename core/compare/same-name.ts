import { elementAt } from '../text/element.ts';

/**
 * Which of several of one name, such as trials of one day, each one was before, told by its lines: the most alike first, where none
 * other is as much alike. What is left is taken in its order where there are as many before as after; else it may be any, and is none.
 */
export function formerOnes<T>(
  before: readonly T[],
  after: readonly T[],
  linesOf: (one: T) => readonly string[],
): Map<T, T> {
  const partners = new Map<T, T>();
  const [left, open] = [new Set(before), new Set(after)];
  const pair = (was: T, is: T): void => {
    partners.set(is, was);
    left.delete(was);
    open.delete(is);
  };
  const isSame = (one: T, other: T): boolean => likeness(linesOf(one), linesOf(other)) === 1;
  const candidates = mostAlikeFirst(before, after, linesOf).filter(({ alike }) => alike > 0);
  for (const { one: was, other: is, alike } of candidates) {
    if (!left.has(was) || !open.has(is)) continue;
    const isDoubted = candidates.some(
      (rival) =>
        rival.alike === alike &&
        ((rival.one === was && open.has(rival.other) && !isSame(rival.other, is)) ||
          (rival.other === is && left.has(rival.one) && !isSame(rival.one, was))),
    );
    if (!isDoubted) pair(was, is);
  }
  if (left.size === open.size) {
    const rest = [...open];
    [...left].forEach((was, at) => {
      pair(was, elementAt(rest, at));
    });
  }
  return partners;
}

/** Every pair of the two, by the share of lines that they have in common: 0 to 1. */
export function mostAlikeFirst<T>(
  some: readonly T[],
  others: readonly T[],
  linesOf: (one: T) => readonly string[],
): { readonly one: T; readonly other: T; readonly alike: number }[] {
  return some
    .flatMap((one) => others.map((other) => ({ one, other, alike: likeness(linesOf(one), linesOf(other)) })))
    .sort((pair, next) => next.alike - pair.alike);
}

/** The part of the lines that two have in common: 0 to 1; of two without a line it is 1. */
export function likeness(some: readonly string[], others: readonly string[]): number {
  const all = some.length + others.length;
  if (all === 0) return 1;
  const left = [...others];
  let common = 0;
  for (const one of some) {
    const at = left.indexOf(one);
    if (at < 0) continue;
    left.splice(at, 1);
    common++;
  }
  return (2 * common) / all;
}
