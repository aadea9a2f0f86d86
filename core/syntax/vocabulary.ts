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
  loadSharings,
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
    property('room', 'temperature', '21 °C', 'bakery-room'),
    property('flour', 'temperature', '19 °C', 'bakery-flour'),
    property('tap water', 'temperature', '12 °C', 'bakery-tap-water'),
    property('cold store', 'temperature', '5 °C', 'bakery-cold-store'),
    property('ice', 'iceSupply', 'to hand', 'bakery-ice'),
    property('scale step', 'mass', '5 g', 'bakery-scale-step'),
    property('currency', 'currency', 'EUR', 'bakery-currency'),
    property('default mixer', 'name', 'big spiral', 'bakery-default-mixer'),
    property('cup', 'volume', '250 ml', 'bakery-cup'),
    property('oven', 'ovenLoad', '60 pieces', 'bakery-oven'),
    property('oven heats', 'duration', '50 min', 'bakery-oven-heats'),
    property('oven changes', 'duration', '15 min', 'bakery-oven-changes'),
    property('shared loads', 'loadSharing', 'same bake', 'bakery-shared-loads'),
    property('label', 'label', 'EU', 'bakery-label'),
    note,
  ],
  flour: [...ofFlour, ...ofIngredient, note],
  ingredient: [...ofIngredient, note],
  mixer: [
    property('kind', 'mixerKind', 'spiral', 'mixer-kind'),
    property('bowl', 'massRange', '12 kg to 60 kg', 'mixer-bowl'),
    many('speed', 'machineSpeed', '1 105 rpm', 'mixer-speed'),
    property('warms towards', 'drift', '29 °C', 'mixer-warms-towards'),
    property('settles', 'settles', '9 min at 1 kg', 'mixer-settles'),
    property('friction', 'difference', '14 °C', 'mixer-friction'),
    property('jacket takes', 'percent', '50%', 'mixer-jacket-takes'),
    note,
  ],
  plan: [
    property('ready', 'ready', '2026-12-05 06:30', 'plan-ready'),
    property('begin', 'ready', '22:00', 'plan-begin'),
    property('people', 'headcount', '2', 'plan-people'),
    note,
  ],
  experiment: [
    many('dough', 'testedDough', 'Plain White, by hand, knead 30 min', 'experiment-dough'),
    property('batch', 'mass', '900 g', 'experiment-batch'),
    property('read at', 'minutes', '8 min, 16 min, 30 min', 'experiment-read-at'),
    property('room', 'temperature', '21 °C', 'experiment-room'),
    property('flour', 'temperature', '19 °C', 'experiment-flour'),
    property('water', 'temperature', '20 °C', 'experiment-water'),
    many('on hand', 'stock', 'strong white 3 kg', 'experiment-on-hand'),
    note,
  ],
  formula: [
    property('yield', 'yield', '24 pieces of 880 g', 'formula-yield'),
    property('loss', 'percent', '1.5%', 'formula-loss'),
    property('bake loss', 'percent', '11%', 'formula-bake-loss'),
    property('dough temperature', 'temperature', '25 °C', 'formula-dough-temperature'),
    property('oven load', 'pieces', '60 pieces', 'formula-oven-load'),
    property('form', 'doughForm', 'tin', 'formula-form'),
    property('ripe culture', 'percent', '20%', 'formula-ripe-culture'),
    property('ferment', 'heldAt', '8 h at 26 °C', 'formula-ferment'),
    property('hold', 'heldAt', '12 h at 4 °C', 'formula-hold'),
    property('keep back', 'mass', '60 g', 'formula-keep-back'),
    many('without', 'names', 'milk', 'formula-without'),
    note,
  ],
  preferment: [...ofPart, note],
  soaker: [...ofPart, note],
  scald: [
    ...ofPart,
    property('cook', 'cookedAt', 'at 95 °C', 'scald-cook'),
    property('cooking loss', 'percent', '4%', 'scald-cooking-loss'),
    note,
  ],
  part: [...ofPart, note],
  filling: [note],
  topping: [note],
  bath: [note],
  mix: [...ofProgramme, property('develop', 'degreeOfMixing', 'intensive', 'mix-develop'), note],
  process: [note],
  trial: [
    property('room', 'temperature', '22 °C', 'trial-room'),
    property('flour', 'temperature', '19 °C', 'trial-flour'),
    many('water', 'trialWater', '11 °C', 'trial-water'),
    property('dough', 'mass', '21.0 kg', 'trial-dough'),
    property('baked', 'mass', '18.8 kg', 'trial-baked'),
    many('at', 'reading', '3 min   20.6 °C, pick-up', 'trial-at'),
    property('end', 'endReading', '25.4 °C, developed', 'trial-end'),
    many('rise', 'rise', '80% at 70 min', 'trial-rise'),
    property('mixer', 'name', 'big spiral', 'trial-mixer'),
    property('mixed', 'mixedIn', 'in big spiral', 'trial-mixed'),
    property('experiment', 'name', 'Wet and dry', 'trial-experiment'),
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
  'experiment',
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
  loadSharing: loadSharings,
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
