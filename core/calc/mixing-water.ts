import { heatCurve, slopeAt } from './composition.ts';
import { type HeatInput, type HeatOutcome, waterTemperature } from './heat.ts';
import { curveOf, type HeatItem, hydrationHeat, mixedCelsius, pureWater } from './heat-content.ts';
import { virtualWaterCelsius } from './ice.ts';
import { type Known, known, unknown } from './known.ts';
import { type MixingOutcome, prepareMixing, runMixing } from './mixing.ts';
import { type HeatPlan, runHeat } from './mixing-heat.ts';
import type { MixingInput, MixPortion } from './mixing-programme.ts';

/** A programme whose tempered water is to bring the dough to a temperature. Temperatures in °C. */
export interface TemperInput {
  readonly mixing: MixingInput;
  readonly targetCelsius: number;
  readonly tapCelsius?: number;
  readonly iceCelsius?: number;
}

/** The water for a programme, its bill of heat, and the programme run with that water. */
export interface TemperedWater extends HeatOutcome {
  readonly outcome: MixingOutcome;
}

const boilingCelsius = 100;

/**
 * The temperature of the tempered water that makes the dough leave its mixing programme at the target, with ice where the
 * tap is too warm. The balance of heat and the simulation agree to 1e-6 °C. Unknown, with the reason, when no water is
 * tempered, a temperature is missing, or no water would do.
 */
export function temperWater(input: TemperInput): Known<TemperedWater> {
  const portions = allPortions(input.mixing);
  const tempered = portions.filter((portion) => portion.tempered === true && portion.grams > 0);
  const waterGrams = tempered.reduce((sum, portion) => sum + portion.grams, 0);
  if (!(waterGrams > 0)) return unknown('there is no water to temper');
  if (!Number.isFinite(input.targetCelsius)) return unknown('the dough temperature wanted is not given');

  const prepared = prepareMixing(withPureWater(input.mixing));
  const solved = solveEnd(prepared.heat, input.targetCelsius);
  if (!solved.known) return solved;
  if (solved.value > boilingCelsius) return unknown(whyNoWater(portions, waterGrams));
  const heat = waterTemperature(heatInput(input, portions, waterGrams, solved.value, input.targetCelsius));
  if (!heat.known) return heat;
  const { ice } = heat.value;
  if (!ice.known || !ice.value.capped || input.tapCelsius === undefined) {
    const outcome = runMixing(prepared, heat.value.waterCelsius);
    return known(Object.assign(heat.value, { outcome }), heat.provenance, heat.source);
  }
  // All the water is ice and still too warm: what the dough then reaches is told, with its own bill.
  const coldest = virtualWaterCelsius(waterGrams, 0, input.tapCelsius, input.iceCelsius);
  const outcome = runMixing(prepared, coldest);
  if (!outcome.endCelsius.known) return outcome.endCelsius;
  const reached = waterTemperature(heatInput(input, portions, waterGrams, coldest, outcome.endCelsius.value));
  if (!reached.known) return reached;
  const { bill, friction } = reached.value;
  return known(
    { ...heat.value, doughCelsius: outcome.endCelsius.value, bill, friction, outcome },
    heat.provenance,
    heat.source,
  );
}

/** Water with less than this share of what the dough holds of heat a degree can do little to its temperature. */
const littleWater = 0.2;

function whyNoWater(portions: readonly MixPortion[], waterGrams: number): string {
  const bowl = curveOf(portions.filter(({ grams }) => grams > 0));
  const share = ((waterGrams / 1000) * slopeAt(heatCurve(pureWater), 20)) / slopeAt(bowl, 20);
  return share < littleWater
    ? 'not even boiling water would warm it so far, as there is too little of it beside all that is colder'
    : 'not even boiling water would keep it so warm, as it follows the room';
}

function heatInput(
  input: TemperInput,
  portions: readonly MixPortion[],
  waterGrams: number,
  waterCelsius: number,
  endCelsius: number,
): HeatInput {
  const others: readonly HeatItem[] = portions.filter(
    (portion) => portion.tempered !== true && portion.grams > 0,
  );
  const water: HeatItem = {
    label: 'water',
    grams: waterGrams,
    celsius: waterCelsius,
    composition: pureWater,
    kind: 'water',
  };
  const mixed = mixedCelsius([...others, water], hydrationHeat(others));
  const friction = input.mixing.mixer.frictionCelsius;
  return {
    items: others,
    waterGrams,
    targetCelsius: endCelsius,
    roomCelsius: input.mixing.roomCelsius,
    ...(input.tapCelsius === undefined ? {} : { tapCelsius: input.tapCelsius }),
    ...(input.iceCelsius === undefined ? {} : { iceCelsius: input.iceCelsius }),
    ...(friction === undefined ? {} : { givenFrictionCelsius: friction }),
    ...(input.mixing.friction === undefined ? {} : { straightShares: input.mixing.friction.shares }),
    rise: { celsius: endCelsius - mixed, includesHydration: false },
  };
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

export function allPortions(mixing: MixingInput): MixPortion[] {
  return mixing.phases.flatMap((phase) =>
    phase.kind === 'load' || phase.kind === 'add' ? phase.portions : [],
  );
}

// The end temperature is all but linear in the water’s, so Newton’s method needs two or three runs of the heat alone.
function solveEnd(plan: HeatPlan, target: number): Known<number> {
  const nothing = unknown(
    'after so long in the room the dough has its temperature, whatever that of the water',
  );
  let here = 20;
  for (let step = 0; step < 40; step++) {
    const { end, endPerWaterDegree: slope } = runHeat(plan, here);
    if (!end.known) return step === 0 ? end : nothing;
    const miss = end.value - target;
    if (Math.abs(miss) < 1e-11) break;
    if (!(slope > 1e-6)) {
      if (Math.abs(miss) < 1e-8) break;
      return nothing;
    }
    const move = miss / slope;
    here -= move;
    if (!Number.isFinite(here)) return nothing;
    if (Math.abs(move) < 1e-11) break;
  }
  return known(here, 'common practice');
}
