import { celsiusOf, type HeatCurve, heatAt, heatCurve, slopeAt } from '../formula/composition.ts';
import { type Known, known, unknown } from '../known.ts';
import {
  believableCelsius,
  contentOf,
  curveOf,
  type HeatItem,
  hydrationHeat,
  meanCelsius,
  pureWater,
} from './heat-content.ts';
import { type CapacityShares, capacityShares, frictionFromRise, ruleOfThumbWater } from './heat-friction.ts';
import { type IceShare, iceFor, virtualWaterCelsius } from './ice.ts';

export { type HeatItem, type HeatKind, hydrationHeat, mixedCelsius } from './heat-content.ts';
export {
  type CapacityShares,
  capacityShares,
  type FrictionConditions,
  frictionFactor,
  frictionFromRise,
  riseFromFriction,
  ruleOfThumbWater,
} from './heat-friction.ts';

import { type Message, message } from '../../words/message.ts';

/** The net rise by mixing, °C, losses to the room taken off. A rise from a friction factor holds the hydration already. */
export interface MixingRise {
  readonly celsius: number;
  readonly includesHydration: boolean;
}

/** Everything of a batch but the temperature of its water. */
export interface HeatInput {
  /** All portions but the water to be tempered. */
  readonly items: readonly HeatItem[];
  readonly waterGrams: number;
  readonly targetCelsius: number;
  readonly roomCelsius: number;
  /** Temperature of the tap water; absent when nobody told it, and then ice is not known. */
  readonly tapCelsius?: number;
  readonly iceCelsius?: number;
  readonly rise: MixingRise;
  /** A cold or warm bowl that takes part: its heat capacity in kJ/K and its temperature in °C. */
  readonly bowl?: { readonly kilojoulesPerKelvin: number; readonly celsius: number };
  /** Friction factor the bakery measured (n = 3), °C; it feeds the rule of thumb. */
  readonly givenFrictionCelsius?: number;
  /** Shares of a straight dough of all this flour and water, that of a preferment included; by the items where absent. */
  readonly straightShares?: CapacityShares;
}

/** A source of heat, or of cold when negative, against the finished dough. */
export interface HeatBillLine {
  readonly label: string;
  readonly kilojoules: number;
  /** What it alone does to the temperature of the dough, °C. */
  readonly celsius: number;
}

export interface HeatOutcome {
  /** Temperature the water must have, °C; below 0 °C it is virtual and means ice. */
  readonly waterCelsius: number;
  readonly ice: Known<IceShare, Message>;
  /** The dough after mixing, °C: the target, or warmer where even all the water as ice is not cold enough. */
  readonly doughCelsius: number;
  /** Heat against the finished dough, from every source; its lines sum to zero. */
  readonly bill: readonly HeatBillLine[];
}

/**
 * The water temperature that brings the dough to its target, by balance of heat: Σ mᵢ(hᵢ(dough) − hᵢ(Tᵢ)) + bowl =
 * hydration + mixing, with heat contents after Choi & Okos (1986) and 15.1 kJ/kg heat of hydration at 12 % moisture (Sosland
 * Baker’s Dictionary); the warming by mixing and what the room takes are our own fit, and the weakest part.
 * Unknown, with the reason, when there is no water to temper or a temperature is missing.
 */
