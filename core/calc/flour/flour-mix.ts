import { type Message, message } from '../../words/message.ts';
import { type Known, known, type Provenance, unknown } from '../known.ts';
import { absorptionAt14, type FlourData, moistureOf, proteinAt14, provenanceOf } from './flour.ts';

/** A weight of one flour. */
export interface FlourPortion {
  readonly name: string;
  readonly grams: number;
  readonly flour: FlourData;
}

/** What a mix of flours is, each figure on the basis its name tells. */
export interface FlourMix {
  /** Fraction at 14 % moisture. */
  readonly proteinAt14: Known<number, Message>;
  /** Fraction of the dry matter. */
  readonly ashOfDry: Known<number, Message>;
  /** Farinograph absorption, fraction of flour at 14 % moisture. */
  readonly absorptionAt14: Known<number, Message>;
}

/** Flour of so much moisture as flour of 14 %: the same dry matter. */
export function dryAt14(moisture: number): number {
  return (1 - moisture) / 0.86;
}

/**
 * Protein, ash and absorption of a mix. Each flour counts by its dry matter, so that flours of different moisture and
 * figures of different basis add up. A figure that one flour lacks is not known of the mix, and names it.
 */
export function flourMix(portions: readonly FlourPortion[]): FlourMix {
  const flours = portions.filter(({ grams }) => grams > 0);
  return {
    proteinAt14: meanOf(flours, ({ flour }) => proteinAt14(flour)),
    ashOfDry: meanOf(flours, ({ flour }) => ashOfDry(flour)),
    absorptionAt14: meanOf(flours, ({ flour }) => absorptionAt14(flour)),
  };
}

/** Ash as a fraction of the dry matter; what a file says is of the flour as it is, unless it says at which moisture. */
export function ashOfDry(flour: FlourData): Known<number, Message> {
  const { ash } = flour;
  if (ash === undefined || !Number.isFinite(ash) || ash < 0) return unknown(message('flour.no-ash'));
  return known(ash / (1 - ashBasis(flour)), provenanceOf(flour, 'ash'));
}

function ashBasis(flour: FlourData): number {
  const { ashMoistureBasis: basis } = flour;
  return basis !== undefined && basis >= 0 && basis < 1 ? basis : moistureOf(flour);
}

const rank: Readonly<Record<Provenance, number>> = {
  measured: 0,
  given: 1,
  published: 2,
  'common practice': 3,
};

function meanOf(
  portions: readonly FlourPortion[],
  figure: (portion: FlourPortion) => Known<number, Message>,
): Known<number, Message> {
  let sum = 0;
  let dry = 0;
  let weakest: Provenance = 'measured';
  for (const portion of portions) {
    const one = figure(portion);
    if (!one.known) return unknown(message('flour.of', { name: portion.name, reason: one.reason }));
    const weight = portion.grams * dryAt14(moistureOf(portion.flour));
    sum += one.value * weight;
    dry += weight;
    if (rank[one.provenance] > rank[weakest]) weakest = one.provenance;
  }
  return dry > 0 ? known(sum / dry, weakest) : unknown(message('flour.none'));
}
