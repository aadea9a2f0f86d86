import { lastOf } from '../../text/element.ts';
import { bowlBatches } from '../formula/scaling.ts';

/** What an oven takes at once. */
export type OvenCapacity =
  | { readonly measure: 'pieces'; readonly count: number }
  /** Dough at the divider. */
  | { readonly measure: 'mass'; readonly grams: number };

/** Dough of one kind that has to be ready at one time. */
export interface DoughOrder {
  /** Minutes on the clock of the plan. */
  readonly readyMinutes: number;
  /** Weighed into the bowl. */
  readonly doughGrams: number;
  readonly pieces?: number;
}

export interface DoughToMake {
  readonly orders: readonly DoughOrder[];
  /** Dough at the divider for a gram in the bowl: less what is lost, more what is enclosed. */
  readonly dividedPerGram: number;
  readonly bowl?: { readonly leastGrams?: number; readonly mostGrams?: number };
  readonly oven?: OvenCapacity;
}

export interface DoughBatch {
  readonly doughGrams: number;
  readonly pieces?: number;
  /** When the first of its pieces has to be ready. */
  readonly readyMinutes: number;
  /** Loads of the oven, one behind another. */
  readonly ovenLoads: number;
}

/**
 * - `below-least`: the bowl wants `leastGrams`, and even one batch has less.
 * - `gap`: one batch is too much for the bowl and two are too little; they are made too little.
 * - `several-loads`: a batch that the bowl needs fills the oven more than once.
 */
export type BatchRemark = 'below-least' | 'gap' | 'several-loads';

/**
 * Parts the dough of all orders into the fewest equal batches that the bowl takes and that the oven bakes in one load; where
 * the bowl's least forbids that, a batch bakes in several loads. Those ready first are made first. Pieces stay whole.
 */
export function doughBatches(dough: DoughToMake): {
  readonly batches: readonly DoughBatch[];
  readonly remarks: readonly BatchRemark[];
  /** More batches than a day is worked out for: then there are none. */
  readonly tooMany?: number;
} {
  const orders = [...dough.orders].sort((one, other) => one.readyMinutes - other.readyMinutes);
  const total = orders.reduce((sum, order) => sum + order.doughGrams, 0);
  if (!(total > 0) || !Number.isFinite(total)) return { batches: [], remarks: [] };
  const remarks: BatchRemark[] = [];
  const { leastGrams = 0, mostGrams = Number.POSITIVE_INFINITY } = dough.bowl ?? {};
  let count = 1;
  if (mostGrams < Number.POSITIVE_INFINITY || leastGrams > 0) {
    const bowl = bowlBatches(total, {
      leastGrams,
      mostGrams: Math.max(leastGrams, Math.min(mostGrams, 1e12)),
    });
    if (bowl.ok) count = bowl.batches;
    else if (bowl.failure !== 'impossible-weight') {
      remarks.push(bowl.failure);
      count = bowl.failure === 'gap' ? Math.ceil(total / mostGrams - 1e-9) : 1;
    }
  }
  const allPieces = orders.every(({ pieces }) => pieces !== undefined && Number.isInteger(pieces))
    ? orders.reduce((sum, { pieces }) => sum + pieces!, 0)
    : undefined;
  const whole = loadsOf(dough, total, allPieces);
  if (whole > count && total / whole >= leastGrams * (1 - 1e-9)) count = whole;
  if (allPieces !== undefined && allPieces > 0) count = Math.min(count, allPieces);
  if (count > mostBatches) return { batches: [], remarks: [], tooMany: count };

  const batches: DoughBatch[] = [];
  let made = 0;
  for (let index = 0; index < count; index++) {
    const pieces = allPieces === undefined ? undefined : share(allPieces, count, index);
    const doughGrams = pieces === undefined ? total / count : (total * pieces) / allPieces!;
    const ovenLoads = loadsOf(dough, doughGrams, pieces);
    batches.push({
      doughGrams,
      readyMinutes: readyOf(orders, made),
      ovenLoads,
      ...(pieces === undefined ? {} : { pieces }),
    });
    made += doughGrams;
  }
  if (batches.some(({ ovenLoads }) => ovenLoads > 1)) remarks.push('several-loads');
  return { batches, remarks };
}

/** A plan of more is no day of a bakery: most likely a slip, and nobody could work by it. */
export const mostBatches = 2000;

/** Whole pieces of a batch; the first batches take what does not divide. */
function share(pieces: number, batches: number, index: number): number {
  return Math.floor(pieces / batches) + (index < pieces % batches ? 1 : 0);
}

function loadsOf(
  { oven, dividedPerGram }: DoughToMake,
  doughGrams: number,
  pieces: number | undefined,
): number {
  if (oven === undefined) return 1;
  const full =
    oven.measure === 'mass'
      ? (doughGrams * dividedPerGram) / oven.grams
      : pieces === undefined
        ? 1
        : pieces / oven.count;
  return Number.isFinite(full) ? Math.max(1, Math.ceil(full - 1e-9)) : 1;
}

/** How much of one load a batch fills, 0 to 1; `undefined` where it is more than one load or the oven's room is not known. */
export function fillOf({ oven, dividedPerGram }: DoughToMake, batch: DoughBatch): number | undefined {
  if (oven === undefined || batch.ovenLoads !== 1) return undefined;
  if (oven.measure === 'mass') return Math.min(1, (batch.doughGrams * dividedPerGram) / oven.grams);
  return batch.pieces === undefined ? undefined : Math.min(1, batch.pieces / oven.count);
}

/** When the dough behind so many grams of the earlier orders has to be ready. */
function readyOf(orders: readonly DoughOrder[], madeGrams: number): number {
  let sum = 0;
  for (const { doughGrams, readyMinutes } of orders) {
    sum += doughGrams;
    if (madeGrams < sum - 1e-6) return readyMinutes;
  }
  return lastOf(orders).readyMinutes;
}
