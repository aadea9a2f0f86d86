import type { names as english } from '../en/names.ts';
import type { Translation } from '../message.ts';
import type { Speaker } from '../speaker.ts';

/** Namen, die nicht bekannt sind, oder mehr als einmal. */
export const names: Translation<typeof english> = {
  'unknown-ingredient.meant': ({ name, otherName }) =>
    `„${name}“ ist nicht bekannt: es wird abgewogen, zählt aber weder als Mehl noch als Wasser. Ist „${otherName}“ gemeint?`,
  'unknown-ingredient.none': ({ name }) =>
    `„${name}“ ist nicht bekannt: es wird abgewogen, zählt aber weder als Mehl noch als Wasser. Den Namen definieren oder einen bekannten schreiben.`,
  'unknown-ingredient.like-meant': ({ name, otherName }) =>
    `„${name}“ ist nicht bekannt: davon lässt sich nichts ableiten. Ist „${otherName}“ gemeint?`,
  'unknown-ingredient.like-none': ({ name }) =>
    `„${name}“ ist nicht bekannt: davon lässt sich nichts ableiten. Den Namen definieren oder einen bekannten schreiben.`,
  'which-kind.yeast': ({ name, meant, otherMeant }) =>
    `„${name}“ wird als ${meant} gelesen; es kann auch ${otherMeant} sein. Ein Drittel so viel Instanthefe lockert gleich stark.`,
  'which-kind.spelt': ({ name, meant, otherMeant }) =>
    `„${name}“ wird als ${meant} gelesen; es kann auch ${otherMeant} sein. Helles Dinkelmehl nimmt weniger Wasser auf.`,
  'which-kind.oil': ({ name, meant, otherMeant }) =>
    `„${name}“ wird als ${meant} gelesen; es kann auch ${otherMeant} sein. Die Kennzeichnung nennt die Pflanze.`,
  'which-kind.malt': ({ name, meant, otherMeant }) =>
    `„${name}“ wird als ${meant} gelesen; es kann auch ${otherMeant} sein. Extrakt ist ein Sirup: er bringt Zucker und Wasser und keine Enzyme.`,
  'unknown-ingredient.hydration': ({ example }) => `Die Hydration steht in der Zeile des Wassers: ${example}`,
  'unknown-ingredient.culture-alone': ({ name }) =>
    `„${name}“ besteht aus Mehl und Wasser und zählt in einer eigenen Zeile als keines von beiden. Als Vorteig geschrieben zählen beide.`,
  'unknown-ingredient.fix-culture': ({ name, fraction }, say) =>
    `„${name}“ als Vorteig mit ${say.percent(fraction)} Hydration schreiben`,
  'unknown-ingredient.culture': ({ name, example }) =>
    `„${name}“ ist nicht bekannt. Anstellgut von der Art des Vorteigs selbst schreibt sich: ${example}`,

  'unknown-mixer.meant': ({ name, otherName }) =>
    `Kein Kneter heißt „${name}“; weder Erwärmung noch Auskneten lassen sich berechnen. Ist „${otherName}“ gemeint?`,
  'unknown-mixer.none': ({ name }) =>
    `Kein Kneter heißt „${name}“; weder Erwärmung noch Auskneten lassen sich berechnen. Den Kneter definieren oder eine Bauart nennen: spiral (Spiralkneter), planetary (Planetenrührer), fork (Gabelkneter).`,

  'unknown-part.meant': ({ name, otherName }) =>
    `Kein Teil der Rezeptur heißt „${name}“. Ist „${otherName}“ gemeint?`,
  'unknown-part.none': ({ name }) => `Kein Teil der Rezeptur heißt „${name}“. Sie hat keine Teile.`,
  'unknown-part.others': ({ name, names: parts }, say) =>
    `Kein Teil der Rezeptur heißt „${name}“. Ihre Teile: ${say.list(parts)}.`,

  'unknown-formula.meant': ({ name, otherName }) =>
    `Keine Rezeptur heißt „${name}“. Ist „${otherName}“ gemeint?`,
  'unknown-formula.none': ({ name }) => `Keine Rezeptur heißt „${name}“.`,
  'unknown-formula.no-experiment': ({ name }) => `Keine Versuchsreihe heißt „${name}“.`,
  'unknown-formula.base': ({ name }) =>
    `Keine Rezeptur heißt „${name}“; was diese Abwandlung von ihr übernimmt, ist also nicht bekannt. Ein Name, in dem „like“ steht, gehört in Anführungszeichen.`,
  'unknown-formula.base-meant': ({ name, otherName }) =>
    `Keine Rezeptur heißt „${name}“; was diese Abwandlung von ihr übernimmt, ist also nicht bekannt. Gemeint ist vielleicht „${otherName}“.`,
  'unknown-formula.base-of-base': ({ name, otherName }) =>
    `„${name}“ ist eine Abwandlung von „${otherName}“, und so heißt keine Rezeptur; also lässt sich keine von beiden berechnen.`,
  'unknown-formula.several': ({ name, count }, say) =>
    `„${name}“ steht an der nächstgelegenen Stelle, die den Namen hat, ${times(count, say)}. Jede Rezeptur braucht einen eigenen Namen.`,

  'several-definitions.several': ({ name, count }, say) =>
    `„${name}“ ist an der nächstgelegenen Stelle, die den Namen hat, ${times(count, say)} definiert; deshalb gilt keine der Definitionen. Eine behalten oder die anderen umbenennen.`,
  'several-definitions.one': () => 'eine davon',

  'same-name-twice.folder': ({ name, count }, say) =>
    `„${name}“ ist in diesem Ordner ${times(count, say)} definiert, und welche Definition gemeint ist, bleibt offen. Jede braucht einen eigenen Namen.`,
  'same-name-twice.part': ({ name }) =>
    `Diese Rezeptur hat schon einen Teil namens „${name}“, und der erste gilt. Dieser hier braucht einen eigenen Namen.`,
  'same-name-twice.other': () => 'derselbe Name',
  'same-name-twice.first': () => 'der erste: er gilt',

  'same-ingredient-twice.adds-up': ({ name }) =>
    `„${name}“ steht in diesem Abschnitt schon: die beiden Zeilen zählen zusammen.`,
  'same-ingredient-twice.other': () => 'zählt mit dieser Zeile zusammen',

  'not-in-base.none': ({ name, otherName }) => `„${otherName}“ hat kein „${name}“, das sich weglassen ließe.`,
  'not-in-base.no-base': ({ name, example }) =>
    `„${name}“ lässt sich nur aus einer Vorlage weglassen, und diese Rezeptur ist keine Abwandlung. Eine Abwandlung nennt ihre Vorlage: ${example}`,
  'not-in-experiment.dough': ({ name, otherName }) =>
    `„${name}“ hat keinen Teig „${otherName}“, so steht dieser Knetversuch neben nichts, was dort erwartet wird. „${otherName}“ in einer Zeile der Versuchsreihe nennen: dough ${otherName}`,
  'not-in-experiment.mixer': ({ name, otherName }) =>
    `„${name}“ hat „${otherName}“ mehrmals und in keinem Kneter, in dem dieser Knetversuch lief, so steht er neben keinem davon.`,
  'trial-of-other.other': ({ name, otherName }) =>
    `Dieser Knetversuch steht unter „${otherName}“ und zählt als einer davon. Er gehört unter die Zeilen von „${name}“.`,
  'not-in-base.fix': () => 'Die Zeile herausnehmen',
  'variant.in-base': ({ name, written }) => `${written} in „${name}“`,
  'variant.taken-celsius': ({ celsius, name }, say) => `mit ${say.celsius(celsius)} wie in „${name}“`,
  'variant.added': ({ name }) => `nicht in „${name}“`,
  'variant.new-line': ({ name, written }) => `${name} ${written} (neu)`,
  'variant.changed-line': ({ name, written, otherWritten }) => `${name} ${written} (dort ${otherWritten})`,
  'variant.dropped': ({ name }) => `ohne ${name}`,
  'variant.own-section': ({ written }) => `eigener Abschnitt: ${written}`,
  'variant.same': ({ names: bases }, say) =>
    `Eine Abwandlung von ${say.list(bases.map((name) => `„${name}“`))}, die nichts daran ändert`,
  'variant.of': ({ names: bases }, say) =>
    `Eine Abwandlung von ${say.list(bases.map((name) => `„${name}“`))}`,
  'variant.line-of-base': () => 'die Zeile der Vorlage',
  'loop.part': ({ names: around }) =>
    `Das führt im Kreis: ${around.join(' → ')}. Diese Zeile entfernen; Anstellgut der eigenen Art schreibt sich „ripe culture 20%“.`,
  'loop.variant': ({ names: around }, say) =>
    `Eine Abwandlung kann auch über andere nicht ihre eigene Vorlage sein: ${say.list(around.map((name) => `„${name}“`))}.`,
  'loop.variant-of-itself': ({ name }) => `„${name}“ kann keine Abwandlung von sich selbst sein.`,
  'loop.in-circle': () => 'Teil des Kreises',
  'loop.formula': ({ name }) =>
    `„${name}“ wird selbst mit dieser Rezeptur gemacht; so lässt sich keine von beiden abwiegen. Eine der beiden Zeilen entfernen.`,

  'unused-part.fix-add': ({ part }) => `Alles von „${part}“ in den Teig geben`,
  'unused-part.unused': ({ name }) =>
    `Keine Zeile nimmt „${name}“, und entnommen wird damit auch nichts: nichts davon kommt in den Teig. Eine Entnahme („draws“) oder eine Zeile dafür schreiben.`,
};

function times(count: number, say: Speaker): string {
  return say.count(count, { one: '#-mal', other: '#-mal' });
}
