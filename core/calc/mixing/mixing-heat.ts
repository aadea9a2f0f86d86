import { type Message, message } from '../../words/message.ts';
import { celsiusOf, type HeatCurve, heatAt, heatCurve, slopeAt } from '../formula/composition.ts';
import { believableCelsius, contentOf, curveOf, hydrationHeat, pureWater } from '../heat/heat-content.ts';
import { differenceLeft, temperatureAfter, type WarmingPhase } from '../heat/warming.ts';
import { type Known, known, unknown } from '../known.ts';
import { frictionScale, warmingIn } from './mixing-friction.ts';
import { type MixingInput, type MixPortion, type Programme, takeApart } from './mixing-programme.ts';

/** A programme as heat alone, so that it can be run for many temperatures of its water. */
export interface HeatPlan {
  readonly steps: readonly (Pour | Stretch)[];
  /** How the dough warms if the last speed just goes on. */
  readonly beyond: WarmingPhase | undefined;
  readonly reason: Message | undefined;
}

/** Portions poured onto what is in the bowl, all at one temperature afterwards. Heat in kJ above liquid at 0 °C. */
interface Pour {
  readonly kind: 'pour';
  /** What is in the bowl before; absent for an empty bowl. */
  readonly before: HeatCurve | undefined;
  readonly after: HeatCurve;
  /** Brought by the portions, those of tempered water left out, with the heat of hydration that sets in. */
  readonly kilojoules: number;
  readonly tempered: readonly MixPortion[];
  readonly temperedKilograms: number;
  readonly reason: Message | undefined;
}

/** Time that passes with everything else the same. */
interface Stretch {
  readonly kind: 'stretch';
  readonly minutes: number;
  readonly warming: WarmingPhase;
  /** What is in the bowl; absent for an empty one. */
  readonly bowl: HeatCurve | undefined;
  readonly reason: Message | undefined;
}

/** The temperatures through a programme. */
export interface HeatRun {
  /** Temperature at the start of each timed step and its warming, in order; undefined once it is not known. */
  readonly starts: readonly ({ readonly celsius: number; readonly warming: WarmingPhase } | undefined)[];
  readonly end: Known<number, Message>;
  /** The same as a bare number, below 0 °C where ice is left to melt; absent where nothing is known of it. */
  readonly endsAtCelsius?: number;
  readonly warmed: Known<number, Message>;
  /** Degrees at the end for a degree of the tempered water. */
  readonly endPerWaterDegree: number;
}

/** What a programme is as heat. The contents of the bowl are summed up once, whatever temperatures they then take. */
export function planHeat(input: MixingInput, programme: Programme): HeatPlan {
  const { frictionPhases: phases } = input;
  const scale = frictionScale(input, phases === undefined ? programme : takeApart({ ...input, phases }));
  const steps: (Pour | Stretch)[] = [];
  let bowl: HeatCurve | undefined;
  let dry: readonly MixPortion[] = [];
  let wet = false;
  for (const step of programme.steps) {
    if (step.kind === 'time') {
      steps.push({
        kind: 'stretch',
        minutes: step.minutes,
        warming: warmingIn(step, scale),
        bowl,
        reason: step.warming.known ? undefined : step.warming.reason,
      });
      continue;
    }
    const portions = step.portions.filter((portion) => portion.grams > 1e-9 && portion.grams < 1e12);
    dry = [...dry, ...portions.filter((portion) => portion.dryFlourMoisture !== undefined)];
    wet ||= portions.some((portion) => portion.freeWaterGrams > 0);
    let kilojoules = wet ? hydrationHeat(dry) : 0;
    if (wet) dry = [];
    let temperedKilograms = 0;
    let lacking: MixPortion | undefined;
    for (const portion of portions) {
      if (portion.tempered === true) temperedKilograms += portion.grams / 1000;
      else {
        kilojoules += (portion.grams / 1000) * contentOf(portion);
        if (!believableCelsius(portion.celsius)) lacking ??= portion;
      }
    }
    const poured = curveOf(portions);
    const after: HeatCurve =
      bowl === undefined ? poured : { a: bowl.a + poured.a, b: bowl.b + poured.b, c: bowl.c + poured.c };
    steps.push({
      kind: 'pour',
      before: bowl,
      after,
      kilojoules,
      tempered: portions.filter((portion) => portion.tempered === true),
      temperedKilograms,
      reason:
        lacking === undefined ? undefined : message('heat.temperature-not-known', { name: lacking.label }),
    });
    if (portions.length > 0) bowl = after;
  }
  const next = programme.beyond[0];
  return {
    steps,
    beyond: next?.warming.known ? warmingIn(next, scale) : undefined,
    reason: believableCelsius(input.roomCelsius) ? undefined : message('heat.no-room'),
  };
}

