import { heatAt } from '../formula/composition.ts';
import { curveOf, type HeatItem, hydrationHeat } from '../heat/heat-content.ts';
import { riseFromFriction } from '../heat/heat-friction.ts';
import { temperatureAfter } from '../heat/warming.ts';
import type { MixerData } from './mixer.ts';
import type { MixingInput, Programme, TimeStep } from './mixing-programme.ts';

/** How a measured friction factor changes the warming of the speeds that have none measured of their own. */
export interface FrictionScale {
  /** Factor on the warming H of the kind. */
  readonly warmingFactor: number;
  /** Added to what hand-worked dough drifts towards, °C. */
  readonly handShiftCelsius: number;
}

const unscaled: FrictionScale = { warmingFactor: 1, handShiftCelsius: 0 };

/**
 * The scale by which a programme warms the dough by just what the measured friction factor stands for, at the conditions of
 * that. A factor is no constant of a machine: work beyond the programme, or beyond a well developed dough, goes on warming. The heat of
 * hydration in the factor is taken off first. Where all speeds are measured, where a warming is not known, or without a factor,
 * nothing is scaled.
 *
 * @param stoodFor the programme that the factor stands for
 */
export function frictionScale(input: MixingInput, stoodFor: Programme): FrictionScale {
  const conditions = input.friction;
  const friction = usableFriction(input.mixer);
  if (conditions === undefined || friction === undefined) return unscaled;
  const items: HeatItem[] = [];
  for (const step of stoodFor.steps) if (step.kind === 'add') items.push(...step.portions);
  const dough = conditions.doughCelsius;
  const bowl = curveOf(items);
  const capacity = heatAt(bowl, dough) - heatAt(bowl, dough - 1);
  const hydration = capacity > 0 ? hydrationHeat(items) / capacity : 0;
  const start = dough - (riseFromFriction(friction, conditions) - hydration);
  const timed = stoodFor.steps.filter((step) => step.kind === 'time');
  const over = timed.findIndex((step) => step.friction === 'beyond');
  const steps = over < 0 ? timed : timed.slice(0, over);
  if (!Number.isFinite(start) || steps.some((step) => !step.warming.known)) return unscaled;

  const end = (scale: FrictionScale) =>
    steps.reduce(
      (celsius, step) =>
        temperatureAfter(
          warmingIn(step, scale, conditions.roomCelsius - input.roomCelsius),
          celsius,
          step.minutes,
        ),
      start,
    );
  const none = end({ warmingFactor: 0, handShiftCelsius: 0 });
  const one = end({ warmingFactor: 1, handShiftCelsius: 0 });
  // The end temperature is affine in the factor and in the shift, so two runs determine it.
  if (one - none > 1e-6)
    return { warmingFactor: Math.max(0, (dough - none) / (one - none)), handShiftCelsius: 0 };
  const shifted = end({ warmingFactor: 1, handShiftCelsius: 1 });
  if (shifted - one > 1e-6) return { warmingFactor: 1, handShiftCelsius: (dough - one) / (shifted - one) };
  return unscaled;
}

/** The warming of a step under a scale, for a room that is warmer than the step’s own by `roomShift`, °C. */
export function warmingIn(step: TimeStep, scale: FrictionScale, roomShift = 0) {
  const rate = step.warming.known ? step.warming.value : 0;
  return {
    celsiusPerMinute: step.measured ? rate : rate * scale.warmingFactor,
    aroundCelsius: step.aroundCelsius + roomShift + (step.byHand ? scale.handShiftCelsius : 0),
    settlesMinutes: step.settlesMinutes,
  };
}

function usableFriction(mixer: MixerData): number | undefined {
  const friction = mixer.frictionCelsius;
  return friction !== undefined && Number.isFinite(friction) ? friction : undefined;
}
