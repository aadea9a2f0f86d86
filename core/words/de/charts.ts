import type { Args } from '../args.ts';
import type { charts as english } from '../en/charts.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Die Zeichnungen des Backzettels: Titel, was sie zeigen, ihre Legenden und Tabellen. */
export const charts: Translation<typeof english> = {
  'chart.mixing': () => 'Temperatur und Entwicklung beim Kneten',
  'chart.programme': ({ seconds, place }, say) => `${say.duration(seconds)} ${say.say(place)}.`,
  'chart.course': ({ celsius, doughCelsius, targetCelsius }, say) =>
    `Der Teig geht von ${say.celsius(celsius)} auf ${say.celsius(doughCelsius)}; gewünscht sind ${say.celsius(targetCelsius)}.`,
  'chart.no-temperature': ({ reason }, say) =>
    `Eine Temperatur lässt sich nicht berechnen: ${say.say(reason)}.`,
  'chart.no-development': ({ reason }, say) =>
    `Eine Entwicklung lässt sich nicht berechnen: ${say.say(reason)}.`,
  'chart.not-known': () => 'sie ist nicht bekannt',
  'chart.end-stage': ({ stage }, say) => `Zustand am Ende: ${say.say(stage)}.`,
  'chart.from-stage': (band, say) => `Ab etwa ${minutes(band, say)}: ${say.say(band.stage)}.`,
  'chart.from-stage-if': (band, say) =>
    `Ab etwa ${minutes(band, say)}, liefe der letzte Gang weiter: ${say.say(band.stage)}.`,
  'chart.readings-marked': () =>
    'Was in Knetversuchen gemessen wurde, ist eingezeichnet: um so viel daneben, wie es neben dem für seinen eigenen Tag Berechneten lag.',
  'chart.minute': () => 'Minute',
  'chart.what': () => 'Was',
  'chart.development': () => 'Entwicklung',
  'chart.start': () => 'Beginn',
  'chart.end-of': ({ title }, say) => `Ende: ${say.say(title)}`,
  'chart.measured': ({ written }) => `gemessen, ${written}`,
  'chart.about': () => 'etwa',
  'chart.if-last-speed': () => 'liefe der letzte Gang weiter',
  'chart.celsius-between': ({ celsius, lowCelsius, highCelsius }, say) =>
    `${say.celsius(celsius)} (${say.celsius(lowCelsius)} bis ${say.celsius(highCelsius)})`,
  'chart.speed': () => 'Gang',
  'chart.dough-end': ({ written }) => `Teig ${written}`,
  'chart.wanted': ({ celsius }, say) => `gewünscht, ${say.celsius(celsius)}`,
  'chart.may-lie': () => 'worin sie liegen kann',
  'chart.best-stop': ({ minutes: at }, say) => `am besten ${say.minutes(at)}`,
  'chart.mixing-ends': ({ seconds }, say) => `Ende ${say.duration(seconds)}`,
  'chart.phase-lasts': ({ title, seconds }, say) => `${say.say(title)}, ${say.duration(seconds)}`,
  'chart.added-at': ({ minutes: at, names }, say) => `bei ${say.number(at, 1)} min: ${say.list(names)}`,
  'phase.load': ({ names }, say) => `${say.list(names)} einfüllen`,
  'phase.add': ({ names }, say) => `${say.list(names)} zugeben`,

  'chart.may-double': ({ seconds }, say) => `Verdoppelt vielleicht ab ${say.duration(seconds)}.`,
  'chart.doubled': ({ seconds, lowSeconds, highSeconds }, say) =>
    `Verdoppelt nach etwa ${say.duration(seconds)} (${say.duration(lowSeconds)} bis ${say.duration(highSeconds)}).`,
  'chart.doubled-or-not': ({ seconds, lowSeconds }, say) =>
    `Verdoppelt nach etwa ${say.duration(seconds)} (${say.duration(lowSeconds)}, oder bis zum Ende nicht).`,

  'chart.composition': () => 'Woraus der Teig besteht',
  'chart.dough-of': ({ grams, facts }, say) => `${say.mass(grams)} Teig: ${say.list(facts.map(say.say))}.`,
  'chart.the-dough': ({ facts }, say) => `Der Teig: ${say.list(facts.map(say.say))}.`,
  'chart.share': ({ name, fraction }, say) => `${name} ${say.percent(fraction)}`,
  'chart.kind-of': ({ title, names }, say) => `${say.say(title)} (${say.list(names)})`,
  'chart.of-dough': () => 'Vom Teig',
  'chart.weight': () => 'Gewicht',
  'chart-kind.flour': () => 'Mehl',
  'chart-kind.other-flours': () => 'andere Mehle',
  'chart-kind.water': () => 'Wasser',
  'chart-kind.dairy': () => 'Milch',
  'chart-kind.egg': () => 'Ei',
  'chart-kind.fat': () => 'Fett',
  'chart-kind.sugar': () => 'Zucker',
  'chart-kind.seeds': () => 'Saaten',
  'chart-kind.other': () => 'anderes',
  'chart-kind.salt': () => 'Salz',
  'chart-kind.yeast': () => 'Hefe',
};

type Band = Args<'lowMinutes' | 'highMinutes'>;

function minutes({ lowMinutes, highMinutes }: Band, say: Speaker): string {
  return say.minutesBand(lowMinutes, highMinutes);
}
