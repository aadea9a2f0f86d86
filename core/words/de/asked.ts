import type { asked as english } from '../en/asked.ts';
import type { Translation } from '../message.ts';

/** Was vom Backzettel verlangt wird und nicht geht, und was davon nicht zu lesen ist. */
export const asked: Translation<typeof english> = {
  'asked.not-in-pieces': () =>
    'Nach Stück lässt sich die Größe nicht festlegen: die Rezeptur sagt nicht, was ein Stück wiegt. Eine Ausbeute schreiben, zum Beispiel „yield 24 pieces of 880 g“.',
  'asked.not-every-weight': () =>
    'Die Größe lässt sich noch nicht festlegen: nicht jedes Gewicht der Rezeptur ist bekannt.',
  'asked.not-baked': () =>
    'Nach Gewicht gebacken lässt sich die Größe nicht festlegen: die Rezeptur nennt keinen Backverlust. Ihn schreiben, zum Beispiel „bake loss 12%“.',
  'asked.not-by-bowl': () =>
    'Nach Kesseln lässt sich die Größe nicht festlegen: der Kneter sagt nicht, was sein Kessel fasst. Es in den Abschnitt des Kneters schreiben, zum Beispiel „bowl 5 kg to 60 kg“.',
  'asked.not-on-hand': ({ name }) =>
    `Nach „${name}“ lässt sich die Größe nicht festlegen: der Teig hat nichts davon, oder das Gewicht ist nicht bekannt.`,
  'asked.no-such-mixer': ({ name }) =>
    `Der Kneter „${name}“ ist nicht bekannt, oder mehrere heißen so; der Backzettel gilt für den Kneter der Datei.`,
  'asked.nothing-mixed': () => 'Die Rezeptur hat kein Knetprogramm; der Kneter ändert deshalb nichts.',
  'asked.no-room': ({ celsius }, say) =>
    `Der heutige Raum bleibt außer Acht: ${say.celsius(celsius)} ist keine Temperatur einer Backstube.`,
  'asked.no-flour': ({ celsius }, say) =>
    `Das heutige Mehl bleibt außer Acht: ${say.celsius(celsius)} ist keine Temperatur einer Backstube.`,
  'asked.no-tap': ({ celsius }, say) =>
    `Das heutige Leitungswasser bleibt außer Acht: ${say.celsius(celsius)} ist keine Temperatur einer Backstube.`,
  'asked.no-scale-step': () => 'Die heutige Teilung der Waage bleibt außer Acht: sie muss größer als 0 sein.',
  'asked.not-in-variant': () =>
    'In eine Abwandlung lässt es sich so nicht schreiben. Ist sie ausgeschrieben, lässt es sich übernehmen.',
  'asked.no-line': () =>
    'Die Minuten bleiben weg: das Knetprogramm hat dort inzwischen eine andere Zeile oder andere Minuten.',
  'asked.no-minutes': ({ minutes }, say) =>
    `Die Minuten bleiben weg: ${say.number(minutes, 2)} kann keine Zeile eines Knetprogramms dauern.`,
  'asked.no-water': () =>
    'Das Wasser bleibt weg: der Teig hat keine Zeile mit Wasser in Prozent oder Gewicht, die sich ändern lässt.',
  'asked.no-such-flour': ({ name }) =>
    `Das Mehl bleibt weg: die Rezeptur hat kein Mehl „${name}“, oder nicht jedes Gewicht in ihr ist bekannt.`,
  'asked.no-other-flour': ({ name }) => `Das Mehl bleibt weg: kein anderes Mehl heißt „${name}“.`,
  'asked.no-feel': ({ name }) =>
    `Das Wasser bleibt, wie es ist: wie viel „${name}“ davon aufnimmt, ist nicht bekannt.`,
  'asked.stands-already': () => 'Es steht alles schon so in der Datei.',

  'asked.write-ingredient': () => 'die Zutat und ihr Gewicht schreiben, zum Beispiel "bread flour=12 kg".',
  'asked.write-clock': () => 'eine Uhrzeit von 00:00 bis 23:59 schreiben, zum Beispiel 05:00.',
  'asked.write-count': () => 'eine ganze Zahl größer als 0 schreiben, zum Beispiel 24.',
  'asked.write-weight': () =>
    'ein Gewicht größer als 0 mit seiner Einheit schreiben, zum Beispiel 20 kg oder 850 g.',
  'asked.write-temperature': () => 'eine Temperatur mit ihrer Einheit schreiben, zum Beispiel 26 °C.',
  'asked.write-unit': ({ choices }, say) =>
    `eine Einheit hinter die Zahl schreiben, zum Beispiel ${say.anyOf(choices)}.`,
  'asked.two-readings': ({ choices }, say) =>
    `das kann auf mehr als eine Art gelesen werden: ${say.anyOf(choices)} schreiben.`,
  'asked.beyond': ({ meant }) => `so etwas gibt es in keiner Backstube: höchstens ${meant} schreiben.`,
  'asked.beyond-both': ({ meant, otherMeant }) =>
    `so etwas gibt es in keiner Backstube: von ${meant} bis ${otherMeant} schreiben.`,
};
