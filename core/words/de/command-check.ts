import type { commandCheck as english } from '../en/command-check.ts';
import type { Translation } from '../message.ts';

/** Was eine Prüfung neben ihren Befunden sagt, und was eine Umbenennung sagt. */
export const commandCheck: Translation<typeof english> = {
  'command-check.checked': ({ count, otherCount }, say) =>
    `${say.number(count, 0)} von ${say.count(otherCount, { one: '# Datei', other: '# Dateien' })} geprüft`,
  'command-check.more': ({ count }, say) => `und ${say.number(count, 0)} weitere`,
  'command-check.no-rule': ({ code }) =>
    `eine Regel „${code}“ gibt es nicht; „doughwright rules“ listet sie auf.`,
  'command-check.no-rule-meant': ({ code, name }) =>
    `eine Regel „${code}“ gibt es nicht. Gemeint ist ${name}?`,
  'command-check.no-baseline': ({ option }) => `diese Datei gibt es nicht; eine schreiben mit ${option}`,
  'command-check.other-baseline': ({ option }) =>
    `das ist keine Datei bekannter Befunde; eine neue schreiben mit ${option}`,
  'command-check.not-over': () =>
    'gibt es schon und ist keine Datei bekannter Befunde; eine andere nennen oder --force angeben, um sie zu überschreiben.',
  'command-check.stdin': ({ option }) =>
    `„-“ allein ist die Standardeingabe, und ${option} sagt, in welcher Datei ihr Text stehen soll; beides schreiben.`,
  'command-check.fixed': ({ count }, say) =>
    say.count(count, { one: 'in # Datei verbessert', other: 'in # Dateien verbessert' }),
  'command-check.summary': ({ parts, count, otherCount }, say) =>
    `${say.list(parts.map(say.say))} in ${say.number(count, 0)} von ${say.count(otherCount, { one: '# Datei', other: '# Dateien' })}.`,
  'command-check.errors': ({ count }, say) => say.count(count, { one: '# Fehler', other: '# Fehler' }),
  'command-check.warnings': ({ count }, say) => say.count(count, { one: '# Warnung', other: '# Warnungen' }),
  'command-check.more-information': ({ count }, say) =>
    say.count(count, { one: '# Hinweis', other: '# Hinweise' }),
  'command-check.baseline': ({ count, file }, say) =>
    say.count(count, {
      one: `# Befund steht jetzt in ${file}.`,
      other: `# Befunde stehen jetzt in ${file}.`,
    }),
  'command-check.not-as-staged': ({ files, count, command }, say) =>
    say.count(count, {
      one: `${say.list(files)} ist auf der Platte anders als vorgemerkt, und geprüft ist, was vorgemerkt ist; ist es auf der Platte richtig, vormerken: ${command}`,
      other: `# Dateien sind auf der Platte anders als vorgemerkt, und geprüft ist, was vorgemerkt ist: ${say.list(files)}; sind sie auf der Platte richtig, vormerken: ${command}`,
    }),
  'command-check.nothing-staged': () =>
    'dieses Repository hat keine Dateien auf der Platte, also ist darin nichts vorgemerkt.',
  'command-check.watching': () => 'Wartet auf Änderungen; Strg+C beendet.',

  'command-rename.none': ({ name }) =>
    `hier wird nichts als „${name}“ definiert; auf die Schreibweise achten.`,
  'command-rename.none-meant': ({ name, otherName }) =>
    `nichts ist hier als „${name}“ definiert. Gemeint ist „${otherName}“?`,
  'command-rename.several': ({ name, files }, say) =>
    `„${name}“ wird definiert in ${say.list(files)}; die Datei nennen, die gemeint ist.`,
  'command-rename.not-written': ({ option }) => `Nichts wurde geschrieben; ${option} schreibt es.`,

  'command-check.error': () => 'Fehler',
  'command-check.warning': () => 'Warnung',
  'command-check.information': () => 'Information',
  'command-check.hint': () => 'Hinweis',
};
