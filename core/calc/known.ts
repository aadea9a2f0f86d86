import type { Message } from '../words/message.ts';

/** Where a number comes from: the file, a trial, a published source, or the practice of the trade. */
export type Provenance = 'given' | 'measured' | 'published' | 'common practice';

/** A value with its provenance, or the reason why it is not known yet: a message, which is put into words where it is shown. */
export type Known<T, Reason extends Message | string = Message> =
  | KnownValue<T>
  | { readonly known: false; readonly reason: Reason };

interface KnownValue<T> {
  readonly known: true;
  readonly value: T;
  readonly provenance: Provenance;
}

/** A known value, with where it comes from. */
export function known<T>(value: T, provenance: Provenance): KnownValue<T> {
  return { known: true, value, provenance };
}

/** A value that is not known yet, with the reason to show the baker. */
export function unknown<Reason extends Message | string>(
  reason: Reason,
): { readonly known: false; readonly reason: Reason } {
  return { known: false, reason };
}
