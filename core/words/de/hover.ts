import type { hover as english } from '../en/hover.ts';
import type { Translation } from '../message.ts';

/** Was beim Zeigen auf eine Zeile, einen Abschnitt oder eine Zutat erscheint; Markdown. */
export const hover: Translation<typeof english> = {
  'line.title': ({ name }) => `**${name}**`,
  'line.title-figures': ({ name, parts }, say) => `**${name}** — ${parts.map(say.say).join(' · ')}`,
  'line.of-flour': ({ fraction }, say) => `**${say.percent(fraction)}** vom Mehl`,
  'line.of-part-flour': ({ fraction, part }, say) => `**${say.percent(fraction)}** vom Mehl in „${part}“`,
  'line.of-line': ({ fraction, name }, say) => `**${say.percent(fraction)}** von „${name}“`,
  'line.in-part': ({ fraction, part }, say) => `**${say.percent(fraction)}** in „${part}“`,
  'line.weight': ({ grams }, say) => `**${say.mass(grams)}**`,
  'line.not-known': () =>
    'Noch nicht bekannt: diese Zeile, oder eine, von der sie abhängt, ist nicht fertig.',
  'line.all-drawn': () => 'Alles davon kommt mit dem Entnommenen in den Teig.',
  'line.rest-drawn': ({ grams, otherGrams }, say) =>
    `${say.mass(grams)} kommen in den Hauptteig; ${say.mass(otherGrams)} kommen mit dem Entnommenen dazu.`,
  'line.part-hydration': ({ fraction }, say) => `Ein eigener Teil mit ${say.percent(fraction)} Hydration.`,
  'line.not-defined': () =>
    'Das ist nicht definiert: es wird abgewogen, zählt aber weder als Mehl noch als Wasser.',
  'line.water-not-known': () => 'Wie viel Wasser es mitbringt, ist nicht bekannt.',
  'line.brings-water': ({ grams, fraction }, say) =>
    `Bringt ${say.mass(grams)} Wasser mit (${say.percent(fraction)} davon).`,
  'line.no-water': () => 'Bringt kein Wasser mit.',
  'line.part-warmth': ({ part }) => `**${part}** — wie warm dieser Teil an dem Tag war.`,
  'line.property': (one, say) =>
    `**${one.property}** — ${say.say(one.meaning)}. Schreibt sich: \`${one.example}\``,

  'section.trial': ({ written }) => `**Knetversuch ${written}**`,
  'section.all': ({ grams }, say) => `${say.mass(grams)} insgesamt.`,
  'section.all-flour': ({ grams, otherGrams }, say) =>
    `${say.mass(grams)} insgesamt, davon ${say.mass(otherGrams)} Mehl.`,
  'section.culture': ({ grams }, say) => `Nimmt ${say.mass(grams)} Anstellgut.`,
  'section.steam': ({ grams }, say) => `${say.mass(grams)} verdampfen beim Kochen.`,
  'section.kept-back': ({ grams }, say) => `${say.mass(grams)} werden zurückbehalten.`,
  'section.outside': () => 'Kommt nie in den Kessel: zählt in keiner Hydration.',

  'role.flour': () => 'Mehl',
  'role.water': () => 'Wasser',
  'role.salt': () => 'Salz',
  'role.yeast': () => 'Hefe',
  'role.fat': () => 'Fett',
  'role.sugar': () => 'Zucker',
  'role.egg': () => 'Ei',
  'role.dairy': () => 'Milch',
  'role.seeds': () => 'Saaten',
  'role.other': () => 'Zutat',

  'composition.title': ({ name, role }, say) => `**${name}** — ${say.say(role)}`,
  'composition.water': ({ fraction }, say) => `Wasser ${say.percent(fraction)}`,
  'composition.protein': ({ fraction }, say) => `Eiweiß ${say.percent(fraction)}`,
  'composition.fat': ({ fraction }, say) => `Fett ${say.percent(fraction)}`,
  'composition.carbohydrate': ({ fraction }, say) => `Kohlenhydrate ${say.percent(fraction)}`,
  'composition.sugars': ({ fraction }, say) => `Zucker ${say.percent(fraction)}`,
  'composition.fibre': ({ fraction }, say) => `Ballaststoffe ${say.percent(fraction)}`,
  'composition.ash': ({ fraction }, say) => `Mineralstoffe ${say.percent(fraction)}`,
  'composition.energy': ({ kilojoules }, say) =>
    `Brennwert ${say.number(kilojoules, 0)} kJ in 100 g _(angegeben)_`,
  'composition.not-known': () => 'Was darin ist, ist nicht bekannt.',
  'composition.figures': ({ source }, say) => `_Zahlen: ${say.say(source)}._`,

  'flour-figure.protein': ({ fraction, source }, say) =>
    `Eiweiß ${say.percent(fraction)} bei 14\u00a0% Feuchte _(${say.say(source)})_`,
  'flour-figure.absorption': ({ fraction, source }, say) =>
    `Wasseraufnahme ${say.percent(fraction)} bei 14\u00a0% Feuchte _(${say.say(source)})_`,
  'flour-figure.peak': ({ minutes, source }, say) =>
    `Teigentwicklungszeit ${say.minutes(minutes)} _(${say.say(source)})_`,
  'flour-figure.stability': ({ minutes, source }, say) =>
    `Stabilität ${say.minutes(minutes)} _(${say.say(source)})_`,
  'flour-figure.ash': ({ fraction, source }, say) =>
    `Mineralstoffe ${say.percent(fraction)} der Trockenmasse _(${say.say(source)})_`,
  'flour-figure.ash-types': (ash, say) =>
    `Mineralstoffe ${say.percent(ash.fraction)} der Trockenmasse _(${say.say(ash.source)})_; damit ist es ${say.list(ash.facts.map(say.say))}`,
  'flour-type.Germany': ({ name }) => `${name} (Deutschland)`,
  'flour-type.Austria': ({ name }) => `${name} (Österreich)`,
  'flour-type.France': ({ name }) => `${name} (Frankreich)`,
  'flour-type.Italy': ({ name }) => `${name} (Italien)`,
};
