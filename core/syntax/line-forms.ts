import type { QuantityKind, SectionKind } from './tree.ts';
import {
  degreeWords,
  doughForms,
  type Form,
  grains,
  labels,
  millings,
  mixerKinds,
  roleWords,
} from './vocabulary.ts';

/**
 * How lines read, as patterns: capitals stand for what a baker puts there, brackets hold what may be left out, and what ends
 * in an ellipsis may come again after each comma. Help while typing, completion and the reference page are made from here;
 * a test reads every pattern with the grammar.
 */

/** What may stand in the place of capitals. */
export interface Slot {
  readonly meaning: string;
  readonly example: string;
  /** The quantity that stands there; absent where words do. */
  readonly quantity?: QuantityKind;
  /** The usual units, commonest first. */
  readonly units?: readonly string[];
}

const quantity = (
  kind: QuantityKind,
  meaning: string,
  example: string,
  ...units: readonly string[]
): Slot => ({ quantity: kind, meaning, example, units });
const words = (meaning: string, example: string): Slot => ({ meaning, example });
const oneOf = (list: readonly string[]): Slot => words(`one of ${list.join(', ')}`, list[0]!);

export const slots = {
  TEMPERATURE: quantity('temperature', 'a temperature', '25 °C', '°C', '°F'),
  DEGREES: quantity('temperature', 'by how many degrees', '14 °C', '°C', '°F'),
  MASS: quantity('mass', 'a weight', '880 g', 'g', 'kg'),
  VOLUME: quantity('volume', 'a measure of volume', '250 ml', 'ml', 'l', 'tsp', 'tbsp', 'cup'),
  PERCENT: quantity('fraction', 'a percent', '2%', '%'),
  PIECES: quantity('count', 'a number of pieces', '24 pieces', 'pieces'),
  DURATION: quantity('duration', 'a time', '1 h 30 min', 'min', 'h', 's'),
  TIMES: quantity('times', 'so many times', '1.5 times', 'times'),
  ENERGY: quantity('energy', 'energy in 100 g', '1520 kJ', 'kJ', 'kcal'),
  DENSITY: quantity('density', 'the mass of a millilitre', '1.03 g/ml', 'g/ml'),
  PRICE: quantity('money', 'money for a weight, a volume or a piece', '0.74 EUR per kg'),
  TURNS: quantity('turns', 'turns a minute', '105 rpm', 'rpm'),
  WARMING: quantity('warming', 'how fast the dough warms', '0.7 °C/min', '°C/min', '°F/min'),
  DATE: quantity('date', 'a day: year, month, day', '2026-12-05'),
  CLOCK: quantity('clock', 'a time of day', '06:30'),
  SPEED: quantity('bare', 'the number of a speed', '1'),
  CURRENCY: words('three capitals', 'EUR'),
  GRAIN: oneOf(grains),
  MILLING: oneOf(millings),
  KIND: oneOf(mixerKinds),
  FORM: oneOf(doughForms),
  RULES: oneOf(labels),
  DEGREE: oneOf(degreeWords),
  ROLE: oneOf(roleWords),
  NAME: words('a name, or a role such as flour', 'bread flour'),
  PART: words('a part of this formula', 'poolish'),
  MIXER: words('a mixer of yours, or a kind of mixer', 'spiral'),
  STAGE: words('how the dough looks', 'clean-up'),
  STEP: words('what is done', 'shape'),
  REMARK: words('a remark of your own', 'steam'),
  WORDS: words('words of your own', 'second batch'),
} as const satisfies Readonly<Record<string, Slot>>;
export type SlotName = keyof typeof slots;

