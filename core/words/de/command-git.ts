import type { commandGit as english } from '../en/command-git.ts';
import type { Translation } from '../message.ts';

/** Revisionen, und was git beigebracht wird. */
export const commandGit: Translation<typeof english> = {
  'command-git.not-installed': () => 'git ist nicht installiert oder nicht im Pfad.',
  'command-git.not-started': () => 'git ließ sich nicht starten.',
  'command-git.ended': ({ number }, say) => `git endete mit ${say.number(number, 0)}.`,
  'command-git.stopped': () => 'git wurde angehalten.',
  'command-git.said': ({ written }) => `git: ${written}`,
  'command-git.no-revision': ({ revision }) => `diese Revision gibt es nicht: ${revision}`,
  'command-git.no-commit': () =>
    'dieses Repository hat noch keinen Commit; seine Geschichte beginnt mit dem ersten „git commit“.',
  'command-git.unreadable': ({ command }) =>
    `git kann seine Dateien jener Revision nicht lesen; „${command}“ versuchen.`,
  'command-git.outside': ({ file }) => `${file}: liegt außerhalb des Repositorys.`,
  'command-git.no-files': ({ option }) =>
    `dieses Repository hat keine Dateien auf dem Datenträger; zwei Revisionen vergleichen mit ${option}.`,
  'command-git.not-at': ({ revision }) =>
    `in ${revision} gibt es keine Rezepturdatei dieses Namens oder darunter.`,
  'command-git.two-revisions': ({ option, command }) => `${option} nimmt zwei Revisionen: ${command}`,
  'command-git.on-neither-side': ({ file }) =>
    `${file}: eine Rezepturdatei dieses Namens oder darunter gibt es auf keiner Seite.`,
  'command-git.two-places': () =>
    'zwei Dateien oder zwei Ordner nennen, oder --since REVISION oder --between OLD NEW nehmen.',
  'command-git.file-and-folder': ({ file, otherFile }) =>
    `${file} und ${otherFile} sind eine Datei und ein Ordner; zwei von einer Art nennen.`,
  'command-git.no-text': ({ file, revision }) =>
    `${file} in ${revision}: das ist kein reiner Text oder größer als 4 MiB.`,
  'command-git.no-submodule': ({ file, revision, commit, command }) =>
    `${file} in ${revision}: dieses Submodul ist bei ${commit} nicht da; „git submodule update --init“ und „${command}“ aufrufen.`,
  'command-git.for-git': () => 'git übergibt einen Pfad und zwei Dateien; dies ruft git selbst auf.',
  'command-git.in-conflict': ({ file, command }) =>
    `${file}: im Konflikt; über die markierten Zeilen entscheiden, dann „${command}“.`,
  'command-git.not-text': ({ count, code }, say) =>
    `kein reiner Text: ${say.count(count, { one: '# Byte', other: '# Bytes' })}, SHA-256 ${code}`,

  'command-git.hydration': ({ fraction }, say) => `Hydration ${say.percent(fraction)}`,
  'command-git.salt': ({ fraction }, say) => `Salz ${say.percent(fraction)}`,
  'command-git.prefermented-flour': ({ fraction }, say) => `Mehl im Vorteig ${say.percent(fraction)}`,
  'command-git.flour': ({ grams }, say) => `Mehl ${say.mass(grams)}`,
  'command-git.dough': ({ grams }, say) => `Teig ${say.mass(grams)}`,
  'command-git.not-known': ({ names }, say) =>
    `nicht bekannt, zählt weder als Mehl noch als Wasser: ${say.list(names)}`,
  'command-git.unfinished': () => 'hier ist ein Merge nicht beendet: nichts wird zusammengezählt',

  'command-git.nothing-to-undo': () => 'Es gibt nichts zurückzunehmen.',
  'command-git.all-set': () => 'Alles ist schon eingerichtet.',
  'command-git.repository': ({ file }) => `Im Repository ${file}:`,
  'command-git.nothing-changed': () => 'Nichts wurde geändert.',
  'command-git.undone': () => 'Zurückgenommen.',
  'command-git.done': ({ command }) => `Fertig. „${command}“ nimmt es zurück.`,
  'command-git.add-line': ({ file, written }) => `${file}   die Zeile anfügen: ${written}`,
  'command-git.take-line-out': ({ file, written }) => `${file}   die Zeile herausnehmen: ${written}`,
  'command-git.write-script': ({ file, command }) => `${file}   das Skript schreiben, das ${command} aufruft`,
  'command-git.remove-script': ({ file }) => `${file}   das Skript löschen, und was es aufbewahrt`,
  'command-git.set': ({ file, setting, written }) => `${file}   setzen: ${setting} = ${written}`,
  'command-git.change': ({ file, setting, written }) => `${file}   ändern: ${setting} = ${written}`,
  'command-git.remove-section': ({ file, setting }) => `${file}   den Abschnitt ${setting} löschen`,
  'command-git.without-asking': ({ option }) => `Um das ungefragt zu tun, ${option} angeben.`,
  'command-git.shall-i': () => 'Soll das geschehen? (ja/nein)',
  'command-git.yes': () => 'ja',
};
