import type { Context, SectionKind, SubSection, TopSection } from './tree.ts';

/**
 * The words of the notation in one place: sections, what each may say, and how each property's value reads. The
 * grammar, the completion, the colouring and the language guide's tables are made from here.
 */

/** How the value of a property reads; each names one rule of the value grammar. */
export type Form =
  | 'temperature'
  | 'difference'
  | 'mass'
  | 'volume'
  | 'ovenLoad'
  | 'pieces'
  | 'percent'
  | 'protein'
  | 'duration'
  | 'heldAt'
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

const property = (word: string, form: Form, example: string, meaning: string): Property => ({
  word,
  form,
  example: `${word} ${example}`,
  meaning,
});
const many = (word: string, form: Form, example: string, meaning: string): Property => ({
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

const ofIngredient: readonly Property[] = [
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

const ofFlour: readonly Property[] = [
  property('grain', 'grain', 'wheat', 'the grain it is milled from'),
  property('milling', 'milling', 'white', 'white, medium or wholemeal'),
  property('moisture', 'percent', '14.2%', 'water in the flour as it is'),
  property('absorption', 'percent', '62.5%', 'farinograph water absorption at 500 FU, 14 % moisture'),
  property('starch damage', 'percent', '7%', 'damaged starch'),
  property('peak', 'duration', '7 min', 'farinograph development time'),
  property('stability', 'duration', '14 min', 'farinograph stability'),
];

const ofPart: readonly Property[] = [
  many('draws', 'draws', '22% of flour', 'takes this out of the totals of the formula'),
  property('ripe culture', 'percent', '20%', 'ripe culture of its own kind, in percent of the flour fed'),
  property('ferment', 'heldAt', '12 h at 18 °C', 'time and temperature of its fermentation'),
  property('soak', 'heldAt', '8 h at 18 °C', 'time and temperature of its soaking'),
  property('hold', 'heldAt', '12 h at 4 °C', 'time and temperature it is kept at'),
  property('keep back', 'mass', '60 g', 'what is left for the next day'),
  property('dough temperature', 'temperature', '25 °C', 'temperature wanted when mixed'),
];

const note = many('note', 'names', 'words of your own', 'kept as it is');

/** What a programme of mixing is made of: in a mix, and in a trial that keeps what was run. */
const ofProgramme: readonly Property[] = [
  many('load', 'load', 'flour, water', 'what goes into the bowl first'),
  many('add', 'load', 'salt, fresh yeast', 'what goes in later'),
  many('speed', 'mixSpeed', '1 for 3 min', 'runs the mixer at a speed'),
  many('rest', 'duration', '20 min', 'lets the dough stand in the bowl'),
  many('knead', 'duration', '8 min', 'kneads by hand'),
  many('fold', 'duration', '2 min', 'folds by hand'),
  many('stir', 'duration', '2 min', 'stirs by hand'),
];

/** The words that begin a line of a programme of mixing. */
export const programmeWords: ReadonlySet<string> = new Set(ofProgramme.map(({ word }) => word));

export const properties: Readonly<Record<SectionKind, readonly Property[]>> = {
  bakery: [
    property('room', 'temperature', '21 °C', 'room temperature'),
    property('flour', 'temperature', '19 °C', 'temperature of the flour'),
    property('tap water', 'temperature', '12 °C', 'temperature of the water from the tap'),
    property('cold store', 'temperature', '5 °C', 'where milk, egg, butter and fresh yeast come from'),
    property('ice', 'iceSupply', 'to hand', 'there is ice, so that it may be planned'),
    property('scale step', 'mass', '5 g', 'the step of the scale'),
    property('currency', 'currency', 'EUR', 'three capitals'),
    property('default mixer', 'name', 'big spiral', 'the mixer where a formula names none'),
    property('cup', 'volume', '250 ml', 'the size of a cup'),
    property('oven', 'ovenLoad', '60 pieces', 'what the oven holds'),
    property('label', 'label', 'EU', 'the label rules: EU or US'),
    note,
  ],
  flour: [...ofFlour, ...ofIngredient, note],
  ingredient: [...ofIngredient, note],
  mixer: [
    property('kind', 'mixerKind', 'spiral', 'hand, spiral, planetary, fork, twin arm or horizontal'),
    property('bowl', 'massRange', '12 kg to 60 kg', 'least and most dough'),
    many('speed', 'machineSpeed', '1 105 rpm', 'turns of the hook a minute at a speed'),
    property('warms towards', 'temperature', '29 °C', 'temperature the dough drifts to while worked'),
    property(
      'settles',
      'settles',
      '9 min at 1 kg',
      'time in which worked dough, of 1 kg where no mass is told, goes two thirds of the way to its surroundings',
    ),
    property('friction', 'difference', '14 °C', 'measured friction factor, three-temperature rule'),
    property('jacket takes', 'percent', '50%', 'the part of the mixing heat that a cooled jacket takes'),
    note,
  ],
  plan: [
    property('ready', 'ready', '2026-12-05 06:30', 'when all must be ready'),
    property(
      'begin',
      'ready',
      '22:00',
      'no dough is mixed before; without a date the last such time before `ready`',
    ),
    note,
  ],
  formula: [
    property('yield', 'yield', '24 pieces of 880 g', 'what it makes'),
    property('loss', 'percent', '1.5%', 'dough left in the bowl and on the bench'),
    property('bake loss', 'percent', '11%', 'weight lost in the oven and cooling'),
    property('dough temperature', 'temperature', '25 °C', 'temperature wanted at the end of mixing'),
    property('oven load', 'pieces', '60 pieces', 'pieces in the oven at once'),
    property('form', 'doughForm', 'tin', 'tin or hearth'),
    property(
      'ripe culture',
      'percent',
      '20%',
      'of a levain that other formulas take: ripe culture of its own kind',
    ),
    property('ferment', 'heldAt', '8 h at 26 °C', 'of a levain: time and temperature of its fermentation'),
    property('hold', 'heldAt', '12 h at 4 °C', 'of a levain: time and temperature it is kept at'),
    property('keep back', 'mass', '60 g', 'of a levain: what is left for the next day'),
    note,
  ],
  preferment: [...ofPart, note],
  soaker: [...ofPart, note],
  part: [...ofPart, note],
  filling: [note],
  topping: [note],
  bath: [note],
  mix: [
    ...ofProgramme,
    property(
      'develop',
      'degreeOfMixing',
      'intensive',
      'the degree of mixing wished: short, improved or intensive',
    ),
    note,
  ],
  process: [note],
  trial: [
    property('room', 'temperature', '22 °C', 'room temperature of the day'),
    property('flour', 'temperature', '19 °C', 'temperature of the flour'),
    many('water', 'trialWater', '11 °C', 'temperature, or mass, of the water used'),
    property('dough', 'mass', '21.0 kg', 'weight of the dough'),
    property('baked', 'mass', '18.8 kg', 'weight when baked'),
    many(
      'at',
      'reading',
      '3 min   20.6 °C, pick-up',
      'a reading, minutes from the start of mixing; stop the mixer before a probe goes in',
    ),
    property(
      'end',
      'endReading',
      '25.4 °C, developed',
      'a reading at the end of mixing, with the mixer stopped',
    ),
    many('rise', 'rise', '80% at 70 min', 'growth of the dough after so long'),
    property('mixer', 'name', 'big spiral', 'the mixer used, where another than planned'),
    property('mixed', 'mixedIn', 'in big spiral', 'what it was mixed in, or `by hand`; what was run follows'),
    ...ofProgramme,
    note,
  ],
};

export const topSections: readonly TopSection[] = [
  'formula',
  'flour',
  'ingredient',
  'mixer',
  'bakery',
  'plan',
];
export const subSections: readonly SubSection[] = [
  'preferment',
  'soaker',
  'part',
  'filling',
  'topping',
  'bath',
  'mix',
  'process',
  'trial',
];
export const sectionWords: readonly SectionKind[] = [...topSections, ...subSections];

const ingredientSections = new Set<Context>([
  'formula',
  'preferment',
  'soaker',
  'part',
  'filling',
  'topping',
  'bath',
]);

/** Whether ingredient lines may stand in a section. */
export function holdsIngredients(context: Context): boolean {
  return ingredientSections.has(context);
}

export function isTopSection(kind: string): kind is TopSection {
  return (topSections as readonly string[]).includes(kind);
}

export const roleWords = [
  'flour',
  'water',
  'salt',
  'yeast',
  'fat',
  'sugar',
  'egg',
  'dairy',
  'seeds',
] as const;
export const grains = [
  'wheat',
  'rye',
  'spelt',
  'emmer',
  'einkorn',
  'khorasan',
  'durum',
  'barley',
  'oats',
  'buckwheat',
  'rice',
  'maize',
] as const;
export const millings = ['white', 'medium', 'wholemeal'] as const;
export const mixerKinds = ['hand', 'spiral', 'planetary', 'fork', 'twin arm', 'horizontal'] as const;
export const doughForms = ['tin', 'hearth'] as const;
export const labels = ['EU', 'US'] as const;
/** The trade’s three degrees of mixing. */
export const degreeWords = ['short', 'improved', 'intensive'] as const;
export const iceSupplies = ['to hand'] as const;

/** The words a property allows, where it allows but some. */
export const wordsOfForm: Partial<Record<Form, readonly string[]>> = {
  grain: grains,
  milling: millings,
  mixerKind: mixerKinds,
  doughForm: doughForms,
  label: labels,
  degreeOfMixing: degreeWords,
  iceSupply: iceSupplies,
  role: roleWords,
};

/** The words that start a step with a meaning; others are kept as written. */
export const stepWords = [
  'bulk',
  'fold',
  'rest',
  'divide',
  'shape',
  'retard',
  'proof',
  'enclose',
  'sheet',
  'score',
  'boil',
  'bake',
  'cool',
] as const;

/** The textbook words for the state of a dough, in their order. */
export const stageWords = [
  'pick-up',
  'clean-up',
  'developing',
  'developed',
  'let-down',
  'breakdown',
] as const;

const byWord = new Map(
  Object.entries(properties).map(([section, list]) => [section, new Map(list.map((one) => [one.word, one]))]),
);

export function findProperty(section: SectionKind, word: string): Property | undefined {
  return byWord.get(section)?.get(word);
}

export const allPropertyWords: ReadonlySet<string> = new Set(
  Object.values(properties).flatMap((list) => list.map((one) => one.word)),
);
