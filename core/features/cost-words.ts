import type { Analysis } from '../analysis/analysis.ts';
import { costTotals } from './cost-of.ts';
import type { TotalsCost } from './totals-product.ts';

/** Money with as many places as tell something: `4.85 EUR`, `0.083 EUR`. */
export function money(amount: number, currency: string): string {
  const places = amount >= 1 || amount === 0 ? 2 : amount >= 0.01 ? 3 : 5;
  return `${amount.toFixed(places)} ${currency}`;
}

/** The ingredients' cost of a formula in a sentence; `undefined` where no ingredient has a price. */
export function costWords(analysis: Analysis): string | undefined {
  const cost = costTotals(analysis);
  return cost === undefined ? undefined : costSentence(cost);
}

/** Whether there is a price, and what it is for cannot be weighed: that is told with what would cure it. */
const isPricedOtherwise = (reason: string): boolean => / is priced by /.test(reason);

/** As `costWords`, of what is computed already. */
export function costSentence(cost: TotalsCost): string {
  const { currency, piece, bakedKilogram, doughKilogram, batch, atLeast, missing } = cost;
  if (currency === undefined) return `Cost not known yet: ${cost.unknown ?? 'no ingredient has a price'}.`;
  const whole = cost.perKilogramOfFlour ? 'for 1 kg of flour' : 'a batch';
  if (batch === undefined) {
    const why = cost.lines.flatMap(({ reason }) =>
      reason !== undefined && isPricedOtherwise(reason) ? [reason] : [],
    );
    const cures = [...new Set(why)].map((reason) => ` ${reason.charAt(0).toUpperCase()}${reason.slice(1)}.`);
    return `Ingredients cost ${money(atLeast ?? 0, currency)} ${whole} and more: ${missing.join(', ')} without a usable price or weight.${cures.join('')}`;
  }
  const said = [`${money(batch, currency)} ${whole}`];
  if (piece !== undefined) said.unshift(`${money(piece, currency)} a piece`);
  if (bakedKilogram !== undefined) said.push(`${money(bakedKilogram, currency)} per kg baked`);
  else if (doughKilogram !== undefined) said.push(`${money(doughKilogram, currency)} per kg of dough`);
  return `Ingredients cost ${said.join(', ')}${cost.waterNotCharged ? '; water is not charged' : ''}.`;
}
