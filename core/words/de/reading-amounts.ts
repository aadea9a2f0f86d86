import type { readingAmounts as english } from '../en/reading-amounts.ts';
import type { Translation } from '../message.ts';

/** Wie Mengen und Zusätze geschrieben werden. */
export const readingAmounts: Translation<typeof english> = {
  'missing-unit.ingredient': ({ written }) =>
    `„${written}“ wovon? Die Einheit fehlt: ${written}% vom Mehl, oder ${written} g.`,
  'missing-unit.planned': ({ written }) =>
    `„${written}“ wovon? Die Einheit fehlt: ${written} pieces (Stück), oder ${written} kg.`,
  'missing-unit.hydration': ({ example }) => `Die Hydration steht in Prozent: ${example}`,
  'missing-unit.counted': ({ written, example }) =>
    `„${written}“ wovon? Was gezählt wird, steht in Stück: ${example}`,
  'missing-unit.times': ({ written, example }) => `„${written}“ wovon? Zu schreiben ist, wie oft: ${example}`,
  'missing-unit.fluid-ounce': ({ written, meant, otherMeant }) =>
    `Eine Flüssigunze ist nicht überall gleich: „${written}“ wird als ${meant} gelesen, die Unze der Vereinigten Staaten; die britische ergibt ${otherMeant}. Besser in Millilitern schreiben.`,
  'missing-unit.fix-imperial': ({ meant }) => `${meant} schreiben, die britische Unze`,
  'missing-unit.other': ({ written, example }) => `„${written}“ wovon? Die Einheit fehlt: ${example}`,
  'missing-unit.minutes': ({ written, meant }) => `Bei „${written}“ fehlt die Einheit der Minuten: ${meant}`,
  'missing-unit.time-in-words': ({ written, meant }) =>
    `„${written}“ ist eine Zeit. Mit ihrer Einheit geschrieben: ${meant}`,
  'missing-unit.overnight': ({ written, example }) =>
    `„${written}“ ist wie viele Stunden? Die Uhr braucht sie: ${example}`,
  'missing-unit.one-sign': ({ meant }) => `Ein % genügt: ${meant}`,
  'missing-unit.no-unit': ({ written, unit, meant }) =>
    `„${written}“ ist keine Einheit, wohl aber „${unit}“: ${meant}`,
  'missing-unit.letters': ({ written, unit, meant }) =>
    `„${written}“ ist keine Einheit, wohl aber „${unit}“, mit genau diesen Buchstaben: ${meant}`,
  'missing-unit.dozens': ({ meant }) => `Dutzende werden in Stück gezählt: ${meant}`,

  'missing-amount.part': ({ name, example }) => `„${name}“ geht ganz hinein. Das schreibt sich: ${example}`,
  'missing-amount.none': ({ name, example }) => `Wie viel „${name}“? Die Menge steht dahinter: ${example}`,
  'missing-amount.unfinished': ({ written, example }) => `„${written}“ ist nicht fertig: ${example}`,
  'missing-amount.figure': ({ written, meant }) =>
    `„${written}“ ist nicht fertig. Die Menge braucht ihre Einheit, zum Beispiel ${meant} oder 20 g.`,
  'missing-amount.to-how-much': ({ written, example }) => `Auf wie viel ${written}? ${example}`,
  'missing-amount.open-quote': () =>
    'Das Anführungszeichen, das hier beginnt, ist nicht geschlossen. Das zweite " gehört gleich hinter den Namen.',

  'no-amount.other-quantity': ({ written }) =>
    `„${written}“ ist keine Menge. Möglich sind Prozent vom Mehl, ein Gewicht, ein Volumen oder Stück.`,
  'no-amount.dough-yield': ({ written, meant }) =>
    `„${written}“ ist die Teigausbeute. Ihr Wasser steht so da: ${meant}`,
  'no-amount.parts': ({ written, meant }) =>
    `„${written}“ sind Teile wovon? Prozente sind vom Mehl des Abschnitts: Ein Teil Mehl ist 100%, und „${written}“ daneben sind ${meant}.`,
  'no-amount.planned': ({ written, example }) =>
    `„${written}“ lässt sich nicht planen. Möglich sind Stück oder ein Gewicht: ${example}`,
  'no-amount.sum': ({ written, meant }) =>
    `„${written}“ sind zwei Mengen. Hierher gehört ihre Summe: ${meant}`,
  'no-amount.two-units': ({ written, meant }) =>
    `„${written}“ ist ein Gewicht in zwei Einheiten. In einer geschrieben: ${meant}`,
  'no-amount.point-first': ({ meant }) => `Vor den Punkt gehört eine Ziffer: ${meant}`,
  'no-amount.point-last': ({ meant }) => `Ohne Ziffer dahinter steht kein Punkt: ${meant}`,
  'no-amount.rest': ({ written, meant }) =>
    `„${written}“ ist keine Menge. Was an 100 % Mehl fehlt, schreibt sich: ${meant}`,
  'no-amount.any-weight': ({ written }) =>
    `„${written}“ kann jedes Gewicht sein. Zu schreiben ist, was es wiegt, zum Beispiel 2 g.`,
  'no-amount.no-figure': ({ written }) =>
    `„${written}“ ist keine Menge. Zu schreiben ist, wie viel es meist ist, zum Beispiel 2% oder 20 g.`,

  'amount-first.name-first': ({ example }) => `Zuerst kommt der Name, dann die Menge: ${example}`,
  'amount-first.counted': ({ example }) =>
    `Zuerst kommt der Name, und was gezählt wird, steht in Stück: ${example}`,
  'amount-first.planned': ({ example }) => `Zuerst kommt der Name, dahinter die Anzahl: ${example}`,

  'negative-amount.negative': () => 'Eine Menge kann nicht negativ sein. Das Minuszeichen entfernen.',
  'negative-amount.plus': ({ written }) =>
    `„${written}“: mehr als was? Eine Menge sagt, wie viel es im Ganzen ist. Die ganze Menge schreiben.`,

  'range.one-value': ({ written }) =>
    `„${written}“ ist ein Bereich; gebraucht wird ein Wert. Ein Ende wählen und das andere als Kommentar behalten.`,
  'range.both-units': ({ meant }) => `Beide Enden brauchen ihre Einheit: ${meant}`,

  'two-readings.two-ways': ({ written, choices }, say) =>
    `„${written}“ lässt sich auf zwei Arten lesen. Eindeutig ist ${say.anyOf(choices)}.`,
  'two-readings.groups': ({ written, meant }) =>
    `„${written}“ ist in Dreiergruppen geschrieben. Ohne sie: ${meant}.`,
  'two-readings.or-name': ({ written, meant, name, example }) =>
    `„${written}“ lässt sich auf zwei Arten lesen. Eindeutig ist ${meant}, oder zwei Leerzeichen, wenn „${name}“ der Name ist: ${example}`,

  'point-or-thousand.read-as': ({ written, meant, otherMeant }) =>
    `„${written}“ wird als ${meant} gelesen. Als ${meant} oder ${otherMeant} geschrieben, liest es niemand anders.`,

  'missing-comma.warmth': ({ written, meant }) =>
    `Wie warm es ist, steht hinter einem Komma: „${written}“ ist ${meant}`,
  'missing-comma.before': ({ written, example }) => `Vor „${written}“ gehört ein Komma: ${example}`,

  'after-amount.ingredient': ({ written, example }) =>
    `Hinter der Menge stehen nur ein Komma und eine Temperatur: ${example}. „${written}“ gehört hinter ein #.`,
  'after-amount.planned': ({ written, example }) =>
    `Hinter der Menge stehen nur ein Komma und eine Zeit: ${example}. „${written}“ gehört hinter ein #.`,
  'after-amount.meant': ({ written, meant }) => `„${written}“ schreibt sich: ${meant}`,

  'unknown-option.warmth': ({ written, meant }) =>
    `Hinter dem Komma steht eine Temperatur mit „at“: „${written}“ ist ${meant}`,
  'unknown-option.ingredient': ({ written }) =>
    `Hinter dem Komma steht eine Temperatur, zum Beispiel „at 8 °C“; „${written}“ ist hier nicht bekannt. Andere Worte gehören hinter ein #.`,
  'unknown-option.planned': ({ written }) =>
    `Hinter dem Komma steht eine Zeit, zum Beispiel „ready 07:15“; „${written}“ ist hier nicht bekannt. Andere Worte gehören hinter ein #.`,

  'unreadable.encoding': () =>
    'Ein Buchstabe ist hier nicht lesbar. Die Datei als UTF-8 speichern und den Buchstaben neu schreiben.',
  'unreadable.unseen': ({ code }) => `Hier steht ein unsichtbares Zeichen (${code}). Es ist zu entfernen.`,
  'unreadable.character': ({ written }) =>
    `„${written}“ kann hier nicht stehen. Entfernen, oder den Namen in Anführungszeichen setzen: "…".`,
  'unreadable.mark': ({ written }) => `Eine Zeile braucht kein Zeichen wie „${written}“ davor.`,
  'unreadable.ruled': () =>
    'Eine Trennlinie bedeutet hier nichts. Stattdessen eine Leerzeile lassen oder einen Kommentar daraus machen.',
  'unreadable.comment': ({ written }) => `Ein Kommentar beginnt mit #, nicht mit „${written}“.`,
  'unreadable.table': () => 'Eine Tabelle braucht hier kein „|“: Leerzeichen trennen die Spalten.',
  'unreadable.quotes': () => 'Anführungszeichen sind die geraden der Tastatur, zum Beispiel "7-grain mix".',
  'unreadable.digits': () => 'Zahlen werden mit einfachen Ziffern geschrieben, zum Beispiel 12.5%.',
  'unreadable.around': ({ written }) => `Worte brauchen kein „${written}“ um sich.`,
  'unreadable.between': ({ written }) => `Hierher gehört kein „${written}“: ein Leerzeichen genügt.`,
  'unreadable.full-stop': () => 'Eine Zeile endet ohne Punkt.',
  'unreadable.semicolon': () => 'Eine Zeile endet ohne Strichpunkt.',
  'unreadable.merge': () =>
    'Hier ist ein Merge nicht beendet. Die gültigen Zeilen behalten und die entfernen, die die beiden Seiten markieren.',
  'beyond-limit.most': ({ written, meant }) =>
    `„${written}“ ist mehr, als in einer Backstube gemeint sein kann, und zählt nicht mit. Höchstens ${meant} schreiben.`,
  'beyond-limit.between': ({ written, meant, otherMeant }) =>
    `„${written}“ liegt außerhalb dessen, was in einer Backstube gemeint sein kann, und zählt nicht mit. Von ${meant} bis ${otherMeant} schreiben.`,
};
