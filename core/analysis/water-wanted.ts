import type { Known } from '../calc/known.ts';
import type { MixingPhase } from '../calc/mixing/mixing-programme.ts';
import { type TemperedWater, temperWater } from '../calc/mixing/mixing-water.ts';
import type { Message } from '../words/message.ts';
import type { MixAnalysis } from './mix-analysis.ts';

/** The water that brings the dough to its temperature, also where the file takes its water at another. */
export function waterWanted(mix: MixAnalysis): Known<TemperedWater, Message> {
  if (mix.water.known) return mix.water;
  return temperWater({
    mixing: { ...mix.input, phases: withFreeWater(mix.input.phases) },
    ...mix.tempering,
  });
}

/** The phases with the temperature of their water left open. */
export function withFreeWater(phases: readonly MixingPhase[]): MixingPhase[] {
  return phases.map((phase) => {
    if (!('portions' in phase)) return phase;
    return {
      ...phase,
      portions: phase.portions.map((one) => (one.kind === 'water' ? { ...one, tempered: true } : one)),
    };
  });
}
