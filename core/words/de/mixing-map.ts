import type { mixingMap as english } from '../en/mixing-map.ts';
import type { Translation } from '../message.ts';

/** Die Karte der Knettoleranz: was ein Teig ist, je nachdem, wann der Kneter steht. */
export const mixingMap: Translation<typeof english> = {
  'map.title': () => 'Die Karte der Knettoleranz',
  'map.heading': ({ name, place }, say) => `${name}, ${say.say(place)}: die Karte der Knettoleranz`,
  'map.axis-water': () => 'Hydration',
  'map.axis-flour': ({ name, otherName }) => `${otherName} statt ${name}`,
  'map.axis-speed': () => 'Letzte Zeile in',
  'map.not-yet': () => 'noch nicht ausgeknetet',
  'map.this-formula': () => 'diese Rezeptur',
  'map.across-water': () =>
    'Nach rechts laufen die Minuten des Knetens, nach oben die Hydration: dieselbe Rezeptur mit weniger und mit mehr Wasser.',
  'map.across-flour': ({ name, otherName }) =>
    `Nach rechts laufen die Minuten des Knetens; nach oben tritt ${otherName} nach und nach an die Stelle von ${name}, das Wasser bleibt.`,
  'map.across-speed': () =>
    'Nach rechts laufen die Minuten des Knetens; nach oben läuft die letzte Zeile des Knetprogramms in jedem Gang des Kneters.',
  'map.minutes-run': () =>
    'Die Minuten laufen, wie das Knetprogramm geschrieben ist, Ruhezeiten eingeschlossen, und nach seinem Ende, als liefe der letzte Gang weiter. Jede Reihe hat ihr eigenes Schüttwasser für das Knetprogramm, wie es geschrieben ist.',
  'map.mark': ({ minutes, state }, say) =>
    `Diese Rezeptur hört nach ${say.minutes(minutes)} auf: ${say.say(state)}.`,
  'map.gap': ({ minutes }, say) => `Von ausgeknetet bis zum Nachlassen hat sie etwa ${say.minutes(minutes)}.`,
  'map.no-let-down': () => 'So lange sie auch geknetet wird, sie lässt nicht nach.',
  'map.gap-far': () => 'Bis sie nachlässt, dauert es noch lange.',
  'map.gap-narrow': ({ lowMinutes, written, otherWritten }, say) =>
    `Von allen Reihen ist die Knettoleranz bei ${written} am kleinsten, etwa ${say.minutes(lowMinutes)}; bei ${otherWritten} lässt der Teig noch lange nicht nach.`,
  'map.gap-between': ({ lowMinutes, written, highMinutes, otherWritten }, say) =>
    `Von allen Reihen ist die Knettoleranz bei ${written} am kleinsten, etwa ${say.minutes(lowMinutes)}, und bei ${otherWritten} am größten, etwa ${say.minutes(highMinutes)}.`,
  'map.too-warm': ({ limitCelsius, minutes }, say) =>
    `Über ${say.celsius(limitCelsius)} und damit zu warm ist sie ab ${say.minutes(minutes)}.`,
  'map.too-warm-if': ({ limitCelsius, minutes }, say) =>
    `Über ${say.celsius(limitCelsius)} und damit zu warm wäre sie ab ${say.minutes(minutes)}, wenn der letzte Gang weiterliefe.`,
  'map.never-too-warm': ({ limitCelsius }, say) => `Über ${say.celsius(limitCelsius)} kommt sie nicht.`,
  'map.above': ({ limitCelsius }, say) => `über ${say.celsius(limitCelsius)}: zu warm`,
  'map.wished': ({ degree, lowMinutes, highMinutes }, say) =>
    `Wie gewünscht geknetet, mit ${say.say(degree)}, ist sie ab etwa ${say.minutesBand(lowMinutes, highMinutes)}.`,
  'map.as-wished': () => 'geknetet wie gewünscht',
  'map.developed-from': () => 'Ausgeknetet ab',
  'map.let-down-from': () => 'Lässt nach ab',
  'map.breakdown-from': () => 'Überknetet ab',
  'map.too-warm-from': () => 'Zu warm ab',
  'map.gap-head': () => 'Toleranz',
  'map.never': () => 'nie',
  'map.readings': () => 'Messungen der Knetversuche',
  'map.no-work': () => 'das Knetprogramm bearbeitet keinen Teig',
  'map.no-water': () => 'der Teig hat keine Zeile mit Wasser, deren Menge sich ändern lässt',
  'map.no-flour': () => 'der Teig hat kein Mehl, an dessen Stelle ein anderes treten könnte',
  'map.flour-not-found': ({ name }) => `kein Mehl heißt „${name}“`,
  'map.flour-same': ({ name }) => `„${name}“ ist das Mehl der Rezeptur selbst; ein anderes ist zu nennen`,
  'map.no-speeds': ({ name }) =>
    `${name} hat keinen anderen Gang für die letzte Zeile; gegen Wasser oder Mehl lässt sich eine Karte zeichnen`,
  'map.rows-left-out': ({ reason }, say) =>
    `Reihen, für die sich keine Entwicklung berechnen lässt, fehlen: ${say.say(reason)}.`,
  'map.one-drawing': ({ names }, say) =>
    `eine Zeichnung zeigt eine Rezeptur; mit --formula ist zu sagen, welche von ${say.list(names)}`,
  'map.none': ({ name, reason }, say) =>
    `Für ${name} gibt es keine Karte der Knettoleranz: ${say.say(reason)}.`,
};
