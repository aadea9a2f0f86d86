import type { Message } from '../words/message.ts';

/** Where a number comes from: the file, a trial, a published source, or the practice of the trade. */
export type Provenance = 'given' | 'measured' | 'published' | 'common practice';

/**
 * A value with its provenance, or the reason why it is not known yet. The reason is a message, which is put into words
 * where it is shown; a room that still words its reasons itself has a text.
 */
export type Known<T, Reason extends Message | string = string> =
  | KnownValue<T>
  | { readonly known: false; readonly reason: Reason };

interface KnownValue<T> {
  readonly known: true;
  readonly value: T;
  readonly provenance: Provenance;
  readonly source?: string;
}

/** A known value; `source` names the publication or the fit it stands on. */
export function known<T>(value: T, provenance: Provenance, source?: string): KnownValue<T> {
  return source === undefined
    ? { known: true, value, provenance }
    : { known: true, value, provenance, source };
}

/** A value that is not known yet, with the reason to show the baker. */
export function unknown<Reason extends Message | string>(
  reason: Reason,
): { readonly known: false; readonly reason: Reason } {
  return { known: false, reason };
}
