import {
  type Form,
  many,
  note,
  ofFlour,
  ofIngredient,
  ofPart,
  ofProgramme,
  type Property,
  property,
} from './shared-properties.ts';
import type { Context, SectionKind, SubSection, TopSection } from './tree.ts';
import {
  degreeWords,
  doughForms,
  grains,
  iceSupplies,
  labels,
  millings,
  mixerKinds,
  roleWords,
} from './word-lists.ts';

export * from './word-lists.ts';

/**
 * The words of the notation in one place: sections, what each may say, and how each property's value reads. The
 * grammar, the completion, the colouring and the language guide's tables are made from here.
 */

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
    property('warms towards', 'drift', '29 °C', 'temperature the dough drifts to while worked'),
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
  scald: [
    ...ofPart,
    property('cook', 'cookedAt', 'at 95 °C', 'how hot it is cooked; its starch then binds its water'),
    property('cooking loss', 'percent', '4%', 'water that steams away while it cooks, of all that went in'),
    note,
  ],
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
  'scald',
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
  'scald',
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

const byWord = new Map(
  Object.entries(properties).map(([section, list]) => [section, new Map(list.map((one) => [one.word, one]))]),
);

export function findProperty(section: SectionKind, word: string): Property | undefined {
  return byWord.get(section)?.get(word);
}

export const allPropertyWords: ReadonlySet<string> = new Set(
  Object.values(properties).flatMap((list) => list.map((one) => one.word)),
);
