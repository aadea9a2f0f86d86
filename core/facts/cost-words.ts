import { type Message, message } from '../words/message.ts';
import type { TotalsCost } from './totals-product.ts';

/** The cost of a formula as a message, of what is computed. */
export function costMessage(cost: Omit<TotalsCost<Message>, 'text'>): Message {
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
