import type { label as english } from '../en/label.ts';
import type { Translation } from '../message.ts';

/** Der Entwurf einer Kennzeichnung: was dazu zu sagen ist, warum es keine gibt, und wie Spalten und Listen heißen. */
export const label: Translation<typeof english> = {
  'label.caution': () =>
    'Dies ist ein Entwurf aus dem, was in den Dateien steht. Für die Kennzeichnung haftet der Hersteller; es gilt das örtliche Lebensmittelrecht und der Rat von Fachleuten.',
  'label.no-regime': () =>
    'In keinem Abschnitt „bakery“ steht „label EU“ oder „label US“: dieser Entwurf folgt der Europäischen Union.',
  'label.unweighed': ({ names }, say) =>
    `Nicht in der Liste, weil das Gewicht nicht bekannt ist: ${say.list(names)}.`,
  'label.water-as-weighed': () =>
    'Wasser zählt, wie es abgewogen wird, weil der Backverlust nicht bekannt ist.',
  'label.bath': () => 'Was ein Bad auf der Kruste lässt, ist nicht mitgezählt.',
  'label.lent': ({ name, otherName }) =>
    `Was im Abschnitt von „${name}“ nicht steht, ist von ${otherName} genommen, dem Üblichen seiner Art.`,
  'label.protein': () =>
    'Eiweiß steht, wie Tabellen und Dateien es angeben; das USDA rechnet das des Weizens mit Stickstoff × 5,7, die Verordnung verlangt × 6,25 (bis zu einem Zehntel mehr).',
  'label.to-be-added': () =>
    'Nicht berechnet und noch zu ergänzen: Transfett, Cholesterin, zugesetzte Zucker, Vitamin D, Calcium, Eisen, Kalium, Tagesmengen und die Portionsgröße.',
  'label.fermented': () =>
    'Was Hefe und Bakterien verzehren, ist nicht abgezogen: Zucker zählen, wie sie in den Teig kommen.',
  'label.solids-not-known': ({ names }, say) =>
    `Die Trockenmasse ist nicht bekannt, denn von diesen Zutaten ist das Wasser nicht bekannt: ${say.list(names)}.`,

  'product.no-lines': () => 'es ist noch keine Zutat geschrieben',
  'product.no-dough-weight': () => 'das Gewicht des Teigs ist nicht bekannt',
  'product.no-bake-loss': ({ example }) =>
    `in der Rezeptur steht kein Backverlust; ihn hinschreiben, zum Beispiel: ${example}`,
  'product.no-weight': ({ name }) => `das Gewicht von „${name}“ ist nicht bekannt`,
  'product.enclosed-not-known': ({ part }) => `wie viel von „${part}“ eingeschlagen wird, ist nicht bekannt`,
  'product.beside-not-known': ({ part }) => `wie viel von „${part}“ dazukommt, ist nicht bekannt`,
  'product.bake-loss-too-much': () =>
    'der Backverlust ist mehr als alles Wasser, das da ist; einen kleineren hinschreiben',

  'nutrition.not-known': ({ sentence }) => `Nährwerte noch nicht bekannt: ${sentence}.`,
  'nutrition.in-hundred-grams': () => 'in 100 g',
  'nutrition.in-piece': ({ bakedGrams }, say) => `in ${say.mass(bakedGrams)}`,
  'nutrition.not-stated': ({ facts, names }, say) =>
    `Nicht angegeben: ${say.list(facts.map(say.say))} von ${say.list(names)}.`,
  'nutrition.figure-not-known': () => 'nicht bekannt',
  'nutrition.below-eu': ({ written }) => `< ${written}`,
  'nutrition.below-us': ({ written }) => `less than ${written}`,

  // Verordnung (EU) Nr. 1169/2011, Artikel 30 und Anhang XV: aus dem Gedächtnis.
  'nutrient-eu.kilojoules': () => 'Brennwert',
  'nutrient-eu.kilocalories': () => 'Brennwert',
  'nutrient-eu.fat': () => 'Fett',
  'nutrient-eu.saturates': () => 'gesättigte Fettsäuren',
  'nutrient-eu.carbohydrate': () => 'Kohlenhydrate',
  'nutrient-eu.sugars': () => 'Zucker',
  'nutrient-eu.fibre': () => 'Ballaststoffe',
  'nutrient-eu.protein': () => 'Eiweiß',
  'nutrient-eu.salt': () => 'Salz',
  'nutrient-eu.sodium': () => 'Natrium',
  'nutrient-eu.of-which': ({ title }, say) => `davon ${say.say(title)}`,

  // 21 CFR 101.9(c): ein solches Etikett wird auf Englisch gedruckt.
  'nutrient-us.kilojoules': () => 'energy',
  'nutrient-us.kilocalories': () => 'calories',
  'nutrient-us.fat': () => 'total fat',
  'nutrient-us.saturates': () => 'saturated fat',
  'nutrient-us.carbohydrate': () => 'total carbohydrate',
  'nutrient-us.sugars': () => 'total sugars',
  'nutrient-us.fibre': () => 'dietary fiber',
  'nutrient-us.protein': () => 'protein',
  'nutrient-us.salt': () => 'salt',
  'nutrient-us.sodium': () => 'sodium',

  'label-us.bread': ({ bakedGrams }, say) =>
    `Ein Stück von ${say.mass(bakedGrams)} heißt „bread“ (21 CFR 136.3).`,
  'label-us.roll': ({ bakedGrams }, say) =>
    `Ein Stück von ${say.mass(bakedGrams)} heißt „roll“ oder „bun“ (21 CFR 136.3).`,
  'label-us.kind-bread': () => 'bread',
  'label-us.kind-roll': () => 'roll or bun',
  'label-us.solids-enough': ({ fraction, lowFraction }, say) =>
    `Trockenmasse ${say.percent(fraction)}: genug für 21 CFR 136.110 (mindestens ${say.percent(lowFraction)}).`,
  'label-us.solids-too-little': ({ fraction, lowFraction }, say) =>
    `Trockenmasse ${say.percent(fraction)}: zu wenig für 21 CFR 136.110 (mindestens ${say.percent(lowFraction)}).`,
};
