import type { Args } from '../args.ts';
import type { mixingOutlook as english } from '../en/mixing-outlook.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Was ein Knetprogramm ergibt, sein Wasser und jede seiner Zeilen. */
export const mixingOutlook: Translation<typeof english> = {
  'place.by-hand': () => 'von Hand',
  'place.in-mixer': ({ name }) => `in ${name}`,

  'outlook.hot-from-start': ({ limitCelsius }, say) =>
    `Viel zu warm: von Anfang an über ${say.celsius(limitCelsius)}.`,
  'outlook.hot': ({ limitCelsius, minutes }, say) =>
    `Viel zu warm: über ${say.celsius(limitCelsius)} nach ${say.minutes(minutes)}.`,
  'outlook.no-end': ({ reason }, say) => `Die Temperatur am Ende ist nicht bekannt: ${say.say(reason)}.`,
  'outlook.as-wanted': (end, say) => `${ended(end, say)}: wie gewünscht.`,
  'outlook.about-as-wanted': (end, say) => `${ended(end, say)}: etwa wie gewünscht.`,
  'outlook.as-usual': (end, say) => `${ended(end, say)}: wie üblich.`,
  'outlook.about-as-usual': (end, say) => `${ended(end, say)}: etwa wie üblich.`,
  'outlook.warmer': (end, say) =>
    `${ended(end, say)}: um ${say.celsiusApart(end.apartCelsius)} ${say.say(end.warmth)}, gewünscht sind ${say.celsius(end.targetCelsius)}.`,
  'outlook.warmer-usual': (end, say) =>
    `${ended(end, say)}: um ${say.celsiusApart(end.apartCelsius)} ${say.say(end.warmth)}, üblich sind ${say.celsius(end.targetCelsius)}.`,
  'outlook.cooler': (end, say) =>
    `${ended(end, say)}: ${say.celsiusApart(end.apartCelsius)} kühler als gewünscht, gewünscht sind ${say.celsius(end.targetCelsius)}.`,
  'outlook.cooler-usual': (end, say) =>
    `${ended(end, say)}: ${say.celsiusApart(end.apartCelsius)} kühler als üblich, üblich sind ${say.celsius(end.targetCelsius)}.`,
  'outlook.stage': ({ stage, programmeMinutes }, say) =>
    `Zustand am Ende: ${say.say(stage)}, nach ${say.minutes(programmeMinutes)} Programm.`,
  'outlook.wished': ({ meant, when }, say) => `Geknetet wie gewünscht (${meant}): ${say.say(when)}.`,
  'outlook.developed': ({ when }, say) => `Ausgeknetet: ${say.say(when)}.`,
  'outlook.past': ({ when, otherWhen }, say) =>
    `Lässt nach: ${say.say(when)}; überknetet: ${say.say(otherWhen)}.`,
  'outlook.no-development': ({ reason }, say) => `Die Entwicklung ist nicht bekannt: ${say.say(reason)}.`,

  'moment.from': ({ lowMinutes, highMinutes }, say) => `ab etwa ${say.minutesBand(lowMinutes, highMinutes)}`,
  'moment.last-speed': ({ lowMinutes, highMinutes }, say) =>
    `etwa ${say.minutesBand(lowMinutes, highMinutes)} im letzten Gang`,
  'moment.far-off': () => 'noch lange nicht',
  'moment.not-known': ({ reason }, say) => `nicht bekannt (${say.say(reason)})`,

  'water.at': ({ waterCelsius }, say) => `Wasser mit ${say.celsius(waterCelsius)}`,
  'water.no-hotter': ({ waterCelsius }, say) => `Wasser mit ${say.celsius(waterCelsius)} und nicht heißer`,
  'water.from-tap': () => 'Leitungswasser',
  'water.tap-at': ({ tapCelsius }, say) => `Leitungswasser mit ${say.celsius(tapCelsius)}`,
  'water.tap-assumed': ({ tapCelsius }, say) => `Leitungswasser, angenommen mit ${say.celsius(tapCelsius)}`,
  'water.ice': (ice, say) =>
    `${say.mass(ice.iceGrams)} Eis und ${say.mass(ice.tapGrams)} Leitungswasser mit ${say.celsius(ice.tapCelsius)}`,
  'water.ice-assumed': (ice, say) =>
    `${say.mass(ice.iceGrams)} Eis und ${say.mass(ice.tapGrams)} Leitungswasser, angenommen mit ${say.celsius(ice.tapCelsius)}`,
  'water.caution': () => 'Vorsicht: so heißes Wasser verbrüht und tötet Hefe, auf die es trifft.',
  'water.warm-the-rest': ({ doughCelsius }, say) =>
    `Auch damit endet der Teig bei ${say.celsius(doughCelsius)}: Mehl oder Raum wärmer halten.`,
  'water.little': (lever, say) =>
    `Es ist zu wenig, um viel zu bewirken: um ${say.celsiusApart(lever.colderCelsius)} kälteres Wasser macht den Teig am Ende um ${say.celsiusApart(lever.apartCelsius)} kühler.`,
  'water.follows-room': (lever, say) =>
    `Nach ${say.minutes(lever.minutes)} folgt der Teig dem Raum und dem Kneter: um ${say.celsiusApart(lever.colderCelsius)} kälteres Wasser macht ihn am Ende um ${say.celsiusApart(lever.apartCelsius)} kühler.`,
  'water.half-ice': ({ doughCelsius }, say) =>
    `Die Hälfte des Wassers ist Eis, und der Teig endet trotzdem bei ${say.celsius(doughCelsius)}: das Mehl kühlen, kürzer oder langsamer kneten.`,
  'water.no-colder': () => 'Kälteres Wasser ist nicht zur Hand, und Eis brächte weniger als ein halbes Grad.',
  'water.for-dough': ({ targetCelsius, water }, say) =>
    `Für einen Teig von ${say.celsius(targetCelsius)}: ${say.say(water)}.`,
  'water.would-have-to': ({ targetCelsius, waterCelsius }, say) =>
    `Für einen Teig von ${say.celsius(targetCelsius)} müsste es ${say.celsius(waterCelsius)} haben.`,

  'programme.not-known': ({ reason }, say) => `Noch nicht bekannt: ${say.say(reason)}.`,
  'programme.title': ({ name, seconds, doughGrams }, say) =>
    `**${name}** — ${say.duration(seconds)} Programm, ${say.mass(doughGrams)} Teig`,
  'programme.bands': ({ fraction }, say) =>
    `_Das Kneten wird in Bändern gezeigt: gängige Praxis und eigene Anpassung, ±${say.percent(fraction)}, bis eigene Knetversuche bessere Zahlen ergeben._`,
  'programme.line-end': ({ state }, say) => `Am Ende dieser Zeile: **${say.say(state)}**.`,
  'programme.line-end-trial': ({ state }, say) =>
    `Am Ende dieser Zeile, wie berechnet: **${say.say(state)}**.`,
  'programme.goes-in': ({ facts }, say) => `Hinein kommt: ${say.list(facts.map(say.say))}.`,
  'programme.portion': ({ name, grams }, say) => `${name} ${say.mass(grams)}`,
  'programme.portion-percent': ({ name, fraction }, say) => `${name} ${say.percent(fraction)}`,
  'programme.line-alone': ({ facts }, say) => `Diese Zeile allein: ${say.list(facts.map(say.say))}.`,
  'programme.no-change': () => 'keine Änderung der Temperatur',
  'programme.change': ({ apartCelsius }, say) =>
    `${apartCelsius < 0 ? '' : '+'}${say.celsiusApart(apartCelsius)}`,
  'programme.work': ({ fraction }, say) =>
    `${say.percent(fraction, 0)} der Arbeit, die volle Entwicklung braucht`,
  'programme.state': ({ parts }, say) => parts.map(say.say).join(' · '),
  'programme.minutes': ({ minutes }, say) => `${say.number(minutes, 1)} min`,
  'programme.celsius': ({ celsius }, say) => say.celsius(celsius),
  'programme.ice-left': () => 'noch Eis zu schmelzen',
};

type End = Args<'celsius' | 'bandCelsius'>;

function ended({ celsius, bandCelsius }: End, say: Speaker): string {
  return `Endet bei ${say.celsiusBand(celsius, bandCelsius)}`;
}
