import type { readingSections as english } from '../en/reading-sections.ts';
import type { Translation } from '../message.ts';

/** Wie Kopfzeilen und Eigenschaften geschrieben werden. */
export const readingSections: Translation<typeof english> = {
  'outside-section.none-above': () =>
    'Diese Zeile steht in keinem Abschnitt. Darüber einen beginnen, zum Beispiel „formula Morning Tin:“.',
  'line-too-long.longer': ({ count }, say) =>
    `Diese Zeile hat mehr als ${say.count(count, { one: '# Zeichen', other: '# Zeichen' })} und wird nicht gelesen. Teilen oder mit # davor zum Kommentar machen.`,

  'missing-colon.at-end': ({ section }) =>
    `Die Zeile, mit der „${section}“ beginnt, endet mit einem Doppelpunkt.`,
  'missing-colon.displaced': ({ section }) =>
    `Der Doppelpunkt gehört ans Ende der Zeile, mit der „${section}“ beginnt.`,
  'missing-colon.goes-on': () =>
    'Eine Zeile, die einen Abschnitt beginnt, endet an ihrem Doppelpunkt. Was folgt, gehört in eine eigene Zeile.',
  'missing-colon.open-quote': () =>
    'Das Anführungszeichen ist nicht geschlossen, und deshalb fehlt der Doppelpunkt.',

  'stray-colon.two': () => 'Ein Doppelpunkt genügt, am Ende der Zeile.',
  'stray-colon.amount': () => 'Zwischen eine Zutat und ihre Menge gehört kein Doppelpunkt.',
  'stray-colon.property': ({ property }) => `Zwischen „${property}“ und den Wert gehört kein Doppelpunkt.`,
  'stray-colon.no-section': () => 'Ein Doppelpunkt beendet nur die Zeile, die einen Abschnitt beginnt.',
  'stray-colon.no-header': ({ name }) =>
    `Ein Doppelpunkt beendet nur die Zeile, die einen Abschnitt beginnt. „${name}“ und die Menge stehen ohne ihn.`,

  'missing-name.section': ({ section, example }) => `„${section}“ braucht einen Namen: ${example}`,
  'missing-name.base': ({ example }) =>
    `Von welcher Rezeptur ist das eine Abwandlung? Ihr Name folgt auf „like“: ${example}`,
  'missing-name.ingredient': () => 'Welche Zutat? Ihr Name steht vor der Menge.',
  'missing-name.planned': () => 'Welche Rezeptur? Ihr Name steht vor der Menge.',
  'missing-name.step-of': ({ example }) => `Was wird getan? Ein Schritt beginnt mit seinem Wort: ${example}`,
  'missing-name.step': () => 'Was wird getan? Ein Schritt beginnt mit seinem Wort: rest 15 min',
  'missing-mixer.where': () => 'Worin wird geknetet? Das steht dabei: mix in spiral: oder mix by hand:',
  'missing-mixer.said-otherwise': ({ written, meant }) =>
    `„${written}“ schreibt man im Knetprogramm: ${meant}`,
  'missing-date.meant': ({ meant }) => `Ein Knetversuch beginnt mit seinem Datum, das Jahr zuerst: ${meant}`,
  'missing-date.which': ({ meant, otherMeant }) =>
    `Der Tag kann in zwei Monaten liegen. Ein Knetversuch beginnt mit seinem Datum, das Jahr zuerst: ${meant} oder ${otherMeant}`,
  'missing-date.first': () => 'Ein Knetversuch beginnt mit seinem Datum, das Jahr zuerst: trial 2026-03-14:',

  'no-formula.none-above': ({ section }) =>
    `„${section}“ gehört zu einer Rezeptur. Darüber gehört „formula NAME:“.`,
  'no-formula.closed': ({ section, otherSection }) =>
    `„${section}“ gehört zu einer Rezeptur, und „${otherSection}“ darüber hat sie beendet. Den Abschnitt nach oben zu seiner Rezeptur setzen.`,

  'unknown-section.dough': ({ written }) =>
    `Das ist der Teig selbst. Seine Zeilen stehen gleich unter der Kopfzeile der Rezeptur und nicht unter „${written}“.`,
  'unknown-section.meant': ({ written, meant }) =>
    `Kein Abschnitt heißt „${written}“. Ist „${meant}“ gemeint?`,
  'unknown-section.part': ({ example }) => `Eine solche Zeile beginnt einen Teil: ${example}`,
  'unknown-section.none': ({ name, words }, say) =>
    `Kein Abschnitt heißt „${name}“. Abschnitte sind ${say.list(words)}. Die Zeilen bleiben stehen und werden nicht gelesen.`,

  'unknown-property.meant': ({ section, written, meant }) =>
    `„${section}“ hat keine Eigenschaft „${written}“. Ist „${meant}“ gemeint?`,
  'unknown-property.of-formula': ({ written, meant }) =>
    `„${written}“: die Teigtemperatur gehört zur Rezeptur und steht unter deren Kopfzeile: ${meant}`,
  'unknown-property.said-otherwise': ({ section, written, meant }) =>
    `Unter „${section}“ schreibt sich „${written}“: ${meant}`,
  'unknown-property.mix-said': ({ meant }) => `Gelesen als: ${meant}`,
  'unknown-property.mixed': ({ example }) =>
    `Was in einem Knetversuch gelaufen ist, steht hinter „mixed“: ${example}`,
  'unknown-property.none': ({ section, name, words }, say) =>
    `„${section}“ hat keine Eigenschaft „${name}“. Eigenschaften sind ${say.list(words)}.`,
  'unknown-property.note-of-trial': ({ written, meant, words }, say) =>
    `„${written}“ misst ein Knetversuch nicht. Als Notiz bleibt es stehen: ${meant}. Gemessen wird: ${say.list(words)}.`,
  'unknown-property.note-of-flour': ({ written, meant, words }, say) =>
    `Aus „${written}“ wird nichts berechnet. Als Notiz bleibt es stehen: ${meant}. Ein Mehl ist bekannt durch ${say.list(words)}.`,
  'unknown-property.base-temperature': ({ written, example, meant }) =>
    `„${written}“ ist nicht nötig: Das Wasser folgt aus dem Kneten und der Temperatur, die der Teig haben soll, ${example}. Als Notiz bleibt es stehen: ${meant}`,
  'unknown-property.folds': ({ written, meant }) =>
    `„${written}“ sind mehrere Faltungen, vor jeder eine Ruhe, und wie lange eine dauert, steht nicht da. Jede schreibt sich so: ${meant}`,
  'unknown-property.day': ({ written, example }) =>
    `„${written}“: der Tag einer Versuchsreihe steht hinter einem Komma in ihrer Kopfzeile: ${example}`,
  'unknown-property.step': ({ written }) =>
    `„${written}“ ist ein Schritt nach dem Mischen. Über den Schritten steht die Zeile: process:`,

  'two-steps.two': ({ written, otherWritten }) =>
    `„${written}“ und „${otherWritten}“ sind zwei Schritte. Jeder gehört in eine eigene Zeile.`,
  'two-steps.time': ({ written, example }) =>
    `„${written}“ ist eine zweite Zeit, und ein Schritt hat eine. Sie gehört in eine eigene Zeile, oder dahinter steht, was so lange geschieht: ${example}`,
  'cold-without-degrees.taken': ({ written, celsius }, say) =>
    `Zu „${written}“ steht keine Temperatur: ${say.celsius(celsius)} angenommen.`,
  'fold-times.alone': ({ example }) =>
    `Faltungen gehören zu dem Schritt, den sie unterbrechen. Sie stehen hinter ihm: ${example}`,
  'fold-past-end.later': ({ seconds, otherSeconds }, say) =>
    `Eine Faltung nach ${say.duration(seconds)} kommt hinter diesem Schritt, der ${say.duration(otherSeconds)} dauert. Eines davon berichtigen; was später kommt, steht in einer eigenen Zeile.`,
  'fold-times.no-step-time': ({ example }) =>
    `Der Schritt hat keine Zeit, auf die sich seine Faltungen verteilen ließen. Sie gehört hinter den Schritt: ${example}`,

  'missing-value.none': ({ property, example }) => `„${property}“ braucht einen Wert: ${example}`,
  'missing-value.unfinished': ({ property, example }) =>
    `„${property}“ ist nicht fertig. Es liest sich zum Beispiel so: ${example}`,

  'wrong-value.other-form': ({ written, property, example }) =>
    `„${written}“ passt hier nicht. „${property}“ liest sich zum Beispiel so: ${example}`,
  'wrong-value.own-lines': ({ count }) =>
    `Das sind ${count} Zeilen in einer. Jede kommt in eine eigene Zeile.`,
  'wrong-value.dough-part': ({ written, example }) =>
    `„${written}“ sagt weder, worin ein Teig geknetet wird, noch wie lange. Zum Beispiel: ${example}`,
  'wrong-value.meant': ({ written, example }) => `„${written}“ passt hier nicht. Richtig ist: ${example}`,
  'wrong-value.percent-of-what': ({ written, name, meant, otherMeant }) =>
    `${written} von „${name}“ oder vom Mehl? Gemeint ist „${meant}“ oder „${otherMeant}“.`,
  'wrong-value.no-such-word': ({ property, words }, say) => `Für „${property}“ steht ${say.anyOf(words)}.`,
  'wrong-value.currency': () => 'Eine Währung besteht aus drei Großbuchstaben: EUR',
  'wrong-value.fahrenheit': ({ property, meant }) =>
    `„${property}“ kann nicht so warm sein. Ist ${meant} gemeint?`,
  'wrong-value.count-alone': ({ written, example }) =>
    `„${written}“ sagt wie viele und nicht wie schwer, und daraus folgt keine Größe. Dazu schreiben, was eines wiegt, zum Beispiel ${example}, oder es als Notiz behalten.`,
  'wrong-value.piece-too-heavy': ({ meant }) => `Kein Stück wiegt so viel. Ist ${meant} gemeint?`,
  'wrong-value.piece-too-light': ({ meant }) => `Kein Stück wiegt so wenig. Ist ${meant} gemeint?`,
  'wrong-value.negative': ({ property }) => `„${property}“ kann nicht negativ sein.`,
  'wrong-value.zero': ({ property }) => `„${property}“ muss größer als 0 sein.`,
  'wrong-value.not-whole': ({ example }) => `Nur ganze zählen: ${example}`,
  'wrong-value.least-first': ({ example }) => `Das Kleinste kommt zuerst: ${example}`,
  'wrong-value.above-all': ({ property }) => `„${property}“ ist ein Anteil und kann nicht über 100 % liegen.`,
  'wrong-value.nothing-left': ({ property }) => `Bei „${property}“ von 100 % bleibt nichts übrig.`,
  'wrong-value.no-currency': ({ example }) =>
    `In welcher Währung? Sie steht mit drei Großbuchstaben: ${example}`,
  'wrong-value.container': ({ written, example }) =>
    `Wie viel fasst „${written}“? Das ist zu schreiben: ${example}`,
  'wrong-value.price-of': ({ example }) => `Ein Preis wofür? Zu schreiben ist: ${example}`,
};
