import type { commandFiles as english } from '../en/command-files.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Dateien, die ein Befehl liest und schreibt, und was er darin nicht findet. Steht jeweils hinter dem Pfad und einem Doppelpunkt. */
export const commandFiles: Translation<typeof english> = {
  'command-files.missing': () => 'gibt es nicht, weder als Datei noch als Ordner; die Schreibweise prüfen.',
  'command-files.folder': () => 'das ist ein Ordner; eine Datei nennen.',
  'command-files.no-permission': () => 'darf nicht gelesen werden; sich das Recht dazu geben.',
  'command-files.too-large': () => 'diese Datei ist größer als 4 MiB; auf mehrere aufteilen.',
  'command-files.binary': () =>
    'Zeile 1: das ist kein reiner Text; eine Rezeptur ist Text, gespeichert als UTF-8.',
  'command-files.binary-table': () =>
    'Zeile 1: das ist kein reiner Text; eine Tabelle ist Text, gespeichert als UTF-8.',
  'command-files.broken': () =>
    'lässt sich nicht lesen; eine gewöhnliche Datei nennen oder nachsehen, ob der Datenträger in Ordnung ist.',
  'command-files.strange-name': () => 'dieser Name lässt sich nicht lesen; einen in UTF-8 geben.',
  'command-files.other-letters': ({ number }, say) =>
    `Zeile ${say.number(number, 0)}: das ist kein UTF-8 und bleibt, wie es ist; die Datei als UTF-8 speichern.`,
  'command-files.empty-folder': () =>
    'keine .dough-Datei in diesem Ordner; versteckte Ordner und was git nicht beachtet, bleiben außen vor.',
  'command-files.read-so-far': ({ count }, say) =>
    say.count(count, { one: '# Datei gelesen', other: '# Dateien gelesen' }),
  'command-files.standard-input': () => 'Standardeingabe',

  'command-files.not-written': ({ reason }, say) => `lässt sich nicht schreiben: ${say.say(reason)}`,
  'command-files.left-as-was': ({ reason }, say) =>
    `ließ sich nicht schreiben und ist, wie es war: ${say.say(reason)}`,
  'command-files.output-not-written': ({ reason }, say) =>
    `die Standardausgabe lässt sich nicht schreiben: ${say.say(reason)}`,
  'command-files.no-folder': () => 'diesen Ordner gibt es nicht; ihn anlegen oder eine andere Datei nennen.',
  'command-files.no-folder-here': () => 'diesen Ordner gibt es nicht; ihn anlegen.',
  'command-files.is-folder': () => 'das ist ein Ordner; eine Datei nennen.',
  'command-files.no-right': () =>
    'dort darf nicht geschrieben werden; sich das Recht dazu geben oder eine andere Datei nennen.',
  'command-files.no-right-here': () => 'dort darf nicht geschrieben werden; sich das Recht dazu geben.',
  'command-files.disk-full': () => 'der Datenträger ist voll; Platz schaffen.',
  'command-files.disk-trouble': () =>
    'nachsehen, ob der Datenträger in Ordnung ist, oder eine andere Datei nennen.',
  'command-files.disk-trouble-here': () => 'nachsehen, ob der Datenträger in Ordnung ist.',
  'command-files.is-formula': () =>
    'das ist eine Rezepturdatei, und was geschrieben würde, ist keine Rezeptur; eine andere Datei nennen.',
  'command-files.formula-there': () =>
    'diese Rezepturdatei gibt es schon; eine andere nennen oder --force angeben, um sie zu überschreiben.',
  'command-files.leads-out': () =>
    'das führt durch einen Verweis aus seinem Ordner hinaus, und was dort liegt, bleibt unberührt; jene Datei nennen.',
  'command-files.no-ordinary-file': () =>
    'das ist keine gewöhnliche Datei; eine andere nennen, oder sie für die Standardausgabe weglassen.',
  'command-files.link-out': () =>
    'das ist ein Verweis aus seinem Ordner hinaus, und sein Ziel bleibt unberührt; jene Datei nennen.',

  'command-files.no-formula': () =>
    'hier ist keine Rezeptur; eine Rezeptur beginnt mit einer Zeile „formula NAME:“.',
  'command-files.no-formula-named': ({ name, names }, say) =>
    `hier ist keine Rezeptur „${name}“; es gibt ${quoted(names, say)}.`,
  'command-files.no-experiment': () =>
    'hier steht keine Versuchsreihe; eine Versuchsreihe beginnt mit einer Zeile „experiment NAME:“.',
  'command-files.no-experiment-named': ({ name, names }, say) =>
    `hier steht keine Versuchsreihe „${name}“; es gibt ${quoted(names, say)}.`,
  'command-files.no-plan': () => 'hier ist kein Plan; ein Plan beginnt mit einer Zeile „plan NAME:“.',
  'command-files.no-plan-named': ({ name, names }, say) =>
    `hier ist kein Plan „${name}“; es gibt ${quoted(names, say)}.`,
  'command-files.nothing-to-weigh': () =>
    'noch lässt sich nichts abwiegen; eine Zutat und ihre Menge schreiben.',
  'command-files.to-look-at': () => 'ansehen',
};

function quoted(names: readonly string[], say: Speaker): string {
  return say.list(names.map((name) => `„${name}“`));
}
