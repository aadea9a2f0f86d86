import type { OvenCapacity } from '../calc/plan/plan-batches.ts';
import type { LabelRegime } from '../calc/product/allergens.ts';
import { usualColdStoreCelsius } from '../syntax/cold-step.ts';
import type { Name } from '../syntax/tree.ts';
import { metricCupMillilitres } from '../syntax/units.ts';
import { propertiesOf, type SaidProperties, saidValue } from './properties.ts';
import type { Definition, Scope, UsualConditions } from './scope.ts';

/** The conditions of a folder. What no bakery section says is taken as a mild day, and the result says so. */
export interface Bakery {
  readonly name?: string;
  readonly roomCelsius: number;
  readonly flourCelsius: number;
  /** Absent when nobody told it: then how much ice is needed cannot be said. */
  readonly tapCelsius?: number;
  /** Ice may be planned. */
  readonly hasIce?: true;
  /** Where milk, egg, butter and fresh yeast come from. */
  readonly coldStoreCelsius: number;
  readonly scaleStepGrams: number;
  readonly defaultMixer?: Name;
  readonly cupMillilitres: number;
  /** The bakery tells the size of its cup. */
  readonly cupSaid?: true;
  /** What the oven takes at once; absent when nobody told it. */
  readonly oven?: OvenCapacity;
  /** From a cold oven to its first load, and between loads of different temperatures; absent when nobody told it. */
  readonly ovenHeatMinutes?: number;
  readonly ovenChangeMinutes?: number;
  /** Doughs of the same bake may go into one load. */
  readonly sharesLoads?: true;
  /** Whose rules a label follows; absent when nobody told it. */
  readonly label?: LabelRegime;
  /** Nobody names one manner of label, and both are wanted. */
  readonly bothLabels?: true;
  readonly definition?: Definition;
  /** The conditions that had to be assumed. */
  readonly assumed: readonly ('room' | 'flour' | 'scale step')[];
}

/** A mild day, room and flour alike; common practice, no source. */
export const mildCelsius = 21;
/** The step of a usual bench scale; common practice, no source. */
export const usualScaleStepGrams = 1;

export function bakeryOf(scope: Scope): Bakery {
  const definition = scope.nearest('bakery');
  const usual = scope.usual ?? nothingSet;
  const ofUsual = built.get(usual) ?? new WeakMap<object, Bakery>();
  built.set(usual, ofUsual);
  const key = definition ?? usual;
  const bakery = ofUsual.get(key) ?? build(definition, usual);
  ofUsual.set(key, bakery);
  return bakery;
}

const nothingSet: UsualConditions = {};
const built = new WeakMap<UsualConditions, WeakMap<object, Bakery>>();

function build(definition: Definition | undefined, usual: UsualConditions): Bakery {
  const said: SaidProperties =
    definition === undefined ? new Map() : propertiesOf(definition.block, definition.block.top!);
  const room = saidValue(said, 'room', 'temperature')?.celsius ?? usual.roomCelsius;
  const flour = saidValue(said, 'flour', 'temperature')?.celsius ?? usual.flourCelsius;
  const tap = saidValue(said, 'tap water', 'temperature')?.celsius ?? usual.tapCelsius;
  const step = saidValue(said, 'scale step', 'mass')?.grams;
  const mixer = saidValue(said, 'default mixer', 'name')?.name;
  const label = saidValue(said, 'label', 'word')?.word.toUpperCase() ?? usual.label;
  const assumed: ('room' | 'flour' | 'scale step')[] = [];
  if (room === undefined) assumed.push('room');
  if (flour === undefined) assumed.push('flour');
  if (step === undefined) assumed.push('scale step');
  return {
    roomCelsius: room ?? mildCelsius,
    flourCelsius: flour ?? room ?? mildCelsius,
    coldStoreCelsius: saidValue(said, 'cold store', 'temperature')?.celsius ?? usualColdStoreCelsius,
    ...(said.has('ice') ? { hasIce: true as const } : {}),
    scaleStepGrams: step !== undefined && step > 0 ? step : usualScaleStepGrams,
    cupMillilitres: saidValue(said, 'cup', 'volume')?.millilitres ?? metricCupMillilitres,
    ...(saidValue(said, 'cup', 'volume') === undefined ? {} : { cupSaid: true as const }),
    assumed,
    ...ovenOf(said),
    ...turnsOf(said),
    ...(definition === undefined ? {} : { definition, name: definition.name.text }),
    ...(tap === undefined ? {} : { tapCelsius: tap }),
    ...(label === 'EU' || label === 'US' ? { label } : {}),
    ...(label === 'both' ? { bothLabels: true as const } : {}),
    ...(mixer === undefined ? {} : { defaultMixer: mixer }),
  };
}

function turnsOf(
  said: SaidProperties,
): Pick<Bakery, 'ovenHeatMinutes' | 'ovenChangeMinutes' | 'sharesLoads'> {
  const heat = saidValue(said, 'oven heats', 'duration')?.seconds;
  const change = saidValue(said, 'oven changes', 'duration')?.seconds;
  const shared = saidValue(said, 'shared loads', 'word')?.word.toLowerCase();
  return {
    ...(heat === undefined || heat < 0 ? {} : { ovenHeatMinutes: heat / 60 }),
    ...(change === undefined || change < 0 ? {} : { ovenChangeMinutes: change / 60 }),
    ...(shared === 'same bake' ? { sharesLoads: true as const } : {}),
  };
}

function ovenOf(said: SaidProperties): Pick<Bakery, 'oven'> {
  const pieces = saidValue(said, 'oven', 'count')?.count;
  if (pieces !== undefined && pieces > 0) return { oven: { measure: 'pieces', count: pieces } };
  const grams = saidValue(said, 'oven', 'mass')?.grams;
  return grams !== undefined && grams > 0 ? { oven: { measure: 'mass', grams } } : {};
}
