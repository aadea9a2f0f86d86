import type { session as english } from '../en/session.ts';
import type { Translation } from '../message.ts';

/** Was der Sprachserver neben Befunden und Antworten sagt, und was jedes Programm von seiner Sprache sagt. */
export const session: Translation<typeof english> = {
  'session.no-history': () =>
    'dieser Editor läuft, wo git nicht gefragt werden kann; den Ordner in einem Editor auf dem Rechner öffnen.',
  'session.language-not-loaded': ({ code }) =>
    `Die Worte der Sprache „${code}“ lassen sich nicht laden: ihre Datei fehlt oder ist beschädigt. Alles ist Englisch, bis Doughwright neu installiert ist.`,
  'session.reading': () => 'Rezepturen werden gelesen',
  'session.read-so-far': ({ count, otherCount }, say) =>
    `${say.number(count, 0)} von ${say.count(otherCount, { one: '# Datei', other: '# Dateien' })}`,
  'session.changed-since-offered': () => 'Der Text hat sich geändert, seit dies angeboten wurde.',
  'session.changed-meanwhile': () => 'Der Text hat sich inzwischen geändert.',
  'session.cannot-be-done': ({ name }) => `„${name}“ ist hier nicht möglich.`,
  'session.not-used': () => 'nicht verwendet',
  'session.no-plan': () => 'Die Schreibmarke in einen Abschnitt setzen, der mit „plan NAME:“ beginnt.',
  'session.no-experiment': () =>
    'Die Schreibmarke in einen Abschnitt setzen, der mit „experiment NAME:“ beginnt.',
  'session.no-table': () => 'Die Tabelle ließ sich nicht lesen; das Protokoll sagt, warum.',
  'session.no-edit': () => 'Die Änderung war nicht möglich; das Protokoll sagt, warum.',
  'session.file-not-known': () => 'Die Datei ist weder offen noch im Arbeitsbereich.',

  'session.no-level': ({ setting, code, written, choices }, say) =>
    `Einstellung ${setting}, ${code}: ${written} ist keine Stufe; ${say.anyOf(choices)} schreiben.`,
  'session.no-switch': ({ setting, written }) =>
    `Einstellung ${setting}: ${written} passt nicht; true oder false schreiben.`,
  'session.no-choice': ({ setting, written, choices }, say) =>
    `Einstellung ${setting}: ${written} passt nicht; ${say.anyOf(choices)} schreiben.`,
  'session.no-celsius': ({ setting, written, leastNumber, mostNumber }, say) =>
    `Einstellung ${setting}: ${written} passt nicht; Grad Celsius von ${say.number(leastNumber, 0)} bis ${say.number(mostNumber, 0)} schreiben, ohne Einheit.`,
  'session.no-count': ({ setting, written }) =>
    `Einstellung ${setting}: ${written} passt nicht; eine ganze Zahl über 0 schreiben.`,

  'file-too-large.whole': () =>
    'Diese Datei ist größer als 4 MiB, deshalb wird nichts darin berechnet; auf mehrere Dateien aufteilen.',
};
