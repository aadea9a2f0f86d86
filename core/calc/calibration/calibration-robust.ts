import { thermometerCelsius } from '../heat/thermometer.ts';

/**
 * A miss up to this counts by its square, °C, and beyond it only in proportion: Huber’s loss, at 1.345 of what a thermometer in
 * dough is good for, where it is 95 % as sharp as least squares on readings without a slip (Huber 1964; the factor from memory).
 */
const squaredUpTo = 1.345 * thermometerCelsius;

/** What a reading that is missed by so much, °C, weighs in the fit, 0 to 1. */
export function readingWeight(missCelsius: number): number {
  const miss = Math.abs(missCelsius);
  return miss > squaredUpTo ? squaredUpTo / miss : 1;
}

/** A fit misses this reading by so much that it hardly counted in it: from twice the bound on. */
export function isSetAside(missCelsius: number): boolean {
  return Math.abs(missCelsius) > 2 * squaredUpTo;
}

/** By how much readings are missed on the whole, °C: the root of the mean of Huber’s loss, that of the squares where none is odd. */
export function robustSpread(misses: readonly number[]): number {
  const sum = misses.reduce((all, miss) => {
    const size = Math.abs(miss);
    return all + (size > squaredUpTo ? squaredUpTo * (2 * size - squaredUpTo) : size * size);
  }, 0);
  return Math.sqrt(sum / Math.max(1, misses.length));
}
