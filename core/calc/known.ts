/** Where a number comes from: the file, a trial, a published source, or the practice of the trade. */
export type Provenance = 'given' | 'measured' | 'published' | 'common practice';

/** A value with its provenance, or the reason, in a baker's words, why it is not known yet. */
export type Known<T> =
  | { readonly known: true; readonly value: T; readonly provenance: Provenance; readonly source?: string }
  | { readonly known: false; readonly reason: string };

/** A known value; `source` names the publication or the fit it stands on. */
export function known<T>(value: T, provenance: Provenance, source?: string): Known<T> {
  return source === undefined
    ? { known: true, value, provenance }
    : { known: true, value, provenance, source };
}

/** A value that cannot be told yet, with the reason to show the baker. */
export function unknown(reason: string): { readonly known: false; readonly reason: string } {
  return { known: false, reason };
}
