import type { Analysis } from '../analysis/analysis.ts';
import { costTotals } from './cost-of.ts';
import type { TotalsCost } from './totals-product.ts';

/** Money to the cent: `4.85 EUR`; what is below a cent, and not nothing, is `less than 0.01 EUR`. */
export function money(amount: number, currency: string): string {
  if (amount > 0 && amount < cent) return `less than ${cent} ${currency}`;
  return `${amount.toFixed(2)} ${currency}`;
}

const cent = 0.01;

/** By how much two sums of money differ as they are shown: to the cent, so that the figures beside it add up. */
export function moneyApart(before: number, after: number, currency: string): string {
  const cents = Math.abs(Math.round(after * 100) - Math.round(before * 100));
  return money(cents / 100, currency);
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