/** How the value of a property may read, commonest first. */
export const patternsOfForm: Readonly<Record<Form, readonly string[]>> = {
  temperature: ['TEMPERATURE'],
  difference: ['DEGREES'],
  mass: ['MASS'],
  volume: ['VOLUME'],
  ovenLoad: ['PIECES', 'MASS'],
  pieces: ['PIECES'],
  percent: ['PERCENT'],
  protein: ['PERCENT [at PERCENT moisture]'],
  duration: ['DURATION'],
  heldAt: ['DURATION [at TEMPERATURE]'],
  settles: ['DURATION [at MASS]'],
  times: ['TIMES'],
  energy: ['ENERGY'],
  density: ['DENSITY'],
  price: ['PRICE'],
  currency: ['CURRENCY'],
  grain: ['GRAIN'],
  milling: ['MILLING'],
  mixerKind: ['KIND'],
  doughForm: ['FORM'],
  label: ['RULES'],
  degreeOfMixing: ['DEGREE'],
  iceSupply: ['to hand'],
  role: ['ROLE'],
  name: ['NAME'],
  names: ['NAME, …'],
  massRange: ['MASS to MASS', 'MASS'],
  machineSpeed: ['SPEED TURNS[, warms WARMING][, develops TIMES]'],
  mixSpeed: ['SPEED [for] DURATION'],
  load: ['NAME [PERCENT] [at TEMPERATURE], …', 'all ROLE, …', 'remaining NAME, …'],
  draws: ['PERCENT of NAME', 'all NAME'],
  yield: ['PIECES of MASS [baked]', 'MASS [baked]', 'from MASS flour'],
  reading: ['DURATION TEMPERATURE[, STAGE]'],
  endReading: ['TEMPERATURE[, STAGE]'],
  mixedIn: ['in MIXER', 'by hand'],
  rise: ['PERCENT at DURATION'],
  trialWater: ['TEMPERATURE', 'MASS'],
  ready: ['[DATE] CLOCK'],
};

/** For whom an amount is meant; absent where anything may have it. */
export type AmountOf = 'flour' | 'water' | 'part';

export interface AmountForm {
  readonly pattern: string;
  readonly meaning: string;
  readonly of?: AmountOf;
  /** Needs a density or the weight of a piece, which a part of the formula has not. */
  readonly measured?: true;
}

const warm = '[, at TEMPERATURE]';

/** How much of an ingredient there is, in the sections that go into the bowl. */
export const amountForms: readonly AmountForm[] = [
  { pattern: `PERCENT${warm}`, meaning: 'percent of the flour of the section' },
  { pattern: `to PERCENT hydration${warm}`, meaning: 'as much water as that hydration takes', of: 'water' },
  {
    pattern: `to PERCENT effective hydration${warm}`,
    meaning: 'as much water as that hydration takes, with the water in all other ingredients counted',
    of: 'water',
  },
  { pattern: `balance${warm}`, meaning: 'whatever is left of 100 % flour', of: 'flour' },
  { pattern: `MASS${warm}`, meaning: 'weighed' },
  { pattern: `VOLUME${warm}`, meaning: 'measured; its density must be known', measured: true },
  { pattern: `PIECES${warm}`, meaning: 'counted; the weight of a piece must be known', measured: true },
  { pattern: `remaining${warm}`, meaning: 'all that is left of the part', of: 'part' },
];

/** How much of an ingredient there is in what never goes into the bowl. */
export const besideForms: readonly AmountForm[] = [
  { pattern: 'MASS a piece', meaning: 'weighed for each piece' },
  { pattern: 'PERCENT', meaning: 'percent of the flour of the section, or of its line of 100 %' },
  { pattern: 'MASS', meaning: 'weighed for the whole batch' },
  { pattern: 'VOLUME', meaning: 'measured; its density must be known' },
  { pattern: 'PIECES', meaning: 'counted; the weight of a piece must be known' },
];

/** How much of a formula a plan bakes. */
export const plannedForms: readonly AmountForm[] = [
  { pattern: 'PIECES[, ready CLOCK]', meaning: 'so many pieces' },
  { pattern: 'MASS [baked][, ready CLOCK]', meaning: 'so much dough, or so much bread' },
];

const ofPart = (section: SectionKind): readonly string[] => [`${section} NAME:`];

/** How the headers of sections read. */
export const headerForms: Readonly<Record<SectionKind, readonly string[]>> = {
  formula: ofPart('formula'),
  flour: ofPart('flour'),
  ingredient: ofPart('ingredient'),
  mixer: ofPart('mixer'),
  bakery: ofPart('bakery'),
  plan: ofPart('plan'),
  preferment: ofPart('preferment'),
  soaker: ofPart('soaker'),
  part: ofPart('part'),
  filling: ofPart('filling'),
  topping: ofPart('topping'),
  bath: ofPart('bath'),
  mix: ['mix in MIXER:', 'mix by hand:', 'mix PART in MIXER:', 'mix PART by hand:'],
  process: ['process:', 'process PART:'],
  trial: ['trial DATE[, WORDS]:'],
};

const timed = '[DURATION] [at TEMPERATURE][, REMARK]';

/** How a step reads behind its first word. */
export function stepPattern(word: string): string {
  if (word === 'bulk') return '[DURATION] [at TEMPERATURE][, fold at DURATION]';
  return word === 'enclose' ? 'PART' : timed;
}
