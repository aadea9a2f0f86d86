import type { cost as english } from '../en/cost.ts';
import type { Translation } from '../message.ts';

/** Was die Zutaten kosten: Gründe hinter einem Doppelpunkt, Preise, und die Sätze daraus. */
export const cost: Translation<typeof english> = {
  'cost.amount-not-known': ({ name }) => `wie viel „${name}“ gebraucht wird, ist nicht bekannt`,
  'cost.no-price': ({ name }) => `„${name}“ hat keinen Preis`,
  'cost.no-density': ({ name }) =>
    `der Preis von „${name}“ gilt für ein Volumen, und die Dichte ist nicht angegeben`,
  'cost.no-piece-weight': ({ name }) =>
    `der Preis von „${name}“ gilt je Stück, und das Stückgewicht ist nicht angegeben`,
  'cost.for-nothing': ({ name }) => `der Preis von „${name}“ gilt für keine Menge`,
  'cost.no-prices': () => 'keine Zutat hat einen Preis',
  'cost.two-currencies': ({ currency, name, otherCurrency, otherName }) =>
    `die Preise stehen in zwei Währungen, ${currency} (${name}) und ${otherCurrency} (${otherName}); alle in einer schreiben`,

  'cost.piece': ({ amount, currency }, say) => `${say.money(amount, currency)} je Stück`,
  'cost.batch': ({ amount, currency }, say) => `${say.money(amount, currency)} je Teig`,
  'cost.kilogram-flour': ({ amount, currency }, say) => `${say.money(amount, currency)} für 1 kg Mehl`,
  'cost.kilogram-baked': ({ amount, currency }, say) => `${say.money(amount, currency)} je kg gebacken`,
  'cost.kilogram-dough': ({ amount, currency }, say) => `${say.money(amount, currency)} je kg Teig`,

  'cost.not-known': ({ reason }, say) => `Kosten noch nicht bekannt: ${say.say(reason)}.`,
  'cost.ingredients': ({ parts }, say) => `Zutaten kosten ${parts.map(say.say).join(', ')}.`,
  'cost.ingredients-without-water': ({ parts }, say) =>
    `Zutaten kosten ${parts.map(say.say).join(', ')}; Wasser ist nicht berechnet.`,
  'cost.at-least-batch': ({ amount, currency, names }, say) =>
    `Zutaten kosten mehr als ${say.money(amount, currency)} je Teig: kein brauchbarer Preis oder kein Gewicht bei ${say.list(names)}.`,
  'cost.at-least-flour': ({ amount, currency, names }, say) =>
    `Zutaten kosten mehr als ${say.money(amount, currency)} für 1 kg Mehl: kein brauchbarer Preis oder kein Gewicht bei ${say.list(names)}.`,
  'cost.density-missing': ({ name }) =>
    `Der Preis von „${name}“ gilt für ein Volumen: die Dichte im Abschnitt der Zutat angeben.`,
  'cost.piece-weight-missing': ({ name }) =>
    `Der Preis von „${name}“ gilt je Stück: das Stückgewicht im Abschnitt der Zutat angeben.`,
};
