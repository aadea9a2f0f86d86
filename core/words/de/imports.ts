import type { imports as english } from '../en/imports.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Was angenommen, ausgelassen und geprüft wurde, als aus einer Tabelle eine Rezeptur wurde. */
export const imports: Translation<typeof english> = {
  'import.too-many-rows': ({ count, otherCount }, say) =>
    `Diese Tabelle hat ${say.count(count, { one: '# Zeile', other: '# Zeilen' })}; nur die der Rezeptur kopieren, höchstens ${say.number(otherCount, 0)}.`,
  'import.nothing': () => 'Hier steht nichts; zuerst die Zeilen der Tabelle kopieren.',
  'import.no-columns': () =>
    'Hier ist keine Spalte mit Namen neben einer Spalte mit Mengen; eine Rezeptur braucht beide.',
  'import.quoted': ({ name }) => `„${name}“`,
  'import.more': ({ count }, say) => say.count(count, { one: '# weitere', other: '# weitere' }),

  'import.table': ({ count, title }, say) =>
    `Eine Tabelle mit ${say.count(count, { one: '# Zeile', other: '# Zeilen' })}, ohne Überschriften; zwischen den Zellen: ${say.say(title)}.`,
  'import.table-with-heading': ({ count, title }, say) =>
    `Eine Tabelle mit ${say.count(count, { one: '# Zeile', other: '# Zeilen' })} und Überschriften; zwischen den Zellen: ${say.say(title)}.`,
  'import.between-tab': () => 'Tabulatoren',
  'import.between-semicolon': () => 'Semikolons',
  'import.between-comma': () => 'Kommas',
  'import.between-bar': () => 'senkrechte Striche',
  'import.between-blanks': () => 'mehrere Leerzeichen',
  'import.between-none': () => 'nichts',
  'import.title': ({ name }) => `„${name}“ über der Tabelle ist als Name der Rezeptur genommen.`,
  'import.column': ({ number }, say) => `Spalte ${say.number(number, 0)}`,
  'import.columns': ({ parts }, say) => `Darin stehen ${say.list(parts.map(say.say))}.`,
  'import.names-in': ({ title }, say) => `Namen in ${say.say(title)}`,
  'import.percentages-in': ({ title }, say) => `Prozente in ${say.say(title)}`,
  'import.weights-in': ({ title }, say) => `Gewichte in ${say.say(title)}`,
  'import.temperatures-in': ({ title }, say) => `Temperaturen in ${say.say(title)}`,
  'import.remarks-in': ({ title }, say) => `Bemerkungen in ${say.say(title)}`,
  'import.parts-in': ({ title }, say) => `Teile in ${say.say(title)}`,
  'import.formulas-in': ({ title }, say) => `Rezepturen in ${say.say(title)}`,
  'import.percent-guessed': ({ title, number }, say) =>
    `Die Mengen in ${say.say(title)} haben keine Einheit und sind als Prozente genommen: die Mehle ergeben ${say.number(number, 0)}.`,
  'import.shares-of-one': ({ title }, say) =>
    `Die Mengen in ${say.say(title)} sind Anteile von 1 und stehen jetzt in Prozent.`,
  'import.grams-guessed': ({ title }, say) =>
    `Die Mengen in ${say.say(title)} haben keine Einheit und sind als Gramm genommen.`,
  'import.left-out': ({ parts }, say) =>
    `Mehr Mengen, als eine Zeile haben kann, sind ausgelassen: ${say.list(parts.map(say.say))}.`,
  'import.columns-again': ({ parts }, say) =>
    `Spalten, die noch einmal kommen, sind ausgelassen: ${say.list(parts.map(say.say))}. Gehören sie zu einem anderen Teil, diesen als eigene Tabelle einlesen.`,
  'import.side-by-side': ({ count }, say) =>
    `In dieser Tabelle ${say.count(count, { one: 'steht # Block', other: 'stehen # Blöcke' })} nebeneinander: sie sind untereinander genommen.`,
  'import.merged-cells': ({ parts }, say) =>
    `In ${say.list(parts.map(say.say))} gelten leere Zellen unter einer gefüllten als das Gleiche.`,

  'import.parts-in-columns': ({ parts }, say) =>
    `Die Gewichte jedes Teils stehen in einer eigenen Spalte, ${say.list(parts.map(say.say))}: sie werden untereinander genommen, und was von allem zusammen gilt, entfällt.`,

  'import.signs-mixed': () =>
    'In dieser Tabelle stehen Kommas und Punkte vor Nachkommastellen; jede Zahl ist für sich gelesen.',
  'import.decimal-comma': () => 'Das Komma ist als Dezimalzeichen genommen.',
  'import.read-as': ({ written, meant }) =>
    `„${written}“ ist als ${meant} gelesen, und seinesgleichen ebenso: prüfen, ob das gemeint ist.`,
  'import.read-by-shares': ({ written, meant }) =>
    `„${written}“ ist ${meant}: so verhalten sich die Gewichte zueinander wie die Prozente.`,
  'import.read-by-sum': ({ written, meant, name, grams }, say) =>
    `„${written}“ ist ${meant}: so ergeben die Zeilen „${name}“, ${say.number(grams, 1)} g.`,

  'import.taken-as': ({ number, name, otherName }, say) =>
    `${row(number, name, say)}, ist als „${otherName}“ genommen.`,
  'import.taken-as-one-of': ({ number, name, otherName }, say) =>
    `${row(number, name, say)}, ist als „${otherName}“ genommen; in der Tabelle steht nicht, was davon es ist.`,
  'import.flour-by-name': ({ name }, say) =>
    `„${name}“ ist Mehl, denn damit kommen die Mehle auf ${say.percent(1)}: es bekommt einen eigenen Abschnitt für seine Werte.`,
  'import.in-pieces': ({ number, name }, say) =>
    `${row(number, name, say)} hat keine Einheit, wo andere Zeilen eine haben: gezählt wird in Stück.`,
  'import.culture': ({ number, name, part }, say) =>
    `${row(number, name, say)} füttert „${part}“: geschrieben als reife Kultur, in Prozent des gefütterten Mehls.`,
  'import.heading': ({ number, name }, say) =>
    `${row(number, name, say)}, hat keine Menge und ist als Überschrift eines Teils genommen.`,
  'import.grams-assumed': ({ parts }, say) =>
    `Ohne Einheit, wo andere Zeilen eine haben, und als Gramm genommen: ${say.list(parts.map(say.say))}.`,
  'import.sums': ({ parts }, say) =>
    `Summen sind ausgelassen, denn eine Rezeptur berechnet sie: ${say.list(parts.map(say.say))}.`,
  'import.about-batch': ({ number, written }, say) =>
    `${row(number, written, say)}, betrifft den ganzen Teig und ist keine Zutat; die Zeile wurde ein Kommentar.`,
  'import.zero': ({ number, name }, say) => `${row(number, name, say)}, ist 0 und wurde ein Kommentar.`,
  'import.no-amount': ({ number, name }, say) =>
    `${row(number, name, say)}, hat keine Menge und wurde ein Kommentar.`,
  'import.row-no-name': ({ number, written }, say) =>
    `${row(number, written, say)}, hat keinen Namen und wurde ein Kommentar.`,
  'import.row-not-read': ({ number, written }, say) =>
    `${row(number, written, say)}, hat eine Menge, die nicht zu lesen ist, und wurde ein Kommentar.`,
  'import.row-no-amount': ({ number, written }, say) =>
    `${row(number, written, say)}, hat keine Menge und wurde ein Kommentar.`,
  'import.row-negative': ({ number, written }, say) =>
    `${row(number, written, say)}, hat eine Menge unter 0 und wurde ein Kommentar.`,
  'import.row-no-line': ({ number, written }, say) =>
    `${row(number, written, say)}, kann keine Zeile einer Rezeptur sein und wurde ein Kommentar.`,

  'import.row-differs': ({ number, name, written, grams, otherWritten }, say) =>
    `${row(number, name, say)}: ${written} sind ${say.number(grams, 1)} g, und in der Tabelle steht ${otherWritten}.`,
  'import.rows-differ': ({ count }, say) =>
    say.count(count, { one: '# weitere Zeile weicht auch ab.', other: '# weitere Zeilen weichen auch ab.' }),
  'import.disagree': () => 'Prozente und Gewichte passen nicht zusammen; die Gewichte sind geschrieben.',
  'import.disagree-part': ({ part }) =>
    `Prozente und Gewichte von „${part}“ passen nicht zusammen; die Gewichte sind geschrieben.`,
  'import.of-all': () =>
    'Die Prozente gelten für die ganze Masse und nicht für das Mehl; die Gewichte sind geschrieben.',
  'import.of-all-part': ({ part }) =>
    `Die Prozente von „${part}“ gelten für die ganze Masse und nicht für das Mehl; die Gewichte sind geschrieben.`,
  'import.of-all-per-kilogram': () =>
    'Die Prozente gelten für die ganze Masse und nicht für das Mehl: sie sind als Gewichte geschrieben, auf ein Kilogramm.',
  'import.of-all-per-kilogram-part': ({ part }) =>
    `Die Prozente von „${part}“ gelten für die ganze Masse und nicht für das Mehl: sie sind als Gewichte geschrieben, auf ein Kilogramm.`,
  'import.flours-make': ({ fraction }, say) =>
    `Die Mehle ergeben in der Tabelle ${say.percent(fraction)}, nicht ${say.percent(1)}.`,
  'import.flours-make-part': ({ fraction, part }, say) =>
    `Die Mehle von „${part}“ ergeben in der Tabelle ${say.percent(fraction)}, nicht ${say.percent(1)}.`,
  'import.flours-make-weights': ({ fraction }, say) =>
    `Die Mehle ergeben in der Tabelle ${say.percent(fraction)}, nicht ${say.percent(1)}; die Gewichte sind geschrieben.`,
  'import.flours-make-weights-part': ({ fraction, part }, say) =>
    `Die Mehle von „${part}“ ergeben in der Tabelle ${say.percent(fraction)}, nicht ${say.percent(1)}; die Gewichte sind geschrieben.`,
  'import.agree': () =>
    'Prozente und Gewichte passen zusammen: die Prozente sind geschrieben, die Gewichte als Teigmenge.',
  'import.agree-part': ({ part }) =>
    `Prozente und Gewichte von „${part}“ passen zusammen: die Prozente sind geschrieben.`,

  'import.part-without-line': ({ part }) =>
    `Im Teig ist keine Zeile für „${part}“, und nirgends steht, wie viel davon hineinkommt: eine Zeile ergänzen.`,
  'import.part-all': ({ part, grams }, say) =>
    `Im Teig ist keine Zeile für „${part}“: alles davon, ${say.mass(grams)}, kommt hinein.`,
  'import.not-known': ({ parts }, say) =>
    `Nicht bekannt, darum weder als Mehl noch als Wasser gezählt: ${say.list(parts.map(say.say))}. Sie definieren oder bekannte Namen schreiben.`,
  'import.not-known-meant': ({ parts, facts }, say) =>
    `Nicht bekannt, darum weder als Mehl noch als Wasser gezählt: ${say.list(parts.map(say.say))}; ${say.list(facts.map(say.say))}.`,
  'import.may-be': ({ name, otherName }) => `„${name}“ ist vielleicht „${otherName}“`,
};

function row(number: number, name: string, say: Speaker): string {
  return `Zeile ${say.number(number, 0)}, „${name}“`;
}