/** Runs a programme with its tempered water at `waterCelsius`; where that is absent, at what its portions say. */
export function runHeat(plan: HeatPlan, waterCelsius?: number): HeatRun {
  const starts: HeatRun['starts'][number][] = [];
  let celsius = Number.NaN;
  let perDegree = 0;
  let warmed = 0;
  let reason: Message | undefined = plan.reason;
  for (const step of plan.steps) {
    reason ??= step.reason;
    if (step.kind === 'pour') {
      if (reason !== undefined) continue;
      const { before, after } = step;
      const held = before === undefined ? 0 : heatAt(before, celsius);
      const mixed = celsiusOf(after, held + step.kilojoules + heatOfTempered(step, waterCelsius));
      if (!Number.isFinite(mixed)) continue;
      const moved = before === undefined ? 0 : slopeAt(before, celsius) * perDegree;
      const water =
        waterCelsius === undefined ? 0 : step.temperedKilograms * slopeAt(waterCurve, waterCelsius);
      perDegree = (moved + water) / slopeAt(after, mixed);
      celsius = mixed;
      continue;
    }
    if (reason !== undefined || step.bowl === undefined) {
      starts.push(undefined);
      continue;
    }
    const { warming, minutes } = step;
    starts.push({ celsius, warming });
    const later = temperatureAfter(warming, celsius, minutes);
    if (!Number.isFinite(later)) {
      reason = message('mixing.no-temperature');
      continue;
    }
    warmed += later - celsius;
    celsius = later;
    perDegree *= differenceLeft(warming, minutes);
  }
  const why = reason ?? (Number.isFinite(celsius) ? undefined : message('mixing.nothing-warm'));
  return {
    starts,
    end: why === undefined ? known(celsius, 'common practice') : unknown(why),
    ...(why === undefined ? { endsAtCelsius: celsius } : {}),
    warmed: why === undefined ? known(warmed, 'common practice') : unknown(why),
    endPerWaterDegree: perDegree,
  };
}

/** The heat that working and the room bring to the dough in a run, kJ; undefined where its temperatures are not known. */
export function heatOfStretches(
  plan: HeatPlan,
  run: HeatRun,
): { readonly working: number; readonly room: number } | undefined {
  let [working, room] = [0, 0];
  let timed = 0;
  for (const step of plan.steps) {
    if (step.kind === 'pour') continue;
    const start = run.starts[timed++];
    if (start === undefined || step.bowl === undefined) {
      if (step.bowl !== undefined) return undefined;
      continue;
    }
    const later = temperatureAfter(start.warming, start.celsius, step.minutes);
    const gained = heatAt(step.bowl, later) - heatAt(step.bowl, start.celsius);
    const moved = later - start.celsius;
    const capacity = Math.abs(moved) > 1e-9 ? gained / moved : slopeAt(step.bowl, later);
    const worked = capacity * start.warming.celsiusPerMinute * step.minutes;
    working += worked;
    room += gained - worked;
  }
  return { working, room };
}

const waterCurve = heatCurve(pureWater);

function heatOfTempered(step: Pour, waterCelsius: number | undefined): number {
  if (waterCelsius !== undefined) return step.temperedKilograms * heatAt(waterCurve, waterCelsius);
  let sum = 0;
  for (const portion of step.tempered) sum += (portion.grams / 1000) * contentOf(portion);
  return sum;
}
