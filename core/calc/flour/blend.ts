import { type Coefficients, type Constraint, solve } from 'yalps';
import { figureAt } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import { type Known, known, unknown } from '../known.ts';
import { type FlourData, moistureOf, proteinAt14 as proteinOf } from './flour.ts';
import { ashOfDry, dryAt14 } from './flour-mix.ts';

/** A flour that may go into a blend. */
export interface BlendFlour {
  readonly name: string;
  readonly flour: FlourData;
  /** Money per kilogram, all in one currency; needed where the cheapest is wanted. */
  readonly pricePerKilogram?: number;
  /** Its share now, 0 to 1; needed where the nearest is wanted. */
  readonly share?: number;
  /** Least and most share it may have. */
  readonly least?: number;
  readonly most?: number;
}

/** What the blend shall be: fractions at 14 % moisture and of the dry matter. */
export interface BlendTarget {
  readonly proteinAt14?: number;
  readonly mostAshOfDry?: number;
  readonly goal: 'cheapest' | 'nearest';
}

export interface Blend {
  /** Shares of the flour as it is weighed, in the order asked; they sum to 1. */
  readonly shares: readonly number[];
  readonly proteinAt14?: number;
  readonly ashOfDry?: number;
  /** Money per kilogram of the blend; absent where a price is. */
  readonly pricePerKilogram?: number;
}

/**
 * Shares of flours that reach a protein, keep an ash, and cost least or change least (linear programming). Protein and
 * ash count by dry matter, so flours of different moisture blend rightly. Not known, with the reason in a baker's words,
 * where a flour lacks a figure or the flours cannot reach what is asked.
 */
export function blendFlours(flours: readonly BlendFlour[], target: BlendTarget): Known<Blend, Message> {
  if (flours.length === 0) return unknown(message('flour.none'));
  const variables = new Map<string, Map<string, number>>();
  const constraints = new Map<string, Constraint>([['all', { equal: 1 }]]);
  for (const [index, one] of flours.entries()) {
    const coefficients = new Map<string, number>([
      ['all', 1],
      [`share ${index}`, 1],
    ]);
    const dry = dryAt14(moistureOf(one.flour));
    if (target.proteinAt14 !== undefined) {
      const protein = proteinOf(one.flour);
      if (!protein.known) return unknown(message('flour.of', { name: one.name, reason: protein.reason }));
      coefficients.set('protein', (protein.value - target.proteinAt14) * dry);
    }
    if (target.mostAshOfDry !== undefined) {
      const ash = ashOfDry(one.flour);
      if (!ash.known) return unknown(message('flour.of', { name: one.name, reason: ash.reason }));
      coefficients.set('ash', (ash.value - target.mostAshOfDry) * dry);
    }
    constraints.set(`share ${index}`, { min: Math.max(0, one.least ?? 0), max: Math.min(1, one.most ?? 1) });
    if (target.goal === 'cheapest') {
      if (one.pricePerKilogram === undefined) return unknown(message('cost.no-price', { name: one.name }));
      coefficients.set('goal', one.pricePerKilogram);
    } else {
      // |share − share now| is what is put on and taken off, the less of both the better.
      const now = one.share ?? 0;
      constraints.set(`change ${index}`, { equal: now });
      coefficients.set(`change ${index}`, 1);
      variables.set(
        `more ${index}`,
        new Map([
          [`change ${index}`, -1],
          ['goal', 1],
        ]),
      );
      variables.set(
        `less ${index}`,
        new Map([
          [`change ${index}`, 1],
          ['goal', 1],
        ]),
      );
    }
    variables.set(`flour ${index}`, coefficients);
  }
  if (target.proteinAt14 !== undefined) constraints.set('protein', { equal: 0 });
  if (target.mostAshOfDry !== undefined) constraints.set('ash', { max: 0 });

  const solution = solve({
    direction: 'minimize',
    objective: 'goal',
    constraints,
    variables: variables as Map<string, Coefficients<string>>,
  });
  if (solution.status !== 'optimal') return unknown(reachOf(flours, target));
  const found = new Map(solution.variables);
  const raw = flours.map((_, index) => Math.max(0, found.get(`flour ${index}`) ?? 0));
  const sum = raw.reduce((total, share) => total + share, 0);
  return known(
    blendOf(
      flours,
      raw.map((share) => share / sum),
    ),
    'given',
  );
}

function blendOf(flours: readonly BlendFlour[], shares: readonly number[]): Blend {
  const mean = (figure: (flour: FlourData) => Known<number, Message>): number | undefined => {
    let [sum, dry] = [0, 0];
    for (const [index, { flour }] of flours.entries()) {
      const value = figure(flour);
      if (figureAt(shares, index) <= 1e-12) continue;
      if (!value.known) return undefined;
      const weight = figureAt(shares, index) * dryAt14(moistureOf(flour));
      sum += value.value * weight;
      dry += weight;
    }
    return sum / dry;
  };
  const proteinAt14 = mean(proteinOf);
  const ash = mean(ashOfDry);
  const isPriced = flours.every((one) => one.pricePerKilogram !== undefined);
  const price = flours.reduce(
    (sum, one, index) => sum + (one.pricePerKilogram ?? 0) * figureAt(shares, index),
    0,
  );
  return {
    shares,
    ...(proteinAt14 === undefined ? {} : { proteinAt14 }),
    ...(ash === undefined ? {} : { ashOfDry: ash }),
    ...(isPriced ? { pricePerKilogram: price } : {}),
  };
}

/** Why no blend does: how far these flours reach. */
function reachOf(flours: readonly BlendFlour[], { proteinAt14, mostAshOfDry }: BlendTarget): Message {
  const proteins = flours.flatMap(({ flour }) => {
    const protein = proteinOf(flour);
    return protein.known ? [protein.value] : [];
  });
  const [low, high] = [Math.min(...proteins), Math.max(...proteins)];
  if (proteinAt14 !== undefined && (proteinAt14 < low - 1e-9 || proteinAt14 > high + 1e-9))
    return high - low < 5e-5
      ? message('blend.one-protein', { usualFraction: low, fraction: proteinAt14 })
      : message('blend.protein', { lowFraction: low, highFraction: high, fraction: proteinAt14 });
  const ashes = flours.flatMap(({ flour }) => {
    const ash = ashOfDry(flour);
    return ash.known ? [ash.value] : [];
  });
  const least = Math.min(...ashes);
  if (mostAshOfDry !== undefined && least > mostAshOfDry)
    return message('blend.least-ash', { lowFraction: least, fraction: mostAshOfDry });
  return mostAshOfDry === undefined
    ? message('blend.none')
    : message('blend.ash', { fraction: mostAshOfDry });
}
