import { type Analysis, solutionOf } from '../analysis/analysis.ts';
import { type CostSum, costOf, currencyOf, type PricedPortion } from '../calc/product/cost.ts';
import { type Message, message } from '../words/message.ts';
import { itemsOfPart, type ProductItem, productOf, weighedOf } from './product.ts';
import type { TotalsCost, TotalsCostPart } from './totals-product.ts';

/** The cost of a batch, or `undefined` where no ingredient has a price or nothing is weighed yet. */
export function costTotals(analysis: Analysis): TotalsCost<Message> | undefined {
  const cost = sumsOf(analysis);
  return cost === undefined ? undefined : { text: costMessage(cost), ...cost };
}

function sumsOf(analysis: Analysis): Omit<TotalsCost<Message>, 'text'> | undefined {
  const weighed = weighedOf(analysis);
  const { solved } = analysis;
  if (solved === undefined || weighed === undefined) return undefined;
  const outside = [...weighed.enclosed, ...weighed.beside];
  const items = [...weighed.bowl, ...outside.flatMap((one) => one.items ?? [])];
  const portions = items.map(portionOf);
  if (!portions.some((portion) => portion.price !== undefined)) return undefined;
  const currency = currencyOf(portions);
  if (!currency.known) return { lines: [], parts: [], missing: [], unknown: currency.reason };
  const unweighed = outside
    .filter((beside) => beside.items === undefined)
    .map((beside) => beside.section.name);
  const sum = costOf(portions);
  const missing = [...sum.missing, ...unweighed];
  const whole = missing.length === 0;
  const cost: Omit<TotalsCost<Message>, 'text'> = {
    currency: currency.value,
    lines: sum.lines.map((line) => ({ ...line })),
    parts: partsOf(analysis),
    missing,
  };
  if (sum.waterFree) cost.waterNotCharged = true;
  if (solved.assumedScale) cost.perKilogramOfFlour = true;
  if (!whole) {
    cost.atLeast = sum.atLeast;
    return cost;
  }
  cost.batch = sum.atLeast;
  if (solved.pieces !== undefined && solved.pieces > 0) cost.piece = sum.atLeast / solved.pieces;
  const madeGrams = (solved.doughGrams ?? 0) + (solved.enclosedGrams ?? 0);
  if (solved.doughGrams !== undefined && madeGrams > 0) cost.doughKilogram = (sum.atLeast / madeGrams) * 1000;
  const product = productOf(analysis);
  if (product.known && product.value.bakedGrams > 0)
    cost.bakedKilogram = (sum.atLeast / product.value.bakedGrams) * 1000;
  return cost;
}

function partsOf(analysis: Analysis): TotalsCostPart[] {
  return solutionOf(analysis)
    .sections.slice(1)
    .flatMap((section): TotalsCostPart[] => {
      const items = itemsOfPart(analysis, section);
      if (items === undefined || items.length === 0) return [];
      const sum: CostSum = costOf(items.map(portionOf));
      const part: TotalsCostPart = { name: section.name, kind: section.kind, missing: [...sum.missing] };
      if (sum.amount === undefined) part.atLeast = sum.atLeast;
      else part.amount = sum.amount;
      return [part];
    });
}

function portionOf(item: ProductItem): PricedPortion {
  const { ingredient } = item;
  const { price, pieceGrams, densityGramsPerMillilitre } = ingredient ?? {};
  return {
    name: item.name,
    isWater: item.isWater,
    ...(item.grams === undefined ? {} : { grams: item.grams }),
    ...(price === undefined ? {} : { price }),
    ...(pieceGrams === undefined ? {} : { pieceGrams }),
    ...(densityGramsPerMillilitre === undefined ? {} : { densityGramsPerMillilitre }),
  };
}

/** The cost of a formula as a message, of what is computed. */
function costMessage(cost: Omit<TotalsCost<Message>, 'text'>): Message {
  const { currency, piece, bakedKilogram, doughKilogram, batch, atLeast, missing } = cost;
  if (currency === undefined)
    return message('cost.not-known', { reason: cost.unknown ?? message('cost.no-prices') });
  if (batch === undefined) {
    const told = { amount: atLeast ?? 0, currency, names: missing };
    const least = message(cost.perKilogramOfFlour ? 'cost.at-least-flour' : 'cost.at-least-batch', told);
    const cures = [
      ...new Map(cost.lines.flatMap(cureOf).map((cure) => [JSON.stringify(cure), cure])).values(),
    ];
    return cures.length === 0 ? least : message('paragraph.of', { parts: [least, ...cures] });
  }
  const parts: Message[] = [
    message(cost.perKilogramOfFlour ? 'cost.kilogram-flour' : 'cost.batch', { amount: batch, currency }),
  ];
  if (piece !== undefined) parts.unshift(message('cost.piece', { amount: piece, currency }));
  if (bakedKilogram !== undefined)
    parts.push(message('cost.kilogram-baked', { amount: bakedKilogram, currency }));
  else if (doughKilogram !== undefined)
    parts.push(message('cost.kilogram-dough', { amount: doughKilogram, currency }));
  return message(cost.waterNotCharged ? 'cost.ingredients-without-water' : 'cost.ingredients', { parts });
}

/** What helps where there is a price, and what it is for cannot be weighed. */
function cureOf({ name, reason }: TotalsCost<Message>['lines'][number]): Message[] {
  if (reason?.code === 'cost.no-density') return [message('cost.density-missing', { name })];
  return reason?.code === 'cost.no-piece-weight' ? [message('cost.piece-weight-missing', { name })] : [];
}
