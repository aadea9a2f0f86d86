import { type Composition, specificHeat } from '../formula/composition.ts';
import { type HeatItem, pureWater } from './heat-content.ts';

/** The rule of three or four temperatures: n × dough − the sum of the known temperatures − friction, all in one unit. */
export function ruleOfThumbWater(dough: number, others: readonly number[], friction: number): number {
  return (others.length + 1) * dough - others.reduce((sum, one) => sum + one, 0) - friction;
}

/** Friction from a trial: n × dough − room − flour − water (− preferment), n the number of temperatures given. */
export function frictionFactor(dough: number, temperatures: readonly number[]): number {
  return temperatures.length * dough - temperatures.reduce((sum, one) => sum + one, 0);
}

/**
 * How far a dough is developed, 1 when it is, at the end of the mix that a friction factor was taken over, at the most: nobody
 * takes it over an overmixed dough. Common practice, our own choice.
 */
export const factorStandsFor = 2.5;

/** Shares of the dough's heat capacity: about 0.42, 0.57 and 0.01 at 65 % hydration. They sum to 1. */
export interface CapacityShares {
  readonly flour: number;
  readonly water: number;
  readonly salt: number;
}

/** The conditions under which a friction factor was read: temperatures in °C. */
export interface FrictionConditions {
  readonly doughCelsius: number;
  readonly roomCelsius: number;
  readonly flourCelsius: number;
  /** Temperature of the salt and the small things; the room's when absent. */
  readonly saltCelsius?: number;
  readonly shares: CapacityShares;
}

/**
 * The whole rise q above the mixed ingredients, °C, that a friction factor (n = 3) stands for at the temperatures it was
 * measured at. It holds mixing, hydration and every loss, so hydration must not be added again.
 */
export function riseFromFriction(frictionCelsius: number, at: FrictionConditions): number {
  const waterCelsius = 3 * at.doughCelsius - at.roomCelsius - at.flourCelsius - frictionCelsius;
  return at.doughCelsius - mixed(at, waterCelsius);
}

/**
 * The friction factor (n = 3), °C, that belongs to a whole rise q: 3q + (3w_f − 1)·T_flour + (3w_w − 1)·T_water +
 * 3w_s·T_salt − T_room, with the water that brings the dough to its temperature.
 */
export function frictionFromRise(riseCelsius: number, at: FrictionConditions): number {
  const salt = at.saltCelsius ?? at.roomCelsius;
  const waterCelsius =
    (at.doughCelsius - riseCelsius - at.shares.flour * at.flourCelsius - at.shares.salt * salt) /
    at.shares.water;
  return (
    3 * riseCelsius +
    (3 * at.shares.flour - 1) * at.flourCelsius +
    (3 * at.shares.water - 1) * waterCelsius +
    3 * at.shares.salt * salt -
    at.roomCelsius
  );
}

/** The shares of heat capacity in a straight dough of these masses (grams), at 20 °C. Absent masses make no share. */
export function capacityShares(
  flour: readonly HeatItem[],
  waterGrams: number,
  saltGrams: number,
): CapacityShares {
  const flourCapacity = flour.reduce((sum, item) => sum + item.grams * specificHeat(item.composition, 20), 0);
  const waterCapacity = waterGrams * specificHeat(pureWater, 20);
  const saltCapacity = saltGrams * specificHeat(pureSalt, 20);
  const total = flourCapacity + waterCapacity + saltCapacity;
  return { flour: flourCapacity / total, water: waterCapacity / total, salt: saltCapacity / total };
}

const pureSalt: Composition = { ash: 1, carbohydrate: 0 };

function mixed(at: FrictionConditions, waterCelsius: number): number {
  const salt = at.saltCelsius ?? at.roomCelsius;
  return at.shares.flour * at.flourCelsius + at.shares.water * waterCelsius + at.shares.salt * salt;
}
