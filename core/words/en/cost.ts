import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

type Money = Args<'amount' | 'currency'>;

/** What ingredients cost: clauses that stand behind a colon, prices, and the sentences made of them. */
export const cost = {
  'cost.amount-not-known': ({ name }: Args<'name'>) => `how much “${name}” it takes is not known`,
  'cost.no-price': ({ name }: Args<'name'>) => `“${name}” has no price`,
  'cost.no-density': ({ name }: Args<'name'>) =>
    `“${name}” is priced by volume, and its density is not stated`,
  'cost.no-piece-weight': ({ name }: Args<'name'>) =>
    `“${name}” is priced by the piece, and its piece weight is not stated`,
  'cost.for-nothing': ({ name }: Args<'name'>) => `the price of “${name}” is for no amount of it`,
  'cost.no-prices': () => 'no ingredient has a price',
  'cost.two-currencies': ({
    currency,
    name,
    otherCurrency,
    otherName,
  }: Args<'currency' | 'name' | 'otherCurrency' | 'otherName'>) =>
    `prices are in two currencies, ${currency} (${name}) and ${otherCurrency} (${otherName}); write them in one`,

  'cost.piece': ({ amount, currency }: Money, say: Speaker) => `${say.money(amount, currency)} a piece`,
  'cost.batch': ({ amount, currency }: Money, say: Speaker) => `${say.money(amount, currency)} a batch`,
  'cost.kilogram-flour': ({ amount, currency }: Money, say: Speaker) =>
    `${say.money(amount, currency)} for 1 kg of flour`,
  'cost.kilogram-baked': ({ amount, currency }: Money, say: Speaker) =>
    `${say.money(amount, currency)} per kg baked`,
  'cost.kilogram-dough': ({ amount, currency }: Money, say: Speaker) =>
    `${say.money(amount, currency)} per kg of dough`,

  'cost.not-known': ({ reason }: Args<'reason'>, say: Speaker) => `Cost not known yet: ${say.say(reason)}.`,
  'cost.ingredients': ({ parts }: Args<'parts'>, say: Speaker) =>
    `Ingredients cost ${parts.map(say.say).join(', ')}.`,
  'cost.ingredients-without-water': ({ parts }: Args<'parts'>, say: Speaker) =>
    `Ingredients cost ${parts.map(say.say).join(', ')}; water is not charged.`,
  'cost.at-least-batch': ({ amount, currency, names }: Money & Args<'names'>, say: Speaker) =>
    `Ingredients cost ${say.money(amount, currency)} a batch and more: no usable price or weight for ${say.list(names)}.`,
  'cost.at-least-flour': ({ amount, currency, names }: Money & Args<'names'>, say: Speaker) =>
    `Ingredients cost ${say.money(amount, currency)} for 1 kg of flour and more: no usable price or weight for ${say.list(names)}.`,
  'cost.density-missing': ({ name }: Args<'name'>) =>
    `“${name}” is priced by volume: state its density in its section.`,
  'cost.piece-weight-missing': ({ name }: Args<'name'>) =>
    `“${name}” is priced by the piece: state its piece weight in its section.`,
};
