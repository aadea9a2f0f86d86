import type { MixerKind } from '../mixing/mixer.ts';
import type { TimeStep } from '../mixing/mixing-programme.ts';
import { temperatureAfter, type WarmingPhase } from './warming.ts';

/** How far the warming of a speed may be off, by its kind alone. Common practice, our own choice. */
const unsureByKind: Readonly<Record<MixerKind, number>> = {
  hand: 0,
  spiral: 0.2,
  planetary: 0.3,
  fork: 0.3,
  'twin arm': 0.3,
  horizontal: 0.3,
};
/** The same where it was measured: for the speed, or as a friction factor for the whole of a programme. */
const unsureMeasured = 0.05;
const unsureByFriction = 0.1;
/** Beyond the work that a factor stands for: nobody says over how many minutes it was taken, and it may have been half of them. */
const beyondFriction = 2;
/** How far off what hands warm the dough towards may be, °C: cold hands on stone to warm hands on wood; and as measured. */
const handsByKind = 4;
const handsMeasured = 0.5;

/**
 * How far the dough’s temperature may be off after a stretch, either way, °C, when it may be off by `before` at its
 * start: what is not known of the mixer adds to it, and the room evens it out like any other difference.
 */
export function unsureAfter(step: TimeStep, warming: WarmingPhase, before: number): number {
  const within = step.measuredWithin ?? 0;
  const hands = step.working && warming.celsiusPerMinute === 0;
  const share = step.measured ? unsureMeasured : shareOf(step);
  const growing: WarmingPhase = {
    // What was measured is never surer than the error of its fit.
    celsiusPerMinute: Math.max(Math.abs(warming.celsiusPerMinute) * share, hands ? 0 : within),
    aroundCelsius: hands
      ? step.measured || step.friction !== undefined
        ? Math.max(handsMeasured, within)
        : handsByKind
      : 0,
    settlesMinutes: warming.settlesMinutes,
  };
  const after = temperatureAfter(growing, before, step.minutes);
  return Number.isFinite(after) ? after : before;
}

function shareOf({ friction, mixerKind }: TimeStep): number {
  const byKind = unsureByKind[mixerKind];
  if (friction === 'stands') return Math.min(unsureByFriction, byKind);
  return friction === 'beyond' ? beyondFriction * byKind : byKind;
}