export function waterTemperature(input: HeatInput): Known<HeatOutcome, Message> {
  const reason = missing(input);
  if (reason !== undefined) return unknown(reason);
  const batch = batchOf(input);
  const started = input.targetCelsius - input.rise.celsius;
  // What all of the batch holds at `started`, less what comes with the other portions, the water has to bring.
  const brought = heatAt(batch.curve, started) - batch.kilojoules - batch.hydration;
  const waterCelsius = celsiusOf(waterCurve, brought / (input.waterGrams / 1000));
  if (!Number.isFinite(waterCelsius)) return unknown(message('heat.no-solution'));

  const tap = input.tapCelsius;
  const ice: Known<IceShare, Message> =
    tap === undefined || !Number.isFinite(tap)
      ? unknown(message('heat.no-tap'))
      : known(iceFor(input.waterGrams, tap, waterCelsius, input.iceCelsius), 'published');
  const usedCelsius =
    ice.known && ice.value.capped && tap !== undefined
      ? virtualWaterCelsius(ice.value.iceGrams, ice.value.tapGrams, tap, input.iceCelsius)
      : waterCelsius;
  const doughCelsius =
    usedCelsius === waterCelsius ? input.targetCelsius : mixedDough(input, batch, usedCelsius);
  return known(
    {
      waterCelsius,
      ice,
      doughCelsius,
      get bill() {
        return heatBill(input, batch, usedCelsius, doughCelsius);
      },
    },
    'common practice',
  );
}

/**
 * The temperature of the dough after mixing, °C, for water as it is (°C). The inverse of `waterTemperature`; here a batch
 * without any water to temper is answered too.
 */
export function doughTemperature(input: HeatInput, waterCelsius: number): Known<number, Message> {
  const reason = missing({
    ...input,
    targetCelsius: 0,
    waterGrams: input.waterGrams > 0 ? input.waterGrams : 1,
  });
  if (reason !== undefined) return unknown(reason);
  if (!Number.isFinite(waterCelsius)) return unknown(message('heat.no-water-temperature'));
  const dough = mixedDough(input, batchOf(input), waterCelsius);
  return Number.isFinite(dough) ? known(dough, 'common practice') : unknown(message('heat.nothing'));
}

const waterCurve = heatCurve(pureWater);

/** All that is poured together, bowl and water included, as heat. */
interface Batch {
  readonly curve: HeatCurve;
  /** What all but the water holds as it lies there, kJ. */
  readonly kilojoules: number;
  /** Heat of hydration that the rise does not hold yet, kJ. */
  readonly hydration: number;
}

function batchOf(input: HeatInput): Batch {
  const others = curveOf(input.items);
  const water = Math.max(0, input.waterGrams) / 1000;
  const { bowl } = input;
  let kilojoules = bowl === undefined ? 0 : bowl.kilojoulesPerKelvin * bowl.celsius;
  for (const item of input.items) kilojoules += (item.grams / 1000) * contentOf(item);
  return {
    curve: {
      a: others.a + water * waterCurve.a + (bowl?.kilojoulesPerKelvin ?? 0),
      b: others.b + water * waterCurve.b,
      c: others.c + water * waterCurve.c,
    },
    kilojoules,
    hydration: input.rise.includesHydration ? 0 : hydrationHeat(input.items),
  };
}

function mixedDough(input: HeatInput, batch: Batch, waterCelsius: number): number {
  const water = (Math.max(0, input.waterGrams) / 1000) * heatAt(waterCurve, waterCelsius);
  return celsiusOf(batch.curve, batch.kilojoules + water + batch.hydration) + input.rise.celsius;
}

function heatBill(
  input: HeatInput,
  batch: Batch,
  waterCelsius: number,
  doughCelsius: number,
): HeatBillLine[] {
  const capacity = slopeAt(batch.curve, doughCelsius);
  const line = (label: string, kilojoules: number): HeatBillLine => ({
    label,
    kilojoules,
    celsius: kilojoules / capacity,
  });
  const lines = input.items.map((item) =>
    line(
      item.label,
      (item.grams / 1000) * (contentOf(item) - heatAt(heatCurve(item.composition), doughCelsius)),
    ),
  );
  const waterGained = heatAt(waterCurve, waterCelsius) - heatAt(waterCurve, doughCelsius);
  lines.push(line('water', (Math.max(0, input.waterGrams) / 1000) * waterGained));
  const { bowl } = input;
  if (bowl !== undefined) lines.push(line('bowl', bowl.kilojoulesPerKelvin * (bowl.celsius - doughCelsius)));
  if (!input.rise.includesHydration) lines.push(line('heat of hydration', batch.hydration));
  const mixing = heatAt(batch.curve, doughCelsius) - heatAt(batch.curve, doughCelsius - input.rise.celsius);
  lines.push(line(input.rise.includesHydration ? 'mixing and hydration' : 'mixing', mixing));
  return lines;
}

