import { type Message, message } from '../../words/message.ts';
import { type Known, unknown } from '../known.ts';
import type { MixingStage } from './development.ts';
import { simulateMixing } from './mixing.ts';
import type { MixingInput, MixingPhase } from './mixing-programme.ts';

/** The stage of the dough at a minute of its programme; unknown outside of it, with the reason. */
export function stageAt(mixing: MixingInput, minutes: number): Known<MixingStage, Message> {
  const phases: MixingPhase[] = [];
  let left = minutes * 60;
  for (const phase of mixing.phases) {
    if ('portions' in phase) {
      phases.push(phase);
      continue;
    }
    // A reading at the end of a stretch was taken before whatever goes in next.
    const seconds = Math.min(left, Math.max(0, phase.seconds));
    phases.push({ ...phase, seconds });
    left -= seconds;
    if (left <= 1e-6) return simulateMixing({ ...mixing, phases }).stage;
  }
  return left <= 1 ? simulateMixing({ ...mixing, phases }).stage : unknown(message('mixing.over'));
}
