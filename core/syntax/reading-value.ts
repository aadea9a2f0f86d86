import type { Value } from './tree.ts';

/** What a line says was measured or seen of a dough; a temperature may be said of much else. */
export type ReadingValue = Extract<Value, { readonly form: 'reading' | 'temperature' | 'seen' }>;

export function isReadingValue(value: Value | undefined): value is ReadingValue {
  return value?.form === 'reading' || value?.form === 'temperature' || value?.form === 'seen';
}
