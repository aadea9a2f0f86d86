import { type Code, type Message, message } from '../words/message.ts';

/** What a line of a section may say, and the lines that several sections share. */

/** How the value of a property reads; each names one rule of the value grammar. */
export type Form =
  | 'temperature'
  | 'drift'
  | 'difference'
  | 'mass'
  | 'volume'
  | 'ovenLoad'
  | 'pieces'
  | 'percent'
  | 'shareAt'
  | 'duration'
  | 'heldAt'
  | 'cookedAt'
  | 'settles'
  | 'times'
  | 'energy'
  | 'density'
  | 'price'
  | 'currency'
  | 'grain'
  | 'milling'
  | 'mixerKind'
  | 'doughForm'
  | 'label'
  | 'degreeOfMixing'
  | 'iceSupply'
  | 'loadSharing'
  | 'headcount'
  | 'role'
  | 'name'
  | 'names'
  | 'massRange'
  | 'machineSpeed'
  | 'mixSpeed'
  | 'load'
  | 'draws'
  | 'yield'
  | 'reading'
  | 'endReading'
  | 'mixedIn'
  | 'rise'
  | 'trialWater'
  | 'testedDough'
  | 'minutes'
  | 'stock'
  | 'ready';

export interface Property {
  readonly word: string;
  readonly form: Form;
  /** May be said more than once in a section. */
  readonly repeatable?: true;
  /** How a line of it reads, for messages and completion. */
  readonly example: string;
  readonly meaning: Message;
}

/** What a property stands for, by its message. */
type Meaning = Code extends infer C ? (C extends `property.${infer M}` ? M : never) : never;

export const property = (word: string, form: Form, example: string, meaning: Meaning): Property => ({
  word,
  form,
  example: `${word} ${example}`,
  meaning: message(`property.${meaning}`),
});
export const many = (word: string, form: Form, example: string, meaning: Meaning): Property => ({
  ...property(word, form, example, meaning),
  repeatable: true,
});

const shareExamples: Readonly<Record<string, string>> = { salt: '1.5%', ash: '0.55%' };
const shareWords = [
  'water',
  'protein',
  'fat',
  'saturates',
  'carbohydrate',
  'sugars',
  'starch',
  'fibre',
  'salt',
  'ash',
  'alcohol',
] as const;
const shares: readonly Property[] = shareWords.map((word) =>
  property(
    word,
    word === 'protein' || word === 'ash' ? 'shareAt' : 'percent',
    shareExamples[word] ?? '12.5%',
    `share-${word}`,
  ),
);

export const ofIngredient: readonly Property[] = [
  ...shares,
  property('energy', 'energy', '1520 kJ', 'energy'),
  many('contains', 'names', 'barley', 'contains'),
  property('counts as', 'role', 'flour', 'counts-as'),
  property('density', 'density', '1.03 g/ml', 'density'),
  property('piece weight', 'mass', '50 g', 'piece-weight'),
  property('price', 'price', '0.74 EUR per kg', 'price'),
  property('holds water', 'times', '1.5 times', 'holds-water'),
  property('like', 'name', 'bread flour', 'like'),
];

export const ofFlour: readonly Property[] = [
  property('grain', 'grain', 'wheat', 'grain'),
  property('milling', 'milling', 'white', 'milling'),
  property('moisture', 'percent', '14.2%', 'moisture'),
  property('absorption', 'percent', '62.5%', 'absorption'),
  property('starch damage', 'percent', '7%', 'starch-damage'),
  property('peak', 'duration', '7 min', 'peak'),
  property('stability', 'duration', '14 min', 'stability'),
];

export const ofPart: readonly Property[] = [
  many('draws', 'draws', '22% of flour', 'part-draws'),
  property('ripe culture', 'percent', '20%', 'part-ripe-culture'),
  property('ferment', 'heldAt', '12 h at 18 °C', 'part-ferment'),
  property('soak', 'heldAt', '8 h at 18 °C', 'part-soak'),
  property('hold', 'heldAt', '12 h at 4 °C', 'part-hold'),
  property('keep back', 'mass', '60 g', 'part-keep-back'),
  property('dough temperature', 'temperature', '25 °C', 'part-dough-temperature'),
];

export const note = many('note', 'names', 'words of your own', 'note');

/** What a programme of mixing is made of: in a mix, and in a trial that keeps what was run. */
export const ofProgramme: readonly Property[] = [
  many('load', 'load', 'flour, water', 'load'),
  many('add', 'load', 'salt, fresh yeast', 'add'),
  many('speed', 'mixSpeed', '1 for 3 min', 'speed'),
  many('rest', 'duration', '20 min', 'rest'),
  many('knead', 'duration', '8 min', 'knead'),
  many('fold', 'duration', '2 min', 'fold'),
  many('stir', 'duration', '2 min', 'stir'),
];
