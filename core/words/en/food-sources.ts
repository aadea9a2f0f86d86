import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** Where the figures of ingredients, flour types and mixers come from: clauses that begin small and end without a full stop. */
export const foodSources = {
  'food-source.usda': ({ code }: Args<'code'>) =>
    `USDA National Nutrient Database for Standard Reference, release 27, ${code}`,
  'food-source.recalled': () =>
    'recalled from the food tables of the USDA and not read: from memory, check it before a label',
  'food-source.partly-recalled': ({ source, words }: Args<'source' | 'words'>, say: Speaker) =>
    `${say.say(source)}; ${say.list(words)} from memory`,
  'food-source.remarked': ({ source, remark }: Args<'source' | 'remark'>, say: Speaker) =>
    `${say.say(source)}. ${say.say(remark)}`,
  'food-source.flour-type': (
    { source, figures, name, otherSource }: Args<'source' | 'figures' | 'name' | 'otherSource'>,
    say: Speaker,
  ) => `${say.say(source)} (${say.say(figures)}); the rest stands in from ${name}, ${say.say(otherSource)}`,
  'food-source.usual': ({ name }: Args<'name'>) => `as ${name}; state which it is for better figures`,
  'food-source.section': () => 'as its section states',
  'food-source.section-and': ({ name, source }: Args<'name' | 'source'>, say: Speaker) =>
    `as its section states, the rest from ${name} (${say.say(source)})`,
  'food-source.section-and-usual': ({ name, source }: Args<'name' | 'source'>, say: Speaker) =>
    `as its section states, the rest from ${name}, the usual of its kind (${say.say(source)})`,

  'food-remark.ice': () => 'Tap water, frozen: at 0 °C or below it brings its cold of melting',
  'food-remark.active-dry-yeast': () => 'Active dry yeast stands for it',
  'food-remark.lactose': () => 'Its carbohydrate is counted as sugars: it is lactose',
  'food-remark.lactose-otherwise': ({ grams }: Args<'grams'>, say: Speaker) =>
    `Its carbohydrate is counted as sugars: it is lactose, and the table gives ${say.number(grams, 2)} g by another method`,
  'food-remark.whole-grain': () => 'The grain as a whole stands for its flour',
  'food-remark.raw-with-skin': () => 'Raw, with its skin',
  'food-remark.may-hold-milk': () => 'Many hold milk: its pack states whether',
  'food-remark.may-hold-milk-or-soya': () => 'Many hold milk or soya: their pack states whether',
  'food-remark.may-be-sulphured': () => 'Many are sulphured: their pack states whether',
  'food-remark.acid': () => 'Its acid is counted as carbohydrate',
  'food-remark.spirit': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `A spirit of ${say.percent(fraction)} by volume`,
  'food-remark.boiled': () => 'Boiled without its skin',
  'food-remark.coriander': () => 'Coriander stands for it',
  'food-remark.cinnamon': () => 'Cinnamon stands for it',

  'flour-type.din': () => 'DIN 10355, ash of the dry matter',
  'flour-type.codex': () => 'Codex Alimentarius Austriacus, ash of the dry matter (lebensmittelbuch.at)',
  'flour-type.france': () => 'French flour types, ash of the dry matter',
  'flour-type.italy': () => 'DPR 187/2001, ash and protein of the dry matter',
  'flour-type.from-memory': ({ source }: Args<'source'>, say: Speaker) => `${say.say(source)}: from memory`,
  'flour-type.ash-up-to': ({ highFraction }: Args<'highFraction'>, say: Speaker) =>
    `ash up to ${say.percent(highFraction)}`,
  'flour-type.ash-from': ({ lowFraction }: Args<'lowFraction'>, say: Speaker) =>
    `ash from ${say.percent(lowFraction)}`,
  'flour-type.ash': ({ lowFraction, highFraction }: Args<'lowFraction' | 'highFraction'>, say: Speaker) =>
    `ash ${say.percent(lowFraction)} to ${say.percent(highFraction)}`,
  'flour-type.with-protein': ({ figures, lowFraction }: Args<'figures' | 'lowFraction'>, say: Speaker) =>
    `${say.say(figures)}, protein from ${say.percent(lowFraction)}`,

  'mixer-source.first-speed': () => 'first speed from a maker’s data sheet, second speed common practice',
};
