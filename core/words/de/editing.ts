import type { editing as english } from '../en/editing.ts';
import type { Translation } from '../message.ts';

/** Was beim Ändern einer Datei gesagt wird: warum ein Name bleibt, warum eine Messung nicht festgehalten wird, womit man anfängt. */
export const editing: Translation<typeof english> = {
  'rename.no-name': () => 'Hier steht kein Name.',
  'rename.not-a-name': ({ number, file, name }) =>
    `In Zeile ${number} von ${file} würde „${name}“ nicht als Name gelesen. Einen anderen wählen.`,
  'rename.role': ({ name }) =>
    `„${name}“ ist ein Wort der Notation für alles seiner Art und lässt sich nicht umbenennen.`,
  'rename.catalogue': ({ name }) =>
    `„${name}“ ist ein Name des eingebauten Katalogs und lässt sich nicht umbenennen. In dieser Zeile einen anderen Namen schreiben oder diesen definieren.`,
  'rename.several': ({ name, count }, say) =>
    `„${name}“ ist dort, wo danach gesucht wird, ${say.count(count, { other: '#-mal' })} definiert; welche Definition gemeint ist, bleibt offen. An einer der Definitionen umbenennen.`,
  'rename.no-part': ({ name }) => `Kein Teil der Rezeptur heißt „${name}“; es gibt also nichts umzubenennen.`,
  'rename.not-defined': ({ name }) =>
    `„${name}“ ist nicht definiert; es gibt also nichts umzubenennen. Zuerst definieren.`,
  'rename.lent': ({ name }) =>
    `Der Abschnitt von „${name}“ gibt nur zum Teil an, was es ist; das Übrige kommt von dem, was anderswo so heißt. Zuerst „like ${name}“ in den Abschnitt schreiben, dann umbenennen.`,
  'rename.empty': () => 'Einen Namen schreiben.',
  'rename.quote-mark': () => 'Ein Name enthält keine Anführungszeichen.',
  'rename.to-role': ({ name }) =>
    `„${name}“ ist ein Wort der Notation für alles seiner Art. Einen anderen Namen wählen.`,
  'rename.formula-itself': ({ name }) => `Die Rezeptur selbst heißt „${name}“. Einen anderen Namen wählen.`,
  'rename.part-already': ({ name }) =>
    `Die Rezeptur hat schon einen Teil namens „${name}“. Einen anderen Namen wählen.`,
  'rename.would-mean-part': ({ number, name }) =>
    `Zeile ${number} nennt „${name}“ schon und würde dann den Teil meinen. Einen anderen Namen wählen.`,
  'rename.defined-already': ({ name, number, file }) =>
    `„${name}“ ist schon in Zeile ${number} von ${file} definiert. Einen anderen Namen wählen.`,
  'rename.would-lend': ({ name }) =>
    `So heißt schon etwas: von „${name}“ käme alles, was dieser Abschnitt nicht selbst angibt. Einen anderen Namen wählen.`,
  'rename.other-lent': ({ number, file, name }) =>
    `Der Abschnitt in Zeile ${number} von ${file} überlässt manches von „${name}“ einer anderen Stelle und würde dann etwas anderes bedeuten. Zuerst eine Zeile „like“ hineinschreiben oder einen anderen Namen wählen.`,
  'rename.means-already': ({ number, file, name }) =>
    `In Zeile ${number} von ${file} bedeutet „${name}“ schon etwas anderes. Einen anderen Namen wählen.`,
  'rename.would-mean': ({ number, file, name }) =>
    `In Zeile ${number} von ${file} würde „${name}“ dann etwas anderes bedeuten. Einen anderen Namen wählen.`,

  'log-reading.no-day': ({ example }) =>
    `Ein Knetversuch braucht den Tag, an dem er war, zum Beispiel ${example}.`,
  'log-reading.temperature': ({ fromCelsius, toCelsius }, say) =>
    `Eine Teigtemperatur liegt zwischen ${say.celsius(fromCelsius)} und ${say.celsius(toCelsius)}.`,
  'log-reading.nothing': () =>
    'Eine Messung hat eine Temperatur, eine Teigstufe oder ein Wort dafür, wie sich der Teig anfühlt.',
  'log-reading.minute': ({ minutes }, say) =>
    `Die Minute zählt ab Knetbeginn, 0 bis ${say.number(minutes, 0)}.`,
  'log-reading.stage': ({ words }, say) => `Eine Teigstufe ist eine von diesen: ${say.list(words)}.`,
  'log-reading.feel': ({ words }, say) =>
    `Wie sich der Teig anfühlt, ist eines von diesen: ${say.list(words)}.`,
  'log-reading.no-minute': () => 'Eine Messung einer Versuchsreihe braucht ihre Minute ab Knetbeginn.',
  'log-reading.no-experiment': () => 'Die Versuchsreihe ist nicht mehr in der Datei.',
  'panel.formula-removed': () => 'Die Rezeptur ist nicht mehr in der Datei.',

  'template.plain': () => 'Einfacher Teig',
  'template.plain-how': () => 'Mehl, Wasser, Salz und Hefe, mit der Maschine geknetet',
  'template.preferment': () => 'Mit Vorteig',
  'template.preferment-how': () => 'ein Poolish vom Vorabend, aus der Rezeptur entnommen',
  'template.hand': () => 'Von Hand geknetet',
  'template.hand-how': () => 'zwei Brote auf dem Tisch, mit Ruhezeiten und Dehnen und Falten',
};
