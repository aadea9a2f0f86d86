import type { TimeStep } from './mixing-programme.ts';
import { temperatureAfter, type WarmingPhase } from './warming.ts';

/** How far the warming of a speed may be off: by its kind alone, and as measured. Common practice, our own choice. */
const unsureByKind = 0.2;
const unsureMeasured = 0.05;
/** How far off what hands warm the dough towards may be, °C: by itself, and as measured. */
const handsByKind = 2;
const handsMeasured = 0.5;

/**
 * How far the dough’s temperature may be off after a stretch, either way, °C, when it may be off by `before` at its
 * start: what is not known of the mixer adds to it, and the room evens it out like any other difference.
 */
export function unsureAfter(step: TimeStep, warming: WarmingPhase, before: number): number {
  const hands = step.working && warming.celsiusPerMinute === 0;
  const share = step.measured ? unsureMeasured : unsureByKind;
  const growing: WarmingPhase = {
    celsiusPerMinute: Math.abs(warming.celsiusPerMinute) * share,
    aroundCelsius: hands ? (step.measured ? handsMeasured : handsByKind) : 0,
    settlesMinutes: warming.settlesMinutes,
  };
  const after = temperatureAfter(growing, before, step.minutes);
  return Number.isFinite(after) ? after : before;
}
