import type { Args } from '../args.ts';
import type { sheetWork as english } from '../en/sheet-work.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Was der Backzettel über die Arbeit sagt: was wann abgewogen wird, wie es steht und woran es fehlt. */
export const sheetWork: Translation<typeof english> = {
  'sheet.before-mixing': () => 'vor dem Kneten',
  'sheet.before-mixing-held': ({ facts }, say) => `vor dem Kneten: ${say.list(facts.map(say.say))}`,
  'sheet.before': ({ seconds }, say) => `${say.duration(seconds)} vorher`,
  'sheet.before-at': (held, say) => `${say.duration(held.seconds)} vorher, bei ${say.celsius(held.celsius)}`,
  'sheet.before-held': ({ seconds, facts }, say) =>
    `${say.duration(seconds)} vorher: ${say.list(facts.map(say.say))}`,
  'sheet.at-start': () => 'zu Beginn',
  'sheet.after': ({ seconds }, say) => `nach ${say.duration(seconds)}`,
  'sheet.after-minutes': ({ minutes }, say) => `nach ${say.number(minutes, 1)} min`,
  'sheet.times': ({ count }, say) => say.count(count, { other: '#-mal' }),

  'held.soak': ({ seconds }, say) => `${say.duration(seconds)} quellen`,
  'held.soak-at': (held, say) => `${long(held, say)} quellen`,
  'held.ferment': ({ seconds }, say) => `${say.duration(seconds)} reifen`,
  'held.ferment-at': (held, say) => `${long(held, say)} reifen`,
  'held.hold': ({ seconds }, say) => `${say.duration(seconds)} stehen`,
  'held.hold-at': (held, say) => `${long(held, say)} stehen`,
  'step.lasts': ({ written, seconds }, say) => `${written} ${say.duration(seconds)}`,
  'step.at': ({ written, celsius }, say) => `${written} bei ${say.celsius(celsius)}`,
  'step.lasts-at': (held, say) => `${held.written} ${long(held, say)}`,

  'phase.speed': ({ number }) => `Gang ${number}`,
  'phase.rest': () => 'Ruhe',
  'phase.knead': () => 'kneten',
  'phase.fold': () => 'falten',
  'phase.stir': () => 'rühren',
  'phase.first-in': ({ written, names }, say) => `${written}, zuerst hinein: ${say.list(names)}`,

  'moment.mix': () => 'kneten',
  'moment.mix-batch': ({ number, count }) => `Teig ${number} von ${count} kneten`,
  'moment.fold': () => 'falten',
  'moment.ready': () => 'fertig',
  'sheet.untimed': ({ names }, say) =>
    `Für ${say.list(names)} steht keine Zeit in der Rezeptur: sie ist dazuzurechnen.`,
  'sheet.further-batches': ({ count, seconds }, say) =>
    `Die Zeiten gelten für den ersten von ${count} Teigen; jeder weitere folgt frühestens ${say.duration(seconds)} später.`,

  'clock.dough-at': ({ celsius }, say) => `Teig mit ${say.celsius(celsius)}`,
  'clock.dough-from-to': ({ fromCelsius, toCelsius }, say) =>
    `Teig von ${say.celsius(fromCelsius)} bis ${say.celsius(toCelsius)}`,
  'clock.morning-before': ({ written }) => `am Morgen davor, ${written}`,
  'clock.afternoon-before': ({ written }) => `am Nachmittag davor, ${written}`,
  'clock.evening-before': ({ written }) => `am Abend davor, ${written}`,
  'clock.days-before': ({ count, written }, say) =>
    `${say.count(count, { one: '# Tag', other: '# Tage' })} davor, ${written}`,
  'clock.next-day': ({ written }) => `am nächsten Tag, ${written}`,
  'clock.days-later': ({ count, written }, say) =>
    `${say.count(count, { one: '# Tag', other: '# Tage' })} später, ${written}`,

  'sheet.ripe-culture': () => 'reifes Anstellgut',
  'sheet.ice': () => 'Eis',
  'sheet.water-at': ({ celsius }, say) => `mit ${say.celsius(celsius)}`,
  'sheet.from-tap': ({ tapCelsius }, say) => `aus der Leitung, mit ${say.celsius(tapCelsius)}`,
  'sheet.from-tap-assumed': ({ tapCelsius }, say) =>
    `aus der Leitung, angenommen mit ${say.celsius(tapCelsius)}`,
  'sheet.no-hotter': ({ celsius }, say) => `mit ${say.celsius(celsius)}, nicht wärmer`,
  'sheet.same-temperature': () => 'ebenso warm',
  'sheet.finer-scale': () => 'auf einer feineren Waage',
  'sheet.not-known-yet': () => 'noch nicht bekannt',
  'sheet.keep-back': ({ grams }, say) => `${say.mass(grams)} für den nächsten Tag zurückbehalten`,
  'sheet.steams-away': ({ lostGrams, grams }, say) =>
    `${say.mass(lostGrams)} verdampfen beim Kochen: ${say.mass(grams)} bleiben`,
  'sheet.elsewhere': ({ name, names }, say) =>
    `„${name}“ ist ganz in ${say.list(names.map((one) => `„${one}“`))}`,
  'sheet.elsewhere-parts': ({ name }) => `„${name}“ ist ganz in den Teilen`,
  'sheet.too-little': ({ name, grams }, say) => `${say.mass(grams)} ${name}, zu wenig zum Abwiegen`,

  'place.in-bowl': () => 'im Kessel',
  'sheet.batches-in': ({ count, grams, place }, say) =>
    `${say.count(count, { one: '# Teig', other: '# Teige' })} zu ${say.mass(grams)} ${say.say(place)}`,
  'sheet.batches-none': ({ name }) =>
    `auch in gleiche Teige geteilt passt dieser Teig nicht in den Kessel von ${name}`,

  'sheet.tried': () => 'Für heute probiert; in der Datei steht es anders.',
  'sheet.merge-elsewhere': () =>
    'In einer Rezeptur, die diese aufnimmt, ist eine Zusammenführung nicht beendet: bis dahin wird nichts zusammengezählt.',
  'sheet.empty': () => 'Noch ist nichts abzuwiegen: die Rezeptur hat keine Zutaten.',
  'sheet.held-by': ({ number, sentence }) => `Zeile ${number} hält diesen Backzettel auf: ${sentence}`,
  'sheet.weight-not-known': ({ name }) => `Was „${name}“ wiegt, ist noch nicht bekannt.`,
  'sheet.as-computed': () => 'wie berechnet',
  'sheet.warmer': ({ apartCelsius }, say) => `${say.celsiusApart(apartCelsius)} wärmer`,
  'sheet.colder': ({ apartCelsius }, say) => `${say.celsiusApart(apartCelsius)} kälter`,
};

type Held = Args<'seconds' | 'celsius'>;

function long({ seconds, celsius }: Held, say: Speaker): string {
  return `${say.duration(seconds)} bei ${say.celsius(celsius)}`;
}
