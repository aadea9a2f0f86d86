import { type Message, message } from '../../words/message.ts';
import { heatCurve, slopeAt } from '../formula/composition.ts';
import { type HeatInput, type RuleOfThumb, ruleOfThumb } from '../heat/heat.ts';
import { type HeatItem, hydrationHeat, mixedCelsius, pureWater } from '../heat/heat-content.ts';
import { iceFor, virtualWaterCelsius } from '../heat/ice.ts';
import { type Known, known, unknown } from '../known.ts';
import { type MixingOutcome, type PreparedMixing, prepareMixing, runMixing } from './mixing.ts';
import { shownCelsius } from './mixing-course.ts';
import { type HeatPlan, runHeat } from './mixing-heat.ts';
import type { MixingInput, MixPortion } from './mixing-programme.ts';

/** A programme whose tempered water is to bring the dough to a temperature. Temperatures in °C. */
export interface TemperInput {
  readonly mixing: MixingInput;
  readonly targetCelsius: number;
  /** Of the tap; the usual one where absent, and the result says so. */
  readonly tapCelsius?: number;
  /** The bakery has ice, so that it may be planned. */
  readonly hasIce?: boolean;
  readonly iceCelsius?: number;
}

/**
 * How water can bring the dough to its temperature: some water from the tap’s temperature up does; the tap is too warm, so
 * that it takes ice; not even the warmest water does; or the dough follows room and machine whatever its water.
 */
export type WaterReach = 'reachable' | 'tap too warm' | 'not warm enough' | 'no lever';

/** Water of which a part is ice, and the dough that comes of it. */
export interface IcePlan {
  readonly iceGrams: number;
  readonly tapGrams: number;
  /** Of the dough as it leaves the mixer, °C: the target, or warmer where half of the water as ice is not enough. */
  readonly doughCelsius: number;
  /** Against water from the tap alone, °C. */
  readonly gainedCelsius: number;
}

/** The water for a programme, and the programme run with that water. */
export interface TemperedWater {
  readonly reach: WaterReach;
  /** The water to draw, °C, 0 to 60: never colder than the tap. Absent where no water makes a difference. */
  readonly waterCelsius?: number;
  /** What tap water and ice hold together as heat, °C: virtual below 0; without ice the temperature of the water. */
  readonly effectiveCelsius: number;
  /** All water whose temperature is chosen, ice included, grams. */
  readonly waterGrams: number;
  readonly tapCelsius: number;
  /** Nobody said how cold the tap is. */
  readonly tapAssumed: boolean;
  /** Ice that is planned, since the bakery has it. */
  readonly ice?: IcePlan;
  /** Ice that would help, where none is planned. */
  readonly iceCure?: IcePlan;
  /** Change of the end temperature for a degree of the water. */
  readonly lever: number;
  /** The dough as it leaves the mixer with this water; unknown, with the reason, where it would be hotter than any dough. */
  readonly doughCelsius: Known<number, Message>;
  /** The same water by the rule of three or four temperatures, with the friction factor that it used. */
  readonly rule: Known<RuleOfThumb, Message>;
  readonly outcome: MixingOutcome;
}

/** Tap water where nobody said how cold it is, °C. Common practice, no source. */
export const usualTapCelsius = 15;
/** The warmest water that is ever worked out, °C: hotter water cooks; and what hands may be told to draw. Common practice. */
const warmestWater = 60;
const warmestByHand = 40;
/** A lever below this is none: ten degrees of the water then move the dough by less than one. Our own choice. */
const leastLever = 0.08;
/** Ice is not worth its weighing for less than this, °C, and never more than this part of the water. Our own choice. */
const leastIceGain = 0.5;
const mostIce = 0.5;

/**
 * The water that makes the dough leave its mixing programme at the target, from the water there is: the tap’s, warmed where
 * that is wanted, and ice where the bakery has it. The balance of heat and the simulation agree to 1e-6 °C. Unknown, with
 * the reason, when no water is tempered or a temperature is missing.
 */
