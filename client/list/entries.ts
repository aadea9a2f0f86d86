import type { OverviewEntry, OverviewKind } from '../../server/protocol.ts';

/** What the list groups by, in the order in which it stands. */
export const groupKinds: readonly OverviewKind[] = [
  'bakery',
  'formula',
  'flour',
  'mixer',
  'plan',
  'experiment',
];

const byName = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' });

/** The entries by name, as a baker looks for one: in which order files are read or opened moves none of them. */
export function sorted(entries: readonly OverviewEntry[]): readonly OverviewEntry[] {
  return entries.toSorted((one, other) => byName.compare(one.name, other.name));
}

/** The entries that hold every word typed, in their name, kind, details or file; all of them where none is typed. */
export function matching(entries: readonly OverviewEntry[], typed: string): readonly OverviewEntry[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return entries;
  return entries.filter(({ name, kind, detail, uri }) => {
    const text = `${name} ${kind} ${detail} ${fileName(uri)}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
}

/** The last part of a URI's path, as a person would read it. */
export function fileName(uri: string): string {
  const last = uri.slice(uri.lastIndexOf('/') + 1);
  try {
    return decodeURIComponent(last);
  } catch {
    return last;
  }
}
