import type { MutantResult } from '@stryker-mutator/api/core';

/** A mutant that is the same program, by what stands there, for lines move. */
export interface Equivalent {
  readonly file: string;
  /** The line on which it begins, without the blanks around it. */
  readonly line: string;
  /** What it changes, as it stands there. */
  readonly was: string;
  readonly becomes: string;
  readonly why: string;
}

/** Whether a mutant is named in the list of those that no test can tell from the program. */
export function isEquivalent(
  { location: { start, end }, replacement }: Pick<MutantResult, 'location' | 'replacement'>,
  text: string,
  file: string,
  named: readonly Equivalent[],
): boolean {
  const lines = text.split('\n').slice(start.line - 1, end.line);
  const first = lines[0]?.trim();
  const cut = [...lines];
  cut[cut.length - 1] = (cut.at(-1) ?? '').slice(0, end.column - 1);
  cut[0] = (cut[0] ?? '').slice(start.column - 1);
  const was = cut.join('\n');
  return named.some(
    (one) => one.file === file && one.line === first && one.was === was && one.becomes === replacement,
  );
}

/**
 * The share that was noticed, and between which shares that of all mutants lies with 95 % where these are a random sample: the score
 * interval of Wilson (J. Am. Stat. Assoc. 22, 1927), from memory.
 */
export function scoreOf(noticed: number, survived: number): { fraction: number; low: number; high: number } {
  const count = noticed + survived;
  if (count === 0) return { fraction: Number.NaN, low: 0, high: 1 };
  const z = 1.959964;
  const fraction = noticed / count;
  const middle = fraction + z ** 2 / (2 * count);
  const spread = z * Math.sqrt((fraction * (1 - fraction)) / count + z ** 2 / (4 * count ** 2));
  const whole = 1 + z ** 2 / count;
  return { fraction, low: (middle - spread) / whole, high: (middle + spread) / whole };
}
