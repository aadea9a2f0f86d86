import type { foodSources as english } from '../en/food-sources.ts';
import type { Translation } from '../message.ts';

/** Woher die Werte von Zutaten, Mehltypen und Knetern stammen: Satzteile ohne Punkt am Ende. */
export const foodSources: Translation<typeof english> = {
  'food-source.usda': ({ code }) =>
    `USDA National Nutrient Database for Standard Reference, release 27, ${code}`,
  'food-source.recalled': () =>
    'aus den Nährwerttabellen der USDA erinnert und nicht nachgelesen: aus dem Gedächtnis, vor einer Kennzeichnung prüfen',
  'food-source.partly-recalled': ({ source, words }, say) =>
    `${say.say(source)}; ${say.list(words)} aus dem Gedächtnis`,
  'food-source.remarked': ({ source, remark }, say) => `${say.say(source)}. ${say.say(remark)}`,
  'food-source.flour-type': ({ source, figures, name, otherSource }, say) =>
    `${say.say(source)} (${say.say(figures)}); das Übrige ersatzweise von ${name}, ${say.say(otherSource)}`,
  'food-source.usual': ({ name }) => `wie ${name}; genauer mit der Angabe, welche Zutat es ist`,
  'food-source.section': () => 'nach dem eigenen Abschnitt',
  'food-source.section-and': ({ name, source }, say) =>
    `nach dem eigenen Abschnitt, das Übrige von ${name} (${say.say(source)})`,
  'food-source.section-and-usual': ({ name, source }, say) =>
    `nach dem eigenen Abschnitt, das Übrige von ${name}, dem Üblichen seiner Art (${say.say(source)})`,

  'food-remark.ice': () =>
    'Gefrorenes Leitungswasser: bei 0 °C oder darunter bringt es seine Schmelzkälte mit',
  'food-remark.active-dry-yeast': () => 'Aktive Trockenhefe steht dafür',
  'food-remark.lactose': () => 'Seine Kohlenhydrate zählen als Zucker: es ist Laktose',
  'food-remark.lactose-otherwise': ({ grams }, say) =>
    `Seine Kohlenhydrate zählen als Zucker: es ist Laktose, und die Tabelle gibt nach einem anderen Verfahren ${say.number(grams, 2)} g an`,
  'food-remark.whole-grain': () => 'Das ganze Korn steht für sein Mehl',
  'food-remark.raw-with-skin': () => 'Roh, mit der Haut',
  'food-remark.may-hold-milk': () => 'Oft ist Milch darin: die Packung gibt es an',
  'food-remark.may-hold-milk-or-soya': () => 'Oft ist Milch oder Soja darin: die Packung gibt es an',
  'food-remark.may-be-sulphured': () => 'Oft geschwefelt: die Packung gibt es an',
  'food-remark.acid': () => 'Die Säure darin zählt zu den Kohlenhydraten',
  'food-remark.spirit': ({ fraction }, say) => `Eine Spirituose mit ${say.percent(fraction)} vol`,
  'food-remark.boiled': () => 'Gekocht, ohne Schale',
  'food-remark.coriander': () => 'Koriander steht dafür',
  'food-remark.cinnamon': () => 'Zimt steht dafür',

  'flour-type.din': () => 'DIN 10355, Asche der Trockenmasse',
  'flour-type.codex': () => 'Codex Alimentarius Austriacus, Asche der Trockenmasse (lebensmittelbuch.at)',
  'flour-type.france': () => 'französische Mehltypen, Asche der Trockenmasse',
  'flour-type.italy': () => 'DPR 187/2001, Asche und Eiweiß der Trockenmasse',
  'flour-type.from-memory': ({ source }, say) => `${say.say(source)}: aus dem Gedächtnis`,
  'flour-type.ash-up-to': ({ highFraction }, say) => `Asche bis ${say.percent(highFraction)}`,
  'flour-type.ash-from': ({ lowFraction }, say) => `Asche ab ${say.percent(lowFraction)}`,
  'flour-type.ash': ({ lowFraction, highFraction }, say) =>
    `Asche ${say.percent(lowFraction)} bis ${say.percent(highFraction)}`,
  'flour-type.with-protein': ({ figures, lowFraction }, say) =>
    `${say.say(figures)}, Eiweiß ab ${say.percent(lowFraction)}`,

  'mixer-source.first-speed': () =>
    'erster Gang nach dem Datenblatt eines Herstellers, zweiter Gang gängige Praxis',
};
