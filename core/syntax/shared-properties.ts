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
  | 'protein'
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
  | 'ready';

export interface Property {
  readonly word: string;
  readonly form: Form;
  /** May be said more than once in a section. */
  readonly repeatable?: true;
  /** How a line of it reads, for messages and completion. */
  readonly example: string;
  readonly meaning: string;
}

export const property = (word: string, form: Form, example: string, meaning: string): Property => ({
  word,
  form,
  example: `${word} ${example}`,
  meaning,
});
export const many = (word: string, form: Form, example: string, meaning: string): Property => ({
  ...property(word, form, example, meaning),
  repeatable: true,
});

const shareExamples: Readonly<Record<string, string>> = { salt: '1.5%', ash: '0.55%' };
const shares: readonly Property[] = [
  ['water', 'water in it'],
  ['protein', 'protein in it'],
  ['fat', 'fat in it'],
  ['saturates', 'saturated fat in it'],
  ['carbohydrate', 'carbohydrate in it, fibre included'],
  ['sugars', 'sugars in it'],
  ['starch', 'starch in it'],
  ['fibre', 'fibre in it'],
  ['salt', 'salt in it'],
  ['ash', 'minerals in it'],
  ['alcohol', 'alcohol in it'],
].map(([word, meaning]) =>
  property(word!, word === 'protein' ? 'protein' : 'percent', shareExamples[word!] ?? '12.5%', meaning!),
);

export const ofIngredient: readonly Property[] = [
  ...shares,
  property('energy', 'energy', '1520 kJ', 'energy in 100 g'),
  many('contains', 'names', 'barley', 'allergens in it'),
  property('counts as', 'role', 'flour', 'the role it plays in a formula'),
  property('density', 'density', '1.03 g/ml', 'mass of a millilitre'),
  property('piece weight', 'mass', '50 g', 'mass of one piece'),
  property('price', 'price', '0.74 EUR per kg', 'what it costs'),
  property('holds water', 'times', '1.5 times', 'water it soaks up, times its own mass'),
  property('like', 'name', 'bread flour', 'starts from what another is made of'),
];

export const ofFlour: readonly Property[] = [
  property('grain', 'grain', 'wheat', 'the grain it is milled from'),
  property('milling', 'milling', 'white', 'white, medium or wholemeal'),
  property('moisture', 'percent', '14.2%', 'water in the flour as it is'),
  property('absorption', 'percent', '62.5%', 'farinograph water absorption at 500 FU, 14 % moisture'),
  property('starch damage', 'percent', '7%', 'damaged starch'),
  property('peak', 'duration', '7 min', 'farinograph development time'),
  property('stability', 'duration', '14 min', 'farinograph stability'),
];

export const ofPart: readonly Property[] = [
  many('draws', 'draws', '22% of flour', 'takes this out of the totals of the formula'),
  property('ripe culture', 'percent', '20%', 'ripe culture of its own kind, in percent of the flour fed'),
  property('ferment', 'heldAt', '12 h at 18 °C', 'time and temperature of its fermentation'),
  property('soak', 'heldAt', '8 h at 18 °C', 'time and temperature of its soaking'),
  property('hold', 'heldAt', '12 h at 4 °C', 'time and temperature it is kept at'),
  property('keep back', 'mass', '60 g', 'what is left for the next day'),
  property('dough temperature', 'temperature', '25 °C', 'temperature wanted when mixed'),
];

export const note = many('note', 'names', 'words of your own', 'kept as it is');

/** What a programme of mixing is made of: in a mix, and in a trial that keeps what was run. */
export const ofProgramme: readonly Property[] = [
  many('load', 'load', 'flour, water', 'what goes into the bowl first'),
  many('add', 'load', 'salt, fresh yeast', 'what goes in later'),
  many('speed', 'mixSpeed', '1 for 3 min', 'runs the mixer at a speed'),
  many('rest', 'duration', '20 min', 'lets the dough stand in the bowl'),
  many('knead', 'duration', '8 min', 'kneads by hand'),
  many('fold', 'duration', '2 min', 'folds by hand'),
  many('stir', 'duration', '2 min', 'stirs by hand'),
];
