import type { Block } from '../syntax/tree.ts';
import type { Span } from '../text/span.ts';

/** The words of a line without the blanks around them and the comment behind them. */
export function wordsOf(block: Block, line: number): Span {
  const tokens = block.lines[line]?.tokens.filter((token) => token.kind !== 'blank' && token.kind !== 'comment') ?? [];
  return { start: tokens[0]?.start ?? 0, end: tokens[tokens.length - 1]?.end ?? 0 };
}

/** A fraction as a percent the way a baker writes it: at most two places, no zeros behind. */
export function percent(fraction: number): string {
  const value = fraction * 100;
  const places = Math.abs(value) < 1 ? 2 : Math.abs(value) < 10 ? 2 : 1;
  return `${trimmed(value, places)}%`;
}

/** Grams up to a kilogram, then kilograms, in the figures a baker would say. */
export function mass(grams: number): string {
  const size = Math.abs(grams);
  if (size >= 1000) return `${trimmed(grams / 1000, 2)} kg`;
  return `${trimmed(grams, size < 10 ? 1 : 0)} g`;
}

/** A temperature to half a degree's worth of honesty: one place. */
export function degrees(celsius: number): string {
  return `${trimmed(celsius, 1)} °C`;
}

/** Minutes as a baker says them: whole from ten up, halves below. */
export function minutes(value: number): string {
  return `${value >= 10 ? Math.round(value) : Math.round(value * 2) / 2} min`;
}

export function trimmed(value: number, places: number): string {
  const text = value.toFixed(places);
  const plain = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return plain === '-0' ? '0' : plain;
}
