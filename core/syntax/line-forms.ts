import { firstOf } from '../text/element.ts';
import { type Code, type Message, message } from '../words/message.ts';
import type { Form } from './shared-properties.ts';
import type { QuantityKind, SectionKind } from './tree.ts';
import {
  degreeWords,
  doughForms,
  grains,
  labels,
  loadSharings,
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
  readonly meaning: Message;
  readonly example: string;
  /** The quantity that stands there; absent where words do. */
  readonly quantity?: QuantityKind;
  /** The usual units, commonest first. */
  readonly units?: readonly string[];
}

/** What a slot stands for, by its message. */
type Meaning = Exclude<Code extends infer C ? (C extends `slot.${infer M}` ? M : never) : never, 'one-of'>;

const quantity = (
  kind: QuantityKind,
  meaning: Meaning,
  example: string,
  ...units: readonly string[]
): Slot => ({ quantity: kind, meaning: message(`slot.${meaning}`), example, units });
const words = (meaning: Meaning, example: string): Slot => ({ meaning: message(`slot.${meaning}`), example });
const oneOf = (list: readonly string[]): Slot => ({
  meaning: message('slot.one-of', { words: list }),
  example: firstOf(list),
});

export const slots = {
  TEMPERATURE: quantity('temperature', 'temperature', '25 °C', '°C', '°F'),
  DEGREES: quantity('temperature', 'degrees', '14 °C', '°C', '°F'),
  MASS: quantity('mass', 'mass', '880 g', 'g', 'kg'),
  VOLUME: quantity('volume', 'volume', '250 ml', 'ml', 'l', 'tsp', 'tbsp', 'cup'),
  PERCENT: quantity('fraction', 'percent', '2%', '%'),
  PIECES: quantity('count', 'pieces', '24 pieces', 'pieces'),
  DURATION: quantity('duration', 'duration', '1 h 30 min', 'min', 'h', 's'),
  TIMES: quantity('times', 'times', '1.5 times', 'times'),
  ENERGY: quantity('energy', 'energy', '1520 kJ', 'kJ', 'kcal'),
  DENSITY: quantity('density', 'density', '1.03 g/ml', 'g/ml'),
  PRICE: quantity('money', 'price', '0.74 EUR per kg'),
  TURNS: quantity('turns', 'turns', '105 rpm', 'rpm'),
  WARMING: quantity('warming', 'warming', '0.7 °C/min', '°C/min', '°F/min'),
  DATE: quantity('date', 'date', '2026-12-05'),
  CLOCK: quantity('clock', 'clock', '06:30'),
  SPEED: quantity('bare', 'speed', '1'),
  PEOPLE: quantity('bare', 'people', '2'),
  LOADS: oneOf(loadSharings),
  CURRENCY: words('currency', 'EUR'),
  GRAIN: oneOf(grains),
  MILLING: oneOf(millings),
  KIND: oneOf(mixerKinds),
  FORM: oneOf(doughForms),
  RULES: oneOf(labels),
  DEGREE: oneOf(degreeWords),
  ROLE: oneOf(roleWords),
  NAME: words('name', 'bread flour'),
  PART: words('part', 'poolish'),
  MIXER: words('mixer', 'spiral'),
  STAGE: words('stage', 'clean-up'),
  FEEL: words('feel', 'smooth'),
  STEP: words('step', 'shape'),
  REMARK: words('remark', 'steam'),
  WORDS: words('words', 'second batch'),
} as const satisfies Readonly<Record<string, Slot>>;
export type SlotName = keyof typeof slots;

