import type { Measure } from './units.ts';

/** The least and the most that a bakery can mean by a quantity, in the base unit of its measure, both included. */
export interface Limit {
  readonly least: number;
  readonly most: number;
  /** Both as the notation writes them; the least where it is more than the other one with a minus sign. */
  readonly told: ToldLimit;
}

/** A limit in the notation. */
export interface ToldLimit {
  readonly least?: string;
  readonly most: string;
}

const upTo = (most: number, told: string): Limit => ({ least: -most, most, told: { most: told } });

/**
 * What lies beyond is a slip of the keyboard: it is told on its number, and nothing is worked out from it. Wide on purpose, so
 * that no real bakery meets them. Signs and shares have their own findings.
 */
export const limits: Readonly<Record<Measure, Limit>> = {
  mass: upTo(1e8, '100 tonnes'),
  volume: upTo(1e8, '100000 l'),
  duration: upTo(90 * 86_400, '90 days'),
  temperature: { least: -90, most: 600, told: { least: '-90 °C', most: '600 °C' } },
  turns: upTo(100_000, '100000 rpm'),
  fraction: upTo(1000, '100000%'),
  count: upTo(100_000, '100000 pieces'),
  times: upTo(100_000, '100000 times'),
  energy: upTo(100_000, '100000 kJ'),
  warming: upTo(1000, '1000 °C/min'),
  density: upTo(1000, '1000 g/ml'),
};

/** The price limit, in any currency. */
export const mostMoney = upTo(1e12, '1000000000000');
