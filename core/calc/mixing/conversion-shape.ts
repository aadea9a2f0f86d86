import { softness, stiffWaterToFlour } from './bowl-load.ts';
import type { MixerData } from './mixer.ts';
import type { MixingInput, MixingPhase } from './mixing-programme.ts';

/** How a machine is usually run: a first speed that wets the flour, and the speed that does the work. */
export interface MachineShape {
  readonly first: number;
  readonly work: number;
}

/** Minutes at first speed that wet the flour: at least, where the other mixer began gently, and at most. Common practice, no source. */
export const wetting = { least: 3, byHand: 4, most: 5 } as const;

/** A dough that so much less water than the flour takes makes stiff, as a part of the flour; common practice, our own choice. */
const stiffBelow = 0.06;

/**
 * The usual shape of a machine for a dough: first and second speed; for stiff dough, for rye and for what forms no gluten network the
 * first alone. Undefined where the machine states no speeds.
 */
export function shapeFor(mixing: MixingInput, to: MixerData): MachineShape | undefined {
  const [first, second] = to.speeds.map((speed) => speed.number).sort((one, other) => one - other);
  if (first === undefined) return undefined;
  return { first, work: second === undefined || isForFirstSpeed(mixing) ? first : second };
}

function isForFirstSpeed({ phases, curve }: MixingInput): boolean {
  // Without a curve the dough forms no network, or nobody knows it: gentle is the safe side.
  if (!curve.known) return true;
  const soft = softness(phases.flatMap((phase) => ('portions' in phase ? phase.portions : [])));
  if (soft === undefined) return false;
  const { absorptionAsIs } = curve.value;
  return soft <= stiffWaterToFlour || (absorptionAsIs.known && soft <= absorptionAsIs.value - stiffBelow);
}

/** Whether a line of work is the gentle beginning on its own mixer: its slowest speed of several, or stirring. */
export function isGentle(phase: MixingPhase, { speeds }: MixerData): boolean {
  if (phase.kind === 'stir') return true;
  if (phase.kind !== 'speed' || speeds.length < 2) return false;
  return speeds.every((speed) => speed.number >= phase.number);
}
