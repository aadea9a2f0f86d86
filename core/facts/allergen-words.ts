import { singularOf } from '../calc/product/allergens.ts';
import { type Code, type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';

/** The entries of Annex II, each with its message. */
const entries: Readonly<Record<string, Code & `allergen-eu.${string}`>> = {
  'cereals containing gluten': 'allergen-eu.gluten',
  crustaceans: 'allergen-eu.crustaceans',
  eggs: 'allergen-eu.eggs',
  fish: 'allergen-eu.fish',
  peanuts: 'allergen-eu.peanuts',
  soybeans: 'allergen-eu.soybeans',
  milk: 'allergen-eu.milk',
  nuts: 'allergen-eu.nuts',
  celery: 'allergen-eu.celery',
  mustard: 'allergen-eu.mustard',
  sesame: 'allergen-eu.sesame',
  'sulphur dioxide and sulphites': 'allergen-eu.sulphites',
  lupin: 'allergen-eu.lupin',
  molluscs: 'allergen-eu.molluscs',
};

/** What a file or the catalogue may say that something contains, in the singular where the lists have one. */
const words: Readonly<Record<string, Code & `allergen.${string}`>> = {
  wheat: 'allergen.wheat',
  spelt: 'allergen.spelt',
  khorasan: 'allergen.khorasan',
  emmer: 'allergen.emmer',
  einkorn: 'allergen.einkorn',
  durum: 'allergen.durum',
  triticale: 'allergen.triticale',
  rye: 'allergen.rye',
  barley: 'allergen.barley',
  oats: 'allergen.oats',
  gluten: 'allergen.gluten',
  crustacean: 'allergen.crustacean',
  shrimp: 'allergen.shrimp',
  prawn: 'allergen.prawn',
  crab: 'allergen.crab',
  lobster: 'allergen.lobster',
  egg: 'allergen.egg',
  fish: 'allergen.fish',
  peanut: 'allergen.peanut',
  soya: 'allergen.soya',
  milk: 'allergen.milk',
  lactose: 'allergen.lactose',
  almond: 'allergen.almond',
  hazelnut: 'allergen.hazelnut',
  walnut: 'allergen.walnut',
  cashew: 'allergen.cashew',
  pecan: 'allergen.pecan',
  'brazil nut': 'allergen.brazil-nut',
  pistachio: 'allergen.pistachio',
  macadamia: 'allergen.macadamia',
  nuts: 'allergen.nuts',
  'tree nuts': 'allergen.tree-nuts',
  celery: 'allergen.celery',
  mustard: 'allergen.mustard',
  sesame: 'allergen.sesame',
  sulphites: 'allergen.sulphites',
  'sulphur dioxide': 'allergen.sulphur-dioxide',
  lupin: 'allergen.lupin',
  mollusc: 'allergen.mollusc',
  mussel: 'allergen.mussel',
  oyster: 'allergen.oyster',
  squid: 'allergen.squid',
  oat: 'allergen.oat',
  soy: 'allergen.soy',
  soybean: 'allergen.soybean',
  'sesame seed': 'allergen.sesame-seed',
  'macadamia nut': 'allergen.macadamia-nut',
  sulphite: 'allergen.sulphite',
  sulfites: 'allergen.sulfites',
  sulfite: 'allergen.sulfite',
  'sulfur dioxide': 'allergen.sulfur-dioxide',
};

/** An entry of Annex II as a message; what is on no list by its own name. */
export function entryMessage(entry: string): Message {
  const code = Object.hasOwn(entries, entry) ? entries[entry] : undefined;
  return code === undefined ? message('allergens.other', { name: entry }) : message(code);
}

/** What an allergen is called, by the word that a file has for it; a word of no list stays what it is. */
export function allergenName(word: string, speaker: Speaker): string {
  const one = singularOf(word);
  const known = [word, one].find((name) => Object.hasOwn(words, name));
  const code = known === undefined ? undefined : words[known];
  if (code === undefined) return word;
  const name = speaker.say(message(code));
  // Where a language has the word of the notation, it stands as the file has it.
  return name === known ? word : name;
}
