import type { mixingHeat as english } from '../en/mixing-heat.ts';
import type { Translation } from '../message.ts';

/** Die Wärmebilanz und daneben die Faustregel. */
export const mixingHeat: Translation<typeof english> = {
  'provenance.given': () => 'angegeben',
  'provenance.measured': () => 'gemessen',
  'provenance.published': () => 'veröffentlicht',
  'provenance.common-practice': () => 'gängige Praxis',
  'provenance.in-section': () => 'in seinem Abschnitt angegeben',

  'heat-bill.hydration': () => 'Quellungswärme',
  'heat-bill.working': () => 'Kneten',
  'heat-bill.room': () => 'Raum',
  'heat-bill.ice': () => 'Eis',
  'heat-bill.change': ({ apartCelsius }, say) =>
    `${apartCelsius > 0 ? '+' : ''}${say.celsiusApart(apartCelsius)}`,
  'heat-bill.head': () => 'Wärme',
  'heat-bill.head-change': () => 'Wirkung auf den Teig',
  'heat-bill.provenance': ({ source }, say) =>
    `_(${say.say(source)}: Wärmeinhalte sind veröffentlicht, die Erwärmung durch das Kneten ist unsere eigene Anpassung)_`,

  'comparison.rule': () => 'Faustregel',
  'comparison.balance': () => 'Wärmebilanz',
  'comparison.water': () => 'Wasser',
  'comparison.dough': () => 'gewünschte Teigtemperatur',
  'comparison.flour': ({ celsius }, say) => `Mehl mit ${say.celsius(celsius)}`,
  'comparison.preferment': ({ celsius }, say) => `Vorteig mit ${say.celsius(celsius)}`,
  'comparison.room': ({ celsius }, say) => `Raum mit ${say.celsius(celsius)}`,
  'comparison.others': () => 'alles Übrige im Kessel',
  'comparison.friction-given': () => 'Reibungsfaktor, angegeben',
  'comparison.friction-mild': () => 'Reibungsfaktor eines milden Tages',
  'comparison.working': () => 'Kneten',
  'comparison.hydration': () => 'Quellungswärme',
  'comparison.agree': ({ apartCelsius }, say) =>
    `Faustregel und Wärmebilanz stimmen auf ${say.celsiusApart(apartCelsius)} überein.`,
  'comparison.warmer': ({ apartCelsius }, say) =>
    `Die Faustregel ergibt ${say.celsiusApart(apartCelsius)} mehr.`,
  'comparison.colder': ({ apartCelsius }, say) =>
    `Die Faustregel ergibt ${say.celsiusApart(apartCelsius)} weniger.`,
  'comparison.warmer-because': (off, say) =>
    `Die Faustregel ergibt ${say.celsiusApart(off.apartCelsius)} mehr; ${say.celsiusApart(off.partCelsius)}, weil ${say.say(off.reason)}.`,
  'comparison.colder-because': (off, say) =>
    `Die Faustregel ergibt ${say.celsiusApart(off.apartCelsius)} weniger; ${say.celsiusApart(off.partCelsius)}, weil ${say.say(off.reason)}.`,
  'comparison.because-flour': () => 'sie das Mehl so schwer zählt wie das Wasser',
  'comparison.because-preferment': () => 'sie den Vorteig so schwer zählt wie das Wasser',
  'comparison.because-others': () => 'sie alles außer Mehl und Wasser weglässt',
  'comparison.because-day': () =>
    'Raum und Reibungsfaktor für Kneten, Quellung und den Einfluss des Raums an einem anderen Tag stehen',

  'heat.from-tap': ({ tapCelsius, doughCelsius }, say) =>
    `Mit lauter Leitungswasser von ${say.celsius(tapCelsius)} käme der Teig auf ${say.celsius(doughCelsius)}.`,
  'heat.minutes-left': ({ minutes, limitCelsius }, say) =>
    `Noch ${say.minutes(minutes)} im letzten Gang, und er ist zu warm, über ${say.celsius(limitCelsius)}.`,
  'heat.too-warm-from-start': ({ limitCelsius }, say) =>
    `Er ist von Anfang an zu warm, über ${say.celsius(limitCelsius)}.`,
  'heat.too-warm-after': ({ minutes, limitCelsius }, say) =>
    `Er ist nach ${say.minutes(minutes)} zu warm, über ${say.celsius(limitCelsius)}.`,
};
