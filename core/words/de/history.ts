import type { history as english } from '../en/history.ts';
import type { Translation } from '../message.ts';

/** Was über die Revisionen aus einer Rezeptur wurde. */
export const history: Translation<typeof english> = {
  'history.hydration': () => 'Hydration',
  'history.salt': () => 'Salz',
  'history.prefermented-flour': () => 'Mehl im Vorteig',
  'history.mix-minutes': () => 'Kneten',
  'history.end-temperature': () => 'Teigtemperatur, berechnet',
  'history.water-temperature': () => 'Schüttwasser',
  'history.cost': () => 'Kosten',
  'history.allergens': () => 'Allergene',
  'history.cost-of-kilogram': ({ amount, currency }, say) => `${say.money(amount, currency)} je kg Teig`,
  'history.cost-at-least': ({ amount, currency }, say) =>
    `mindestens ${say.money(amount, currency)} je kg Teig`,
  'history.no-allergens': () => 'keine',
  'history.not-known': () => 'nicht bekannt',
  'history.none': () => 'keine Angabe',

  'history.so-many': ({ count, trialCount }, say) =>
    `${say.count(count, { one: '# Revision mit einer Änderung', other: '# Revisionen mit einer Änderung' })}, ${say.count(trialCount, { one: '# Knetversuch', other: '# Knetversuche' })}`,
  'history.head-date': () => 'Datum',
  'history.head-commit': () => 'Commit',
  'history.head-author': () => 'von',
  'history.head-changed': () => 'was sich änderte',
  'history.head-words': () => 'in den Worten des Commits',
  'history.new': () => 'neu',
  'history.removed': () => 'entfernt',
  'history.uncommitted': () => 'noch nicht in git',
  'history.renamed-from': ({ name }) => `umbenannt, vorher ${name}`,
  'history.named-anew': ({ name, otherName }) => `${name} umbenannt in ${otherName}`,
  'history.moved-from': ({ file }) => `verschoben aus ${file}`,
  'history.trial-unmeasured': () => 'Knetversuch; die Temperatur am Ende ist nicht notiert',
  'history.trial-measured': ({ celsius }, say) => `Knetversuch, am Ende ${say.celsius(celsius)}`,
  'history.trial-beside': ({ celsius, targetCelsius, commit }, say) =>
    `Knetversuch, am Ende ${say.celsius(celsius)}; berechnet bei ${commit} ${say.celsius(targetCelsius)}`,
  'history.trial-beside-now': ({ celsius, targetCelsius }, say) =>
    `Knetversuch, am Ende ${say.celsius(celsius)}; jetzt berechnet ${say.celsius(targetCelsius)}`,
  'history.chart-of': ({ name, otherName, count }, say) =>
    `${name} von ${otherName} über die Zeit, ${say.count(count, { one: '# Revision setzt', other: '# Revisionen setzen' })} den Wert. Die Tabelle sagt dasselbe.`,
  'history.chart-key': () =>
    'Linie: was im Hauptzweig galt. Punkt: eine Revision, die es änderte. Raute: in einem Knetversuch gemessen. Kreuz: für ihn berechnet.',

  'history.since': ({ name, sentence, meant, otherName, otherWritten }) =>
    `in git: ${name} ${sentence} seit ${meant} (${otherName}: ${otherWritten})`,
  'history.since-first': ({ name, sentence, meant, otherName, otherWritten }) =>
    `in git: ${name} ${sentence} vom ersten Commit an, ${meant} (${otherName}: ${otherWritten})`,

  'history.no-such-formula': ({ name, revision }) =>
    `keine Rezeptur „${name}“ in der Geschichte von ${revision}; auf die Schreibweise achten.`,
  'history.no-such-formula-meant': ({ name, otherName, revision }) =>
    `keine Rezeptur „${name}“ in der Geschichte von ${revision}. Gemeint ist „${otherName}“?`,
  'history.several': ({ name, files }, say) =>
    `mehrere Dateien haben eine Rezeptur „${name}“; eine dahinter nennen: ${say.anyOf(files)}.`,
  'history.no-such-figure': ({ name, names }, say) =>
    `keine Größe „${name}“; es gibt ${say.list(names)} und jede Zutat unter ihrem Namen.`,
  'history.read-so-far': ({ count, otherCount }, say) =>
    `${say.number(count, 0)} von ${say.count(otherCount, { one: '# Revision', other: '# Revisionen' })} gelesen`,
  'history.begins': ({ commit }) =>
    `dieser Klon ist flach: seine Geschichte beginnt bei ${commit}; „git fetch --unshallow“ holt den Rest.`,
};
