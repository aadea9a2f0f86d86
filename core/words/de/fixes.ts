import type { fixes as english } from '../en/fixes.ts';
import type { Translation } from '../message.ts';

/** Wie Abhilfen heißen. */
export const fixes: Translation<typeof english> = {
  'fix.write': ({ meant }) => `${meant} schreiben`,
  'fix.write-plain-sign': () => 'Das einfache Zeichen schreiben',
  'fix.write-percent-sign': () => 'Das Prozentzeichen schreiben',
  'fix.write-hydration': () => '„hydration“ dahinter schreiben',
  'fix.write-balance': () => '„balance“ schreiben: was an 100 % fehlt',
  'fix.take-out': () => 'Entfernen',
  'fix.take-this-line-out': () => 'Diese Zeile entfernen',
  'fix.take-sign-out': ({ written }) => `„${written}“ entfernen`,
  'fix.take-colon-out': () => 'Den Doppelpunkt entfernen',
  'fix.take-line-out': () => 'Diese Zeile entfernen: sie wird entnommen',
  'fix.take-draws-out': () => 'Die Entnahme entfernen: es wird zugegeben',
  'fix.put-colon': () => 'Den Doppelpunkt setzen',
  'fix.put-colon-at-end': () => 'Den Doppelpunkt ans Ende setzen',
  'fix.put-comma': () => 'Das Komma setzen',
  'fix.put-name-first': () => 'Den Namen nach vorn setzen',
  'fix.put-behind-step-above': () => 'Hinter den Schritt darüber setzen',
  'fix.move-below-formula': () => 'Diese Zeilen unter die Kopfzeile der Rezeptur setzen',
  'fix.put-on-own-line': () => 'In eine eigene Zeile setzen',
  'fix.close-quote': () => 'Das Anführungszeichen schließen',
  'fix.make-comment': () => 'Einen Kommentar daraus machen',
  'fix.make-formula': ({ name }) => `Diese Zeilen zur Rezeptur „${name}“ machen`,
  'fix.make-remark': () => 'Eine Anmerkung daraus machen',
  'fix.take-as-name': ({ name }) => `„${name}“ ist der Name`,
  'fix.define-ingredient': ({ name }) => `„${name}“ als Zutat definieren`,
  'fix.define-mixer': ({ name }) => `„${name}“ als Kneter definieren`,
  'fix.draw': ({ meant, name }) => `${meant} von ${name} entnehmen`,
  'fix.draw-through': ({ meant }) => `${meant} des Mehls darin ansetzen`,
};
