import type { Args } from '../args.ts';
import type { Speaker } from '../speaker.ts';

/** What a hover says of a line, a section and an ingredient; Markdown. */
export const hover = {
  'line.title': ({ name }: Args<'name'>) => `**${name}**`,
  'line.title-figures': ({ name, parts }: Args<'name' | 'parts'>, say: Speaker) =>
    `**${name}** — ${parts.map(say.say).join(' · ')}`,
  'line.of-flour': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `**${say.percent(fraction)}** of the flour`,
  'line.of-part-flour': ({ fraction, part }: Args<'fraction' | 'part'>, say: Speaker) =>
    `**${say.percent(fraction)}** of the flour of “${part}”`,
  'line.of-line': ({ fraction, name }: Args<'fraction' | 'name'>, say: Speaker) =>
    `**${say.percent(fraction)}** of “${name}”`,
  'line.in-part': ({ fraction, part }: Args<'fraction' | 'part'>, say: Speaker) =>
    `**${say.percent(fraction)}** in “${part}”`,
  'line.weight': ({ grams }: Args<'grams'>, say: Speaker) => `**${say.mass(grams)}**`,
  'line.not-known': () => 'Not known yet: this line, or one that it depends on, is not finished.',
  'line.all-drawn': () => 'All of it comes with what is drawn.',
  'line.rest-drawn': ({ grams, otherGrams }: Args<'grams' | 'otherGrams'>, say: Speaker) =>
    `${say.mass(grams)} goes into the final dough; ${say.mass(otherGrams)} comes with what is drawn.`,
  'line.part-hydration': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `A part of its own at ${say.percent(fraction)} hydration.`,
  'line.not-defined': () => 'It is not defined: it is weighed, but counts as neither flour nor water.',
  'line.water-not-known': () => 'How much water it brings is not known.',
  'line.brings-water': ({ grams, fraction }: Args<'grams' | 'fraction'>, say: Speaker) =>
    `Brings ${say.mass(grams)} of water (${say.percent(fraction)} of it).`,
  'line.no-water': () => 'Brings no water.',
  'line.part-warmth': ({ part }: Args<'part'>) => `**${part}** — how warm this part was on that day.`,
  'line.property': (one: Args<'property' | 'meaning' | 'example'>, say: Speaker) =>
    `**${one.property}** — ${say.say(one.meaning)}. Reads like: \`${one.example}\``,

  'section.trial': ({ written }: Args<'written'>) => `**Trial ${written}**`,
  'section.all': ({ grams }: Args<'grams'>, say: Speaker) => `${say.mass(grams)} in all.`,
  'section.all-flour': ({ grams, otherGrams }: Args<'grams' | 'otherGrams'>, say: Speaker) =>
    `${say.mass(grams)} in all, ${say.mass(otherGrams)} of it flour.`,
  'section.culture': ({ grams }: Args<'grams'>, say: Speaker) => `Takes ${say.mass(grams)} of ripe culture.`,
  'section.steam': ({ grams }: Args<'grams'>, say: Speaker) =>
    `${say.mass(grams)} steams away while it cooks.`,
  'section.kept-back': ({ grams }: Args<'grams'>, say: Speaker) => `${say.mass(grams)} is kept back.`,
  'section.outside': () => 'Never in the bowl: it counts in no hydration.',

  'role.flour': () => 'flour',
  'role.water': () => 'water',
  'role.salt': () => 'salt',
  'role.yeast': () => 'yeast',
  'role.fat': () => 'fat',
  'role.sugar': () => 'sugar',
  'role.egg': () => 'egg',
  'role.dairy': () => 'dairy',
  'role.seeds': () => 'seeds',
  'role.other': () => 'ingredient',

  'composition.title': ({ name, role }: Args<'name' | 'role'>, say: Speaker) =>
    `**${name}** — ${say.say(role)}`,
  'composition.water': ({ fraction }: Args<'fraction'>, say: Speaker) => `water ${say.percent(fraction)}`,
  'composition.protein': ({ fraction }: Args<'fraction'>, say: Speaker) => `protein ${say.percent(fraction)}`,
  'composition.fat': ({ fraction }: Args<'fraction'>, say: Speaker) => `fat ${say.percent(fraction)}`,
  'composition.carbohydrate': ({ fraction }: Args<'fraction'>, say: Speaker) =>
    `carbohydrate ${say.percent(fraction)}`,
  'composition.sugars': ({ fraction }: Args<'fraction'>, say: Speaker) => `sugars ${say.percent(fraction)}`,
  'composition.fibre': ({ fraction }: Args<'fraction'>, say: Speaker) => `fibre ${say.percent(fraction)}`,
  'composition.ash': ({ fraction }: Args<'fraction'>, say: Speaker) => `ash ${say.percent(fraction)}`,
  'composition.energy': ({ kilojoules }: Args<'kilojoules'>, say: Speaker) =>
    `energy ${say.number(kilojoules, 0)} kJ in 100 g _(stated)_`,
  'composition.not-known': () => 'What is in it is not known.',
  'composition.figures': ({ source }: Args<'source'>, say: Speaker) => `_Figures: ${say.say(source)}._`,

  'flour-figure.protein': ({ fraction, source }: Args<'fraction' | 'source'>, say: Speaker) =>
    `protein ${say.percent(fraction)} at 14% moisture _(${say.say(source)})_`,
  'flour-figure.absorption': ({ fraction, source }: Args<'fraction' | 'source'>, say: Speaker) =>
    `absorption ${say.percent(fraction)} at 14% moisture _(${say.say(source)})_`,
  'flour-figure.peak': ({ minutes, source }: Args<'minutes' | 'source'>, say: Speaker) =>
    `peak ${say.minutes(minutes)} _(${say.say(source)})_`,
  'flour-figure.stability': ({ minutes, source }: Args<'minutes' | 'source'>, say: Speaker) =>
    `stability ${say.minutes(minutes)} _(${say.say(source)})_`,
  'flour-figure.ash': ({ fraction, source }: Args<'fraction' | 'source'>, say: Speaker) =>
    `ash ${say.percent(fraction)} of dry matter _(${say.say(source)})_`,
  'flour-figure.ash-types': (ash: Args<'fraction' | 'source' | 'facts'>, say: Speaker) =>
    `ash ${say.percent(ash.fraction)} of dry matter _(${say.say(ash.source)})_, which makes it ${say.list(ash.facts.map(say.say))}`,
  'flour-type.Germany': ({ name }: Args<'name'>) => `${name} (Germany)`,
  'flour-type.Austria': ({ name }: Args<'name'>) => `${name} (Austria)`,
  'flour-type.France': ({ name }: Args<'name'>) => `${name} (France)`,
  'flour-type.Italy': ({ name }: Args<'name'>) => `${name} (Italy)`,
};
