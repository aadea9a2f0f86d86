import type { sums as english } from '../en/sums.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Mengen, die kein Ganzes ergeben oder deren Größe nirgends festliegt. */
export const sums: Translation<typeof english> = {
  'no-density.unknown': ({ name, example }) =>
    `Was ein Milliliter „${name}“ wiegt, ist nicht bekannt. Hier das Gewicht schreiben, oder im Abschnitt der Zutat die Dichte: ${example}`,
  'no-piece-weight.unknown': ({ name, example }) =>
    `Was ein Stück „${name}“ wiegt, ist nicht bekannt. Das Gewicht hier schreiben, oder im Abschnitt der Zutat: ${example}`,
  'no-pieces.unknown': ({ example }) =>
    `So viel je Stück, bei wie vielen Stück? Das steht in der Rezeptur: ${example}`,
  'no-pieces.also': () => 'ebenfalls je Stück gezählt',

  'impossible-amount.cooking-loss': () =>
    'Hier verdampft mehr, als Wasser darin ist; deshalb wird nichts abgezogen. Einen kleineren Verlust schreiben, oder das Wasser.',

  'no-flour.weighs-nothing': () =>
    'Das Mehl dieses Abschnitts wiegt nichts; Prozente davon sind auch nichts. Zu schreiben ist, wie viel Mehl es ist.',
  'no-flour.dough': () =>
    'Dieser Abschnitt hat kein Mehl und keine Zeile mit 100 %: Prozent wovon? Die Mehlzeile ergänzen, oder 100% an das schreiben, woran die anderen gemessen werden.',
  'no-flour.part': () =>
    'Dieser Abschnitt hat kein Mehl und keine Zeile mit 100 %: Prozent wovon? Seine Prozente beziehen sich auf ihn selbst, nicht auf das Mehl des Teigs: 100% an eine Zeile schreiben und die anderen darauf beziehen.',
  'no-flour.fix-of-all-flour': () => 'Auf das gesamte Mehl beziehen',
  'no-flour.beside': () =>
    'Prozent wovon? Hier ist nichts Mehl. Zu schreiben ist, wie viel auf ein Stück kommt, zum Beispiel 3 g a piece, oder wie viel insgesamt, zum Beispiel 200 g.',

  'flour-not-hundred.short': ({ fraction, apartFraction }, say) =>
    `Die Mehle dieses Abschnitts ergeben ${say.percent(fraction)}: es fehlen ${say.percent(apartFraction)} zu den 100 %, auf die sich alle Prozente beziehen.`,
  'flour-not-hundred.above': ({ fraction, apartFraction }, say) =>
    `Die Mehle dieses Abschnitts ergeben ${say.percent(fraction)}: ${say.percent(apartFraction)} mehr als die 100 %, auf die sich alle Prozente beziehen.`,
  'flour-not-hundred.starch': ({ fraction, name, example }, say) =>
    `Die Mehle dieses Abschnitts ergeben ${say.percent(fraction)}, mit „${name}“ 100%; sie zählt von selbst nicht als Mehl. Sie mit „${example}“ festlegen, oder die Mehle auf 100% bringen.`,
  'flour-not-hundred.on-top': ({ fraction, grams }, say) =>
    `Die Mehle in Prozent ergeben für sich allein ${say.percent(fraction)}, und ${say.mass(grams)} Mehl kommen noch dazu. Alle Mehle des Abschnitts in Prozent schreiben, oder alle als Gewicht.`,
  'flour-not-hundred.split': ({ fraction }, say) =>
    `Die Mehle hier ergeben ${say.percent(fraction)}, mit denen der Teile 100 %: Das sind Prozent vom gesamten Mehl. Zu schreiben ist die ganze Rezeptur, und was jeder Teil ihr entnimmt.`,
  'flour-not-hundred.fix-split': () => 'Die ganze Rezeptur schreiben, die Teile als ihr entnommen',
  'flour-not-hundred.other': () => 'Mehl desselben Abschnitts',

  'no-scale.remaining': ({ part }) =>
    `„remaining“ nimmt alles, was von „${part}“ gemacht wird, und wie viel das ist, liegt nirgends fest. Hier den Prozentsatz schreiben, oder dort das Mehl als Gewicht.`,
  'no-scale.dough': () =>
    'Einige Zeilen stehen in Gewicht, das Mehl in Prozent: wie viel Mehl es ist, liegt nirgends fest. Eine Ausbeute („yield“) schreiben, oder das Mehl als Gewicht.',
  'no-scale.variant': ({ name, otherName }) =>
    `Ein Gewicht sagt, wie viel „${otherName}“ ergibt; „${name}“ hat keines und wird für 1 kg Mehl gerechnet. Eines seiner Mehle in Gewicht schreiben, oder eine Ausbeute (yield).`,
  'no-scale.part': ({ part }) =>
    `Wie viel von „${part}“ gemacht wird, liegt nirgends fest. Eine Entnahme („draws“) schreiben, den Teil in einer Zeile der Rezeptur nennen, oder sein Mehl als Gewicht schreiben.`,
  'no-scale.enclosed': ({ part, example }) =>
    `Wie viel von „${part}“ gemacht wird, liegt nirgends fest. Den Teil in einer Zeile der Rezeptur nennen, zum Beispiel „${example}“, oder seine Zeilen als Gewicht schreiben.`,
  'no-scale.beside': ({ part, example }) =>
    `Wie viel von „${part}“ gemacht wird, liegt nirgends fest. Den Teil in einer Zeile der Rezeptur mit seinem Gewicht je Stück nennen, zum Beispiel „${example}“, oder seine Zeilen als Gewicht schreiben.`,
  'no-scale.in-weight': () => 'eine Zeile in Gewicht',

  'drawn-too-much.unsized': ({ names, name }, say) =>
    `${quoted(names, say)} ${brings(names)} mehr „${name}“ mit, als die Rezeptur hat. Weniger entnehmen oder diese Zeile erhöhen.`,
  'drawn-too-much.shares': ({ names, name, fraction, usualFraction }, say) =>
    `${quoted(names, say)} ${brings(names)} mehr „${name}“ mit, als die Rezeptur hat: ${say.percent(fraction)} vom Mehl statt ${say.percent(usualFraction)}. Weniger entnehmen oder diese Zeile erhöhen.`,
  'drawn-too-much.grams': ({ names, name, grams }, say) =>
    `${quoted(names, say)} ${brings(names)} mehr „${name}“ mit, als die Rezeptur hat: ${say.mass(grams)} zu viel. Weniger entnehmen oder diese Zeile erhöhen.`,
  'drawn-too-much.shares-grams': ({ names, name, fraction, usualFraction, grams }, say) =>
    `${quoted(names, say)} ${brings(names)} mehr „${name}“ mit, als die Rezeptur hat: ${say.percent(fraction)} vom Mehl statt ${say.percent(usualFraction)}, ${say.mass(grams)} zu viel. Weniger entnehmen oder diese Zeile erhöhen.`,
  'drawn-too-much.brings': () => 'bringt es mit',

  'drawn-and-added.both': ({ part }) =>
    `„${part}“ entnimmt sein Mehl der Rezeptur und wird hier noch einmal zugegeben. Diese Zeile oder das „draws“ entfernen.`,
  'drawn-and-added.draws': () => 'sein Abschnitt entnimmt',
};

function quoted(names: readonly string[], say: Speaker): string {
  return say.list(names.map((name) => `„${name}“`));
}

function brings(names: readonly string[]): string {
  return names.length > 1 ? 'bringen' : 'bringt';
}
