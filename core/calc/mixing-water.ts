import { type HeatInput, type HeatOutcome, waterTemperature } from './heat.ts';
import { type HeatItem, hydrationHeat, mixedCelsius, pureWater } from './heat-content.ts';
import { virtualWaterCelsius } from './ice.ts';
import { type Known, known, unknown } from './known.ts';
import { type MixingOutcome, simulateMixing } from './mixing.ts';
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

/**
 * The temperature of the tempered water that makes the dough leave its mixing programme at the target, with ice where the
 * tap is too warm. The balance of heat and the simulation agree to 1e-6 °C. Unknown, with the reason, when no water is
 * tempered or a temperature is missing.
 */
export function temperWater(input: TemperInput): Known<TemperedWater> {
  const portions = allPortions(input.mixing);
  const tempered = portions.filter((portion) => portion.tempered === true && portion.grams > 0);
  const waterGrams = tempered.reduce((sum, portion) => sum + portion.grams, 0);
  if (!(waterGrams > 0)) return unknown('there is no water to temper');
  if (!Number.isFinite(input.targetCelsius)) return unknown('the dough temperature wanted is not given');

  const run = (waterCelsius: number) => simulateMixing(withWater(input.mixing, waterCelsius));
  const end = (waterCelsius: number): number => {
    const celsius = run(waterCelsius).endCelsius;
    return celsius.known ? celsius.value : Number.NaN;
  };
  const first = run(20).endCelsius;
  if (!first.known) return first;
  const solved = solveEnd(end, input.targetCelsius);
  if (solved === undefined) {
    return unknown('after so long in the room the dough has its temperature, whatever that of the water');
  }

  const base = heatInput(input, portions, waterGrams, solved, input.targetCelsius);
  const heat = waterTemperature(base);
  if (!heat.known) return heat;
  const { ice } = heat.value;
  if (!ice.known || !ice.value.capped || input.tapCelsius === undefined) {
    return known({ ...heat.value, outcome: run(heat.value.waterCelsius) }, heat.provenance, heat.source);
  }
  // All the water is ice and still too warm: what the dough then reaches is told, with its own bill.
  const coldest = virtualWaterCelsius(waterGrams, 0, input.tapCelsius, input.iceCelsius);
  const outcome = run(coldest);
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
  const water = portions
    .filter((portion) => portion.tempered === true && portion.grams > 0)
    .map(
      (portion): HeatItem => ({ ...portion, celsius: waterCelsius, kind: 'water', composition: pureWater }),
    );
  const mixed = mixedCelsius([...others, ...water], hydrationHeat(others));
  const friction = input.mixing.mixer.frictionCelsius;
  return {
    items: others,
    waterGrams,
    targetCelsius: endCelsius,
    roomCelsius: input.mixing.roomCelsius,
    ...(input.tapCelsius === undefined ? {} : { tapCelsius: input.tapCelsius }),
    ...(input.iceCelsius === undefined ? {} : { iceCelsius: input.iceCelsius }),
    ...(friction === undefined ? {} : { givenFrictionCelsius: friction }),
    rise: { celsius: endCelsius - mixed, includesHydration: false },
  };
}

function withWater(mixing: MixingInput, waterCelsius: number): MixingInput {
  const phases = mixing.phases.map((phase) => {
    if (phase.kind !== 'load' && phase.kind !== 'add') return phase;
    const portions = phase.portions.map((portion) =>
      portion.tempered === true
        ? { ...portion, celsius: waterCelsius, kind: 'water' as const, composition: pureWater }
        : portion,
    );
    return { ...phase, portions };
  });
  return { ...mixing, phases };
}

function allPortions(mixing: MixingInput): MixPortion[] {
  return mixing.phases.flatMap((phase) =>
    phase.kind === 'load' || phase.kind === 'add' ? phase.portions : [],
  );
}

// The end temperature is all but linear in the water’s, so the secant needs a handful of runs.
function solveEnd(end: (waterCelsius: number) => number, target: number): number | undefined {
  let [before, here] = [10, 20];
  let missBefore = end(before) - target;
  for (let step = 0; step < 40; step++) {
    const miss = end(here) - target;
    if (Math.abs(miss) < 1e-11) return here;
    const slope = (miss - missBefore) / (here - before);
    if (!(slope > 1e-6)) return Math.abs(miss) < 1e-8 ? here : undefined;
    [before, missBefore] = [here, miss];
    here -= miss / slope;
    if (!Number.isFinite(here)) return undefined;
    if (Math.abs(here - before) < 1e-11) return here;
  }
  return here;
}