/** The water by the bakers’ rule of three or four temperatures, °C, with the friction factor that it used. */
export interface RuleOfThumb {
  readonly waterCelsius: number;
  /** Of a straight dough of all this flour and water, n = 3, °C; no constant of the machine. */
  readonly frictionCelsius: number;
  /** The bakery measured it; else it is what this programme would show on a mild day, room and flour at 21 °C. */
  readonly frictionGiven: boolean;
}

/** No rule of thumb and no friction factor outside of these is worth telling, °C: what it leaves out is too much. Our own choice. */
const leastByRule = 0;
const mostByRule = 30;

/**
 * The water by the rule of thumb: n·dough − room − flour (− preferment) − friction factor. Unknown, with the reason, where
 * ice is weighed in, no flour is loaded dry, or a figure comes out that no baker would draw or write down.
 */
export function ruleOfThumb(input: HeatInput): Known<RuleOfThumb, Message> {
  const reason = missing(input);
  if (reason !== undefined) return unknown(reason);
  if (input.items.some((item) => item.frozen === true && item.grams > 0))
    return unknown(message('rule-of-thumb.ice'));
  const flour = meanCelsius(input.items, 'flour');
  if (flour === undefined) return unknown(message('rule-of-thumb.no-flour'));
  const preferment = meanCelsius(input.items, 'preferment');
  const others = [input.roomCelsius, flour, ...(preferment === undefined ? [] : [preferment])];
  const given = input.givenFrictionCelsius;
  const frictionCelsius = given ?? mildDayFriction(input, batchOf(input));
  const isFactor = frictionCelsius >= leastByRule && frictionCelsius <= mostByRule;
  if (!isFactor) return unknown(message('rule-of-thumb.no-friction'));
  const waterCelsius = ruleOfThumbWater(input.targetCelsius, others, frictionCelsius);
  return waterCelsius >= leastByRule && waterCelsius <= mostByRule
    ? known({ waterCelsius, frictionCelsius, frictionGiven: given !== undefined }, 'common practice')
    : unknown(message('rule-of-thumb.no-water'));
}

function mildDayFriction(input: HeatInput, batch: Batch): number {
  const flours = input.items.filter((item) => item.kind === 'flour');
  const water = input.items.reduce(
    (sum, item) => sum + (item.kind === 'water' ? item.grams : 0),
    input.waterGrams,
  );
  const salt = input.items.reduce((sum, item) => sum + (item.kind === 'salt' ? item.grams : 0), 0);
  const bowl = input.bowl?.kilojoulesPerKelvin ?? 0;
  const capacity = heatAt(batch.curve, 22) - heatAt(batch.curve, 21) - bowl;
  const hydration = batch.hydration / capacity;
  return frictionFromRise(input.rise.celsius + hydration, {
    doughCelsius: input.targetCelsius,
    roomCelsius: 21,
    flourCelsius: 21,
    shares: input.straightShares ?? capacityShares(flours, water, salt),
  });
}

function missing(input: HeatInput): Message | undefined {
  for (const item of input.items) {
    if (!(item.grams >= 0 && item.grams < 1e12))
      return message('heat.amount-not-known', { name: item.label });
    if (!believableCelsius(item.celsius)) return message('heat.temperature-not-known', { name: item.label });
  }
  if (!believableCelsius(input.targetCelsius)) return message('heat.no-target');
  if (!believableCelsius(input.roomCelsius)) return message('heat.no-room');
  if (!Number.isFinite(input.rise.celsius)) return message('heat.no-rise');
  if (!(input.waterGrams > 0 && input.waterGrams < 1e12)) return message('heat.no-water');
  return undefined;
}