/** How the value of a property may read, commonest first. */
export const patternsOfForm: Readonly<Record<Form, readonly string[]>> = {
  temperature: ['TEMPERATURE'],
  drift: ['TEMPERATURE [within DEGREES]'],
  difference: ['DEGREES'],
  mass: ['MASS'],
  volume: ['VOLUME'],
  ovenLoad: ['PIECES', 'MASS'],
  pieces: ['PIECES'],
  percent: ['PERCENT'],
  shareAt: ['PERCENT [at PERCENT moisture]'],
  duration: ['DURATION'],
  heldAt: ['DURATION [at TEMPERATURE]'],
  cookedAt: ['[DURATION] at TEMPERATURE'],
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
  loadSharing: ['LOADS'],
  headcount: ['PEOPLE'],
  role: ['ROLE'],
  name: ['NAME'],
  names: ['NAME, …'],
  massRange: ['MASS to MASS', 'MASS'],
  machineSpeed: [
    'SPEED TURNS[, warms WARMING][, develops TIMES]',
    'SPEED TURNS, warms WARMING within WARMING[, develops TIMES within TIMES]',
  ],
  mixSpeed: ['SPEED [for] DURATION'],
  load: [
    'NAME [PERCENT] [at TEMPERATURE], …',
    'NAME MASS, …',
    'PERCENT of the NAME, …',
    'all',
    'all but NAME, …',
    'the rest',
    'all ROLE, …',
    'remaining NAME, …',
  ],
  draws: ['PERCENT of NAME', 'all NAME'],
  yield: ['PIECES of MASS [baked]', 'MASS [baked]', 'from MASS flour'],
  reading: ['DURATION TEMPERATURE[, STAGE]', 'DURATION TEMPERATURE, FEEL', 'DURATION, FEEL'],
  endReading: ['TEMPERATURE[, STAGE]', 'TEMPERATURE, FEEL', 'FEEL'],
  mixedIn: ['in MIXER', 'by hand'],
  rise: ['PERCENT at DURATION'],
  trialWater: ['TEMPERATURE', 'MASS'],
  testedDough: ['NAME[, in MIXER][, speed SPEED for DURATION]', 'NAME, by hand[, knead DURATION]'],
  minutes: ['DURATION, …'],
  stock: ['NAME MASS'],
  ready: ['[DATE] CLOCK'],
};

/** For whom an amount is meant; absent where anything may have it. */
export type AmountOf = 'flour' | 'water' | 'part';

export interface AmountForm {
  readonly pattern: string;
  readonly meaning: Message;
  readonly of?: AmountOf;
  /** Needs a density or the weight of a piece, which a part of the formula has not. */
  readonly measured?: true;
}

const warm = '[, at TEMPERATURE]';

/** How much of an ingredient there is, in the sections that go into the bowl. */
export const amountForms: readonly AmountForm[] = [
  { pattern: `PERCENT${warm}`, meaning: message('amount.percent') },
  {
    pattern: `PERCENT of all flour${warm}`,
    meaning: message('amount.percent-of-all'),
  },
  { pattern: `to PERCENT hydration${warm}`, meaning: message('amount.hydration'), of: 'water' },
  {
    pattern: `to PERCENT effective hydration${warm}`,
    meaning: message('amount.effective-hydration'),
    of: 'water',
  },
  { pattern: `balance${warm}`, meaning: message('amount.balance'), of: 'flour' },
  { pattern: `MASS${warm}`, meaning: message('amount.mass') },
  { pattern: `VOLUME${warm}`, meaning: message('amount.volume'), measured: true },
  { pattern: `PIECES${warm}`, meaning: message('amount.pieces'), measured: true },
  { pattern: `remaining${warm}`, meaning: message('amount.remaining'), of: 'part' },
];

/** How much of an ingredient there is in what never goes into the bowl. */
export const besideForms: readonly AmountForm[] = [
  { pattern: 'MASS a piece', meaning: message('amount.mass-a-piece') },
  { pattern: 'PERCENT', meaning: message('amount.percent-beside') },
  { pattern: 'MASS', meaning: message('amount.mass-of-batch') },
  { pattern: 'VOLUME', meaning: message('amount.volume') },
  { pattern: 'PIECES', meaning: message('amount.pieces') },
];

/** How much of a formula a plan bakes. */
export const plannedForms: readonly AmountForm[] = [
  { pattern: 'PIECES[, ready CLOCK]', meaning: message('amount.planned-pieces') },
  { pattern: 'MASS [baked][, ready CLOCK]', meaning: message('amount.planned-mass') },
];

const ofPart = (section: SectionKind): readonly string[] => [`${section} NAME:`];

/** How the headers of sections read. */
export const headerForms: Readonly<Record<SectionKind, readonly string[]>> = {
  formula: ['formula NAME:', 'formula NAME like NAME:'],
  flour: ofPart('flour'),
  ingredient: ofPart('ingredient'),
  mixer: ofPart('mixer'),
  bakery: ofPart('bakery'),
  plan: ofPart('plan'),
  experiment: ['experiment NAME[, DATE]:'],
  preferment: ofPart('preferment'),
  soaker: ofPart('soaker'),
  scald: ofPart('scald'),
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