export function temperWater(input: TemperInput): Known<TemperedWater, Message> {
  const portions = allPortions(input.mixing);
  const tempered = portions.filter((portion) => portion.tempered === true && portion.grams > 0);
  const waterGrams = tempered.reduce((sum, portion) => sum + portion.grams, 0);
  if (!(waterGrams > 0)) return unknown(message('heat.no-water'));
  if (!Number.isFinite(input.targetCelsius)) return unknown(message('heat.no-target'));

  const prepared = prepareMixing(withPureWater(input.mixing));
  const { heat } = prepared;
  const target = input.targetCelsius;
  const warmest = input.mixing.mixer.kind === 'hand' ? warmestByHand : warmestWater;
  const tap = Math.min(warmest, Math.max(0, input.tapCelsius ?? usualTapCelsius));
  const fromTap = runHeat(heat, tap);
  if (!fromTap.end.known) return fromTap.end;
  const lever = fromTap.endPerWaterDegree;
  const tapKnown = { tapCelsius: tap, tapAssumed: input.tapCelsius === undefined, waterGrams, lever };
  const drawn = (reach: WaterReach, celsius: number): Known<TemperedWater, Message> =>
    tell(
      input,
      prepared,
      { ...tapKnown, reach, ...(reach === 'no lever' ? {} : { waterCelsius: celsius }) },
      celsius,
    );

  if (!(lever >= leastLever)) return drawn('no lever', tap);
  if (fromTap.end.value > target + 1e-9) {
    const ice = icePlan(input, heat, tap, waterGrams, fromTap.end.value);
    if (ice === undefined) return drawn('tap too warm', tap);
    const { virtualCelsius, ...plan } = ice;
    const reach = 'tap too warm';
    return input.hasIce === true
      ? tell(input, prepared, { ...tapKnown, reach, waterCelsius: tap, ice: plan }, virtualCelsius)
      : tell(input, prepared, { ...tapKnown, reach, waterCelsius: tap, iceCure: plan }, tap);
  }
  const warmestEnd = endOf(heat, warmest);
  if (warmestEnd < target) return drawn('not warm enough', warmest);
  const low = { celsius: tap, end: fromTap.end.value };
  return drawn('reachable', waterFor(heat, target, low, { celsius: warmest, end: warmestEnd }));
}

type Chosen = Omit<TemperedWater, 'doughCelsius' | 'rule' | 'outcome' | 'effectiveCelsius'>;

function tell(
  input: TemperInput,
  prepared: PreparedMixing,
  chosen: Chosen,
  runAtCelsius: number,
): Known<TemperedWater, Message> {
  const outcome = runMixing(prepared, runAtCelsius);
  return known(
    {
      ...chosen,
      effectiveCelsius: runAtCelsius,
      doughCelsius: outcome.endCelsius,
      outcome,
      // Worked out on asking only: a keystroke never asks.
      get rule() {
        return chosen.reach === 'no lever'
          ? unknown(message('rule-of-thumb.no-lever'))
          : ruleFor(input, outcome, chosen.waterGrams, runAtCelsius);
      },
    },
    'common practice',
  );
}

/** The ice that brings the dough down to its target, or as near as half of the water does; none where it is not worth it. */
function icePlan(
  { targetCelsius, iceCelsius }: TemperInput,
  heat: HeatPlan,
  tap: number,
  waterGrams: number,
  fromTap: number,
): (IcePlan & { readonly virtualCelsius: number }) | undefined {
  const half = waterGrams * mostIce;
  const coldest = virtualWaterCelsius(half, waterGrams - half, tap, iceCelsius);
  const coldestEnd = endOf(heat, coldest);
  const low = { celsius: coldest, end: coldestEnd };
  const virtualCelsius =
    coldestEnd >= targetCelsius
      ? coldest
      : waterFor(heat, targetCelsius, low, { celsius: tap, end: fromTap });
  const { iceGrams, tapGrams } = iceFor(waterGrams, tap, virtualCelsius, iceCelsius);
  const doughCelsius = shownCelsius(endOf(heat, virtualCelsius));
  if (doughCelsius === undefined) return undefined;
  const gainedCelsius = fromTap - doughCelsius;
  return gainedCelsius >= leastIceGain
    ? { iceGrams, tapGrams, doughCelsius, gainedCelsius, virtualCelsius }
    : undefined;
}

