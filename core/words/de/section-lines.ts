import type { sectionLines as english } from '../en/section-lines.ts';
import type { Translation } from '../message.ts';

/** Zeilen eines Abschnitts, die eine andere wiederholen, die fehlen oder die nichts bewirken: Eigenschaften, Zugaben, „accept“. */
export const sectionLines: Translation<typeof english> = {
  'unknown-accept.none': ({ code }) => `Kein Befund hat den Code „${code}“.`,
  'unknown-accept.meant': ({ code, meant }) => `Kein Befund hat den Code „${code}“. Ist „${meant}“ gemeint?`,

  'unused-accept.writing': ({ code }) =>
    `„${code}“ ist ein Fehler in der Schreibweise der Zeile: er lässt sich nicht annehmen, nur berichtigen.`,
  'unused-accept.nothing-below': () =>
    'Unmittelbar unter dieser Zeile steht in ihrem Abschnitt nichts; deshalb wird nichts angenommen. Das „accept“ gehört ans Ende der Zeile, um die es geht.',
  'unused-accept.none': ({ code }) =>
    `Hier gibt es kein „${code}“, das anzunehmen wäre. Entfernen oder in die Zeile schreiben, um die es geht.`,
  'unused-accept.fix': () => 'Das „accept“ entfernen',

  'said-twice.property': ({ property }) => statedTwice(`„${property}“`),
  'said-twice.water-weight': () => statedTwice('Das Gewicht des Wassers'),
  'said-twice.water-temperature': () => statedTwice('Die Temperatur des Wassers'),
  'said-twice.trial-mixer': () => statedTwice('Der Kneter des Versuchs'),
  'said-twice.first': () => 'zuerst angegeben: es gilt',

  'not-loaded.none': ({ names }, say) =>
    `Keine Zeile lädt ${say.list(names)}; deshalb gilt es als von Anfang an im Kessel.`,
  'not-loaded.fix-more': ({ names, count }, say) =>
    `${say.list([...names, say.count(count, { other: '# weitere' })])} am Anfang laden`,
  'not-loaded.fix': ({ names }, say) => `${say.list(names)} am Anfang laden`,
};

function statedTwice(what: string): string {
  return `${what} ist in diesem Abschnitt schon angegeben, und die erste Angabe gilt. Eine von beiden entfernen.`;
}
