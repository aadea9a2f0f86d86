import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** The draft of a label: notes beside it, why there is none, and what its columns and lists are called. */
export const label = {
  'label.caution': () =>
    'This is a draft from what the files state. The producer answers for the label; follow local food law and licensed advice.',
  'label.no-regime': () =>
    'No bakery section states “label EU” or “label US”: this draft follows the European Union.',
  'label.unweighed': ({ names }: Args<'names'>, say: Speaker) =>
    `Not in the list, as the weight is not known: ${say.list(names)}.`,
  'label.water-as-weighed': () => 'Water is counted as weighed, as the bake loss is not known.',
  'label.bath': () => 'What a bath leaves on the crust is not counted.',
  'label.lent': ({ name, otherName }: Args<'name' | 'otherName'>) =>
    `What the section of “${name}” does not state is taken from ${otherName}, the usual of its kind.`,
  'label.protein': () =>
    'Protein is as tables and files give it; the USDA counts wheat’s as nitrogen × 5.7, the Regulation asks for × 6.25 (up to a tenth more).',
  'label.to-be-added': () =>
    'Not computed, and to be added: trans fat, cholesterol, added sugars, vitamin D, calcium, iron, potassium, daily values and the serving size.',
  'label.fermented': () =>
    'What yeast and bacteria eat is not taken off: sugars are counted as they go into the dough.',
  'label.solids-not-known': ({ names }: Args<'names'>, say: Speaker) =>
    `Total solids are not known, for the water in these is not known: ${say.list(names)}.`,

  'product.no-lines': () => 'no ingredient is written yet',
  'product.no-dough-weight': () => 'the weight of the dough is not known',
  'product.no-bake-loss': ({ example }: Args<'example'>) =>
    `the formula does not state its bake loss; write it, for example: ${example}`,
  'product.no-weight': ({ name }: Args<'name'>) => `the weight of “${name}” is not known`,
  'product.enclosed-not-known': ({ part }: Args<'part'>) => `how much of “${part}” is enclosed is not known`,
  'product.beside-not-known': ({ part }: Args<'part'>) => `how much of “${part}” goes on is not known`,
  'product.bake-loss-too-much': () =>
    'the bake loss is more than all the water there is; write a smaller one',

  'nutrition.not-known': ({ sentence }: Args<'sentence'>) => `Nutrition not known yet: ${sentence}.`,
  'nutrition.in-hundred-grams': () => 'in 100 g',
  'nutrition.in-piece': ({ bakedGrams }: Args<'bakedGrams'>, say: Speaker) => `in ${say.mass(bakedGrams)}`,
  'nutrition.not-stated': ({ facts, names }: Args<'facts' | 'names'>, say: Speaker) =>
    `Nothing states the ${say.list(facts.map(say.say))} of ${say.list(names)}.`,
  'nutrition.figure-not-known': () => 'not known',
  'nutrition.below-eu': ({ written }: Args<'written'>) => `< ${written}`,
  'nutrition.below-us': ({ written }: Args<'written'>) => `less than ${written}`,

  // Regulation (EU) 1169/2011, Annex XV: from memory.
  'nutrient-eu.kilojoules': () => 'energy',
  'nutrient-eu.kilocalories': () => 'energy',
  'nutrient-eu.fat': () => 'fat',
  'nutrient-eu.saturates': () => 'saturates',
  'nutrient-eu.carbohydrate': () => 'carbohydrate',
  'nutrient-eu.sugars': () => 'sugars',
  'nutrient-eu.fibre': () => 'fibre',
  'nutrient-eu.protein': () => 'protein',
  'nutrient-eu.salt': () => 'salt',
  'nutrient-eu.sodium': () => 'sodium',
  'nutrient-eu.of-which': ({ title }: Args<'title'>, say: Speaker) => `of which ${say.say(title)}`,

  // 21 CFR 101.9(c), in English whatever the reader’s language: such a label is printed in it.
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

  'label-us.bread': ({ bakedGrams }: Args<'bakedGrams'>, say: Speaker) =>
    `A piece of ${say.mass(bakedGrams)} is bread (21 CFR 136.3).`,
  'label-us.roll': ({ bakedGrams }: Args<'bakedGrams'>, say: Speaker) =>
    `A piece of ${say.mass(bakedGrams)} is a roll or bun (21 CFR 136.3).`,
  'label-us.kind-bread': () => 'bread',
  'label-us.kind-roll': () => 'roll or bun',
  'label-us.solids-enough': ({ fraction, lowFraction }: Args<'fraction' | 'lowFraction'>, say: Speaker) =>
    `Total solids ${say.percent(fraction)}: enough for 21 CFR 136.110 (${say.percent(lowFraction)} or more).`,
  'label-us.solids-too-little': ({ fraction, lowFraction }: Args<'fraction' | 'lowFraction'>, say: Speaker) =>
    `Total solids ${say.percent(fraction)}: too little for 21 CFR 136.110 (${say.percent(lowFraction)} or more).`,
};
