import { type Message, message } from '../../words/message.ts';
import { type Known, known, unknown } from '../known.ts';

/** What something costs, for so many grams, millilitres or pieces of it. */
export interface Price {
  readonly amount: number;
  /** Three capitals. */
  readonly currency: string;
  readonly per:
    | { readonly measure: 'mass'; readonly grams: number }
    | { readonly measure: 'volume'; readonly millilitres: number }
    | { readonly measure: 'count'; readonly count: number };
}

/** A weight of one ingredient and what is known of its price. */
export interface PricedPortion {
  readonly name: string;
  readonly grams?: number;
  /** Water without a price is not charged. */
  readonly isWater: boolean;
  readonly price?: Price;
  readonly pieceGrams?: number;
  readonly densityGramsPerMillilitre?: number;
}

export interface CostLine {
  readonly name: string;
  readonly grams?: number;
  /** Absent where it is not known; `reason` then says why. */
  readonly amount?: number;
  readonly reason?: Message;
}

/** The cost of several portions together. */
export interface CostSum {
  readonly lines: readonly CostLine[];
  /** Absent where a price is missing. */
  readonly amount?: number;
  /** What the priced lines come to; the same as `amount` where none is missing. */
  readonly atLeast: number;
  /** Names of what has no usable price, water left out. */
  readonly missing: readonly string[];
  /** Water has no price and is not charged. */
  readonly waterFree: boolean;
}

/** The cost of a portion in the currency of its price, or why it is not known. */
export function costOfPortion(portion: PricedPortion): Known<number, Message> {
  const { price, grams, name } = portion;
  if (grams === undefined || !Number.isFinite(grams))
    return unknown(message('cost.amount-not-known', { name }));
  if (price === undefined) return unknown(message('cost.no-price', { name }));
  const perGrams = gramsPriced(portion, price);
  if (perGrams === undefined) {
    const isVolume = price.per.measure === 'volume';
    return unknown(message(isVolume ? 'cost.no-density' : 'cost.no-piece-weight', { name }));
  }
  if (!(perGrams > 0) || !Number.isFinite(price.amount))
    return unknown(message('cost.for-nothing', { name }));
  return known((price.amount * grams) / perGrams, 'given');
}

function gramsPriced(portion: PricedPortion, price: Price): number | undefined {
  const { per } = price;
  if (per.measure === 'mass') return per.grams;
  if (per.measure === 'volume') {
    const { densityGramsPerMillilitre: density } = portion;
    return density === undefined ? undefined : per.millilitres * density;
  }
  return portion.pieceGrams === undefined ? undefined : per.count * portion.pieceGrams;
}

/** Adds up portions priced in one currency. */
export function costOf(portions: readonly PricedPortion[]): CostSum {
  let atLeast = 0;
  let waterFree = false;
  const missing: string[] = [];
  const lines = portions.map((portion): CostLine => {
    const cost = costOfPortion(portion);
    const line = { name: portion.name, ...(portion.grams === undefined ? {} : { grams: portion.grams }) };
    if (cost.known) {
      atLeast += cost.value;
      return { ...line, amount: cost.value };
    }
    if (portion.isWater && portion.price === undefined && portion.grams !== undefined) waterFree = true;
    else if (!missing.includes(portion.name)) missing.push(portion.name);
    return { ...line, reason: cost.reason };
  });
  return {
    lines,
    atLeast,
    missing,
    waterFree,
    ...(missing.length === 0 ? { amount: atLeast } : {}),
  };
}

/** The one currency of all prices; not known where there is none, or more than one. */
export function currencyOf(portions: readonly PricedPortion[]): Known<string, Message> {
  const all = new Map<string, string>();
  for (const { price, name } of portions)
    if (price !== undefined && !all.has(price.currency)) all.set(price.currency, name);
  const [first, second] = [...all];
  if (first === undefined) return unknown(message('cost.no-prices'));
  if (second === undefined) return known(first[0], 'given');
  return unknown(
    message('cost.two-currencies', {
      ...{ currency: first[0], name: first[1] },
      ...{ otherCurrency: second[0], otherName: second[1] },
    }),
  );
}
