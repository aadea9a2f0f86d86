import { type Message, message } from '../../words/message.ts';
import { type Known, unknown } from '../known.ts';
import type { MixingStage } from './development.ts';
import { simulateMixing } from './mixing.ts';
import type { MixingInput, MixingPhase } from './mixing-programme.ts';
import { minutesOfPhases } from './phase-times.ts';

/** The stage of the dough at a minute of its programme; unknown outside of it, with the reason. */
export function stageAt(mixing: MixingInput, minutes: number): Known<MixingStage, Message> {
  const isOver = minutes * 60 > minutesOfPhases(mixing.phases) * 60 + 1;
  return isOver ? unknown(message('mixing.over')) : simulateMixing(mixingUntil(mixing, minutes)).stage;
}

/** A programme as far as a minute of it. What a friction factor stands for stays the whole of it. */
export function mixingUntil(mixing: MixingInput, minutes: number): MixingInput {
  const phases: MixingPhase[] = [];
  let left = minutes * 60;
  for (const phase of mixing.phases) {
    if ('portions' in phase) {
      phases.push(phase);
      continue;
    }
    const seconds = Math.min(left, Math.max(0, phase.seconds));
    phases.push({ ...phase, seconds });
    left -= seconds;
    // A reading at the end of a stretch is taken before whatever goes in next.
    if (left <= 1e-6) break;
  }
  return { ...mixing, phases, frictionPhases: mixing.frictionPhases ?? mixing.phases };
}
