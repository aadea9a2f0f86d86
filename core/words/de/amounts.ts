import type { Args } from '../args.ts';
import type { amounts as english } from '../en/amounts.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Mengen, die nicht zu ihrer Zeile passen, nicht zueinander, oder die es nicht geben kann. */
export const amounts: Translation<typeof english> = {
  'added-by-part.on-top': ({ name, part }) =>
    `Die Rezeptur hat keine Zeile „${name}“: was „${part}“ davon braucht, kommt zu ihren Summen dazu.`,
  'added-by-part.on-top-grams': ({ name, part, grams }, say) =>
    `Die Rezeptur hat keine Zeile „${name}“: die ${say.mass(grams)}, die „${part}“ davon braucht, kommen zu ihren Summen dazu.`,
  'added-by-part.flour': ({ name }) =>
    `So steht „${name}“ neben den 100 % der Mehle der Rezeptur: dort eine Zeile dafür schreiben, oder den Teil aus einem Mehl machen, das die Rezeptur hat.`,

  'amount-does-not-fit.hydration': ({ name, meant }) =>
    `„to ${meant} hydration“ ist für Wasser, und „${name}“ ist keines. Seine Menge schreiben: ${meant}, oder ein Gewicht.`,
  'amount-does-not-fit.balance': ({ name }) =>
    `„balance“ ist, was ein Mehl von den 100 % nimmt, und „${name}“ ist kein Mehl. Seinen Prozentsatz oder sein Gewicht schreiben.`,
  'amount-does-not-fit.remaining': ({ name }) =>
    `„remaining“ ist, was von einem hier gemachten Teil übrig ist, und „${name}“ ist kein Teil. Seinen Prozentsatz oder sein Gewicht schreiben.`,

  'bake-loss-unknown.not-stated': () =>
    'Die Ausbeute ist ein Gewicht nach dem Backen, und wie viel der Ofen nimmt, ist nicht angegeben. Den Backverlust („bake loss“) schreiben, am besten einen selbst gewogenen.',
  'bake-loss-unknown.fix': ({ meant }) => `${meant} schreiben (gängige Praxis; besser selbst wiegen)`,

  'draws-contradict.fixed': ({ part }) =>
    `Das passt nicht zu dem, was „${part}“ schon festlegt. Eines von beiden behalten.`,
  'draws-contradict.fixed-grams': ({ part, grams, otherGrams }, say) =>
    `Das passt nicht zu dem, was „${part}“ schon festlegt. Es wären ${say.mass(grams)} nötig; im Teil, wie er festgelegt ist, sind schon ${say.mass(otherGrams)}. Eines von beiden behalten.`,

  'far-too-much.times': ({ name, fraction, choices }, say) =>
    `${say.percent(fraction)} „${name}“ ist das ${say.number(fraction, 1)}-Fache des Mehls. Fehlt ein Dezimalpunkt, oder sind Gramm gemeint? Zu schreiben ist ${say.anyOf(choices)}.`,

  'grams-exceed-total.more': ({ name }) =>
    `Die Zeilen in Gewicht von „${name}“ wiegen mehr als das Ganze. Für sein Mehl bleibt nichts.`,
  'grams-exceed-total.more-grams': ({ name, grams, otherGrams }, say) =>
    `Die Zeilen in Gewicht von „${name}“ wiegen mehr als das Ganze: ${say.mass(grams)} von insgesamt ${say.mass(otherGrams)}. Für sein Mehl bleibt nichts.`,
  'grams-exceed-total.in-weight': () => 'eine Zeile in Gewicht',

  'impossible-amount.beyond': () =>
    'Diese Menge lässt sich nicht wiegen; sie zählt deshalb nicht mit. Die Zahl berichtigen.',

  'keeps-back-too-much.more': ({ name, grams, otherGrams }, say) =>
    `Von „${name}“ werden ${say.mass(grams)} zurückbehalten, und nur ${say.mass(otherGrams)} werden gemacht. Mehr machen oder weniger zurückbehalten.`,

  'moist-flour.above': ({ fraction, limitFraction }, say) =>
    `${say.percent(fraction)} Feuchte ist mehr als die ${say.percent(limitFraction)}, die Mehl haben darf (Codex CXS 152). Die Zahl berichtigen.`,

  'nothing-left.flours': ({ name }) =>
    `Die anderen Mehle sind schon alles: für „${name}“ bleibt nichts übrig.`,
  'nothing-left.flours-fraction': ({ name, fraction }, say) =>
    `Die anderen Mehle ergeben schon ${say.percent(fraction)}: für „${name}“ bleibt nichts übrig.`,
  'nothing-left.flour': () => 'Mehl desselben Abschnitts',

  'nothing-to-draw.formula': ({ name }) =>
    `Die Rezeptur hat keine Zeile „${name}“, der sich etwas entnehmen ließe. Eine ergänzen oder entnehmen, was sie hat.`,
  'nothing-to-draw.part': ({ part, name }) =>
    `„${part}“ entnimmt „${name}“ und hat keine Zeile davon. Seinen Zeilen „${name}“ hinzufügen oder entnehmen, was er hat.`,

  'part-amounts-differ.differ': ({ name }) =>
    `Von „${name}“ wird nicht so viel gemacht wie verwendet. Den Teil in Prozent schreiben oder ein Gewicht berichtigen.`,
  'part-amounts-differ.differ-grams': ({ name, grams, otherGrams }, say) =>
    `Von „${name}“ wird nicht so viel gemacht wie verwendet: ${say.mass(grams)} gemacht, ${say.mass(otherGrams)} verwendet. Den Teil in Prozent schreiben oder ein Gewicht berichtigen.`,
  'part-amounts-differ.part': () => 'derselbe Teil',

  'parts-above-whole.sum': ({ name, fraction, parts }, say) =>
    `Die Bestandteile von „${name}“ ergeben ${say.percent(fraction)}: ${say.list(parts.map(say.say))}. Einen davon berichtigen.`,
  'parts-above-whole.share': ({ property, fraction }, say) => `„${property}“ ${say.percent(fraction)}`,
  'parts-above-whole.inside': ({ property, fraction, otherProperty, limitFraction }, say) =>
    `${say.percent(fraction)} „${property}“ sind mehr als die ${say.percent(limitFraction)} „${otherProperty}“, von denen sie ein Teil sind. Eines von beiden berichtigen.`,

  'portions-off.unsaid': ({ name }) =>
    `Wie viel von „${name}“ ist das? Ein Anteil sagt es, zum Beispiel „90% of the ${name}“, und „remaining ${name}“, wo der Rest hineinkommt.`,
  'portions-off.rest-of-nothing': ({ name, meant }) =>
    `Keine Zeile davor sagt, wie viel von „${name}“ zuerst hineinkommt; ein Rest bleibt so nicht. Dort einen Anteil schreiben, zum Beispiel „${meant}“.`,
  'portions-off.more': ({ name, meant }) =>
    `Hier kommt mehr „${name}“ hinein, als noch übrig ist. Der Rest schreibt sich „${meant}“.`,
  'portions-off.more-grams': (portion, say) =>
    `Hier kommt mehr „${portion.name}“ hinein, als noch übrig ist: ${askedFor(portion, say)}. Der Rest schreibt sich „${portion.meant}“.`,
  'portions-off.less': ({ name, meant }) =>
    `Die Portionen „${name}“ ergeben nicht die ganze Zeile. Der Rest schreibt sich „${meant}“.`,
  'portions-off.less-grams': (portion, say) =>
    `Die Portionen „${portion.name}“ ergeben nicht die ganze Zeile: ${askedFor(portion, say)}. Der Rest schreibt sich „${portion.meant}“.`,

  'two-scales.disagree': () =>
    'Ausbeute („yield“) und Mehl in Gewicht geben beide an, wie viel gemacht wird, und widersprechen einander. Die Mehle in Prozent schreiben oder die Ausbeute entfernen.',
  'two-scales.disagree-grams': ({ grams, otherGrams }, say) =>
    `Ausbeute („yield“) und Mehl in Gewicht geben beide an, wie viel gemacht wird, und widersprechen einander: die Ausbeute verlangt ${say.mass(grams)}, die Zeilen ergeben ${say.mass(otherGrams)}. Die Mehle in Prozent schreiben oder die Ausbeute entfernen.`,
  'two-scales.flour': () => 'Mehl in Gewicht',
  'two-scales.fix': () => 'Die Ausbeute entfernen',

  'weighs-nothing.none': ({ name }) =>
    `Von „${name}“ wird nichts abgewogen. Zu schreiben ist, wie viel, oder die Zeile ist zu entfernen.`,

  'wet-already.more': ({ targetFraction }, say) =>
    `Die anderen Zeilen ergeben schon mehr Hydration, und gewünscht sind ${say.percent(targetFraction)}.`,
  'wet-already.more-effective': ({ targetFraction }, say) =>
    `Die anderen Zeilen ergeben schon mehr effektive Hydration, und gewünscht sind ${say.percent(targetFraction)}.`,
  'wet-already.hydration': ({ fraction, targetFraction }, say) =>
    `Die anderen Zeilen ergeben schon ${say.percent(fraction)} Hydration, und gewünscht sind ${say.percent(targetFraction)}.`,
  'wet-already.effective-hydration': ({ fraction, targetFraction }, say) =>
    `Die anderen Zeilen ergeben schon ${say.percent(fraction)} effektive Hydration, und gewünscht sind ${say.percent(targetFraction)}.`,
  'wet-already.too-much': ({ grams }, say) => `Das sind ${say.mass(grams)} Wasser zu viel.`,
  'wet-already.help': () => 'Mehr verlangen oder weniger von dem nehmen, was nass ist.',
  'wet-already.fix': ({ meant }) => `${meant} schreiben, das Mindeste, was sich erreichen lässt`,

  'worked-out-twice.again': ({ property, name }) =>
    `„${property}“ steht in diesem Abschnitt schon, bei „${name}“. Hier oder dort eine Menge schreiben.`,
  'worked-out-twice.first': ({ property }) => `das erste „${property}“: es gilt`,
};

type Portion = Args<'name' | 'meant' | 'grams' | 'otherGrams'>;

function askedFor({ grams, otherGrams }: Portion, say: Speaker): string {
  return `${say.mass(grams)} verlangt, ${say.mass(otherGrams)} da`;
}
