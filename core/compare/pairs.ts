import { groupBy } from './group.ts';

interface Portrayed {
  readonly file: string;
  readonly folded: string;
  /** What must agree besides the name. */
  readonly kind?: string;
  readonly keys: readonly string[];
}

/**
 * How what has another name is looked for: by lines that are the very same but for a price and notes, and no others have them; by those that are alike; or
 * also where there is one on either side.
 */
export type Renames = 'same' | 'alike' | 'one';

export type Paired<T> = readonly [before: T | undefined, after: T | undefined];

/** Less than half alike is another formula, not a renamed one. */
const alike = 0.5;
/** Beyond so many candidates only those that agree in every line are taken for renamed. */
const mostCandidates = 250_000;

/**
 * Which of the old is which of the new: by file and name; by name in another file; then, where renaming is looked for,
 * by what is written in them, the most alike first. The order is that of the new ones, then of those that are gone.
 */
export function pair<T extends Portrayed>(
  before: readonly T[],
  after: readonly T[],
  renames: Renames,
): Paired<T>[] {
  const partners = new Map<T, T>();
  const left = new Set(before);
  const match = (keyOf: (one: T) => string): void => {
    const waiting = groupBy(left, keyOf);
    for (const one of after) {
      if (partners.has(one)) continue;
      const partner = waiting.get(keyOf(one))?.shift();
      if (partner === undefined) continue;
      partners.set(one, partner);
      left.delete(partner);
    }
  };
  match(({ kind, file, folded }) => JSON.stringify([kind, file, folded]));
  match(({ kind, folded }) => JSON.stringify([kind, folded]));
  if (renames === 'same') {
    for (const linesIn of [({ keys }: T) => keys.slice(1), whatItIs]) {
      if (left.size === 0) break;
      const lines = (one: T): string => JSON.stringify([one.kind, linesIn(one)]);
      const [gone, come] = [
        groupBy(left, lines),
        groupBy(
          after.filter((one) => !partners.has(one)),
          lines,
        ),
      ];
      // A flour of which nothing is said may be any other.
      match((one) =>
        linesIn(one).length > 0 && gone.get(lines(one))?.length === 1 && come.get(lines(one))?.length === 1
          ? lines(one)
          : JSON.stringify([one.kind, one.file, one.folded]),
      );
    }
  } else if (left.size > 0) {
    match(({ keys }) => keys.slice(1).join('\n'));
    const open = after.filter((one) => !partners.has(one));
    // Whoever compares one formula with one formula wants these two compared, however unlike they are.
    const isOne = renames === 'one' && before.length === 1 && after.length === 1;
    if (isOne && open.length === 1) return [[before[0], after[0]]];
    if (open.length * left.size <= mostCandidates) {
      const candidates = open
        .flatMap((one) => [...left].map((old) => ({ one, old, likeness: likeness(old.keys, one.keys) })))
        .filter((candidate) => candidate.likeness >= alike)
        .sort((some, other) => other.likeness - some.likeness);
      for (const { one, old } of candidates) {
        if (partners.has(one) || !left.has(old)) continue;
        partners.set(one, old);
        left.delete(old);
      }
    }
  }
  return [
    ...after.map((one): Paired<T> => [partners.get(one), one]),
    ...[...left].map((one): Paired<T> => [one, undefined]),
  ];
}

/** The lines but for what it costs and what is noted of it; none where no figure is among them, for so little holds for many. */
function whatItIs({ keys }: Portrayed): readonly string[] {
  const lines = keys.slice(1).filter((key) => !/^(?:price|note)(?: |$)/.test(key));
  return lines.some((key) => key.includes('{')) ? lines : [];
}

/** The share of lines that two have in common, their headers not counted: 0 to 1. */
function likeness(some: readonly string[], others: readonly string[]): number {
  if (some.length < 2 || others.length < 2) return 0;
  const counts = new Map<string, number>();
  for (const key of some.slice(1)) counts.set(key, (counts.get(key) ?? 0) + 1);
  let common = 0;
  for (const key of others.slice(1)) {
    const count = counts.get(key) ?? 0;
    if (count > 0) common++;
    counts.set(key, count - 1);
  }
  return (2 * common) / (some.length + others.length - 2);
}