function endOf(heat: HeatPlan, waterCelsius: number): number {
  return runHeat(heat, waterCelsius).endsAtCelsius ?? Number.NaN;
}

/** Water of a temperature, and the dough that comes of it, °C. */
interface Tried {
  readonly celsius: number;
  readonly end: number;
}

/** An end so near to the one wanted, °C, is it. */
const closeEnough = 1e-10;

// The end temperature grows with that of the water and is all but straight in it, so a chord held between two ends finds it.
function waterFor(heat: HeatPlan, target: number, least: Tried, most: Tried): number {
  let [low, high] = [least, most];
  for (let step = 0; step < 60; step++) {
    const rise = high.end - low.end;
    const chord = low.celsius + ((target - low.end) * (high.celsius - low.celsius)) / rise;
    // From the fifth step on every other one halves, so that a bend cannot hold it up.
    const isHalf = !(rise > 0) || (step > 4 && step % 2 === 1);
    const celsius = isHalf
      ? (low.celsius + high.celsius) / 2
      : Math.min(high.celsius, Math.max(low.celsius, chord));
    const here = { celsius, end: endOf(heat, celsius) };
    if (Math.abs(here.end - target) < closeEnough) return celsius;
    if (here.end > target) high = here;
    else low = here;
  }
  return (low.celsius + high.celsius) / 2;
}

function ruleFor(
  { mixing, targetCelsius }: TemperInput,
  outcome: MixingOutcome,
  waterGrams: number,
  waterCelsius: number,
): Known<RuleOfThumb, Message> {
  if (!outcome.endCelsius.known) return outcome.endCelsius;
  const others: readonly HeatItem[] = allPortions(mixing).filter(
    (portion) => portion.tempered !== true && portion.grams > 0,
  );
  const water: HeatItem = {
    label: 'water',
    grams: waterGrams,
    celsius: waterCelsius,
    composition: pureWater,
    kind: 'water',
  };
  const friction = mixing.mixer.frictionCelsius;
  const input: HeatInput = {
    items: others,
    waterGrams,
    targetCelsius,
    roomCelsius: mixing.roomCelsius,
    ...(friction === undefined ? {} : { givenFrictionCelsius: friction }),
    ...(mixing.friction === undefined ? {} : { straightShares: mixing.friction.shares }),
    rise: {
      celsius: outcome.endCelsius.value - mixedCelsius([...others, water], hydrationHeat(others)),
      includesHydration: false,
    },
  };
  return ruleOfThumb(input);
}

/** Water with less than this share of what the dough holds of heat a degree can do little to its temperature. */
const littleShare = 0.2;

/** Whether it is for want of water, and not for the time it is worked, that no water makes a difference to a dough. */
export function hasLittleWater(mixing: MixingInput): boolean {
  return waterShareOfHeat(mixing) < littleShare;
}

function waterShareOfHeat(mixing: MixingInput): number {
  const portions = allPortions(mixing).filter(({ grams }) => grams > 0);
  let [water, all] = [0, 0];
  for (const { grams, composition, tempered } of portions) {
    const heat = grams * slopeAt(heatCurve(tempered === true ? pureWater : composition), 20);
    all += heat;
    if (tempered === true) water += heat;
  }
  return all > 0 ? water / all : 0;
}

/** Tempered water is pure to the sums: its trace of minerals would only part two ways of reckoning. */
export function withPureWater(mixing: MixingInput): MixingInput {
  const phases = mixing.phases.map((phase) => {
    if (phase.kind !== 'load' && phase.kind !== 'add') return phase;
    const portions = phase.portions.map((portion) =>
      portion.tempered === true ? { ...portion, kind: 'water' as const, composition: pureWater } : portion,
    );
    return { ...phase, portions };
  });
  return { ...mixing, phases };
}

/** All that goes into the bowl, in the order of the programme. */
export function allPortions(mixing: MixingInput): MixPortion[] {
  return mixing.phases.flatMap((phase) =>
    phase.kind === 'load' || phase.kind === 'add' ? phase.portions : [],
  );
}
