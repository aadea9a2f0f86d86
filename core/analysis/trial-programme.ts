import { doughOf } from '../calc/formula/formula-input.ts';
import type { SolvedFormula } from '../calc/formula/formula-result.ts';
import { scaledPortion } from '../calc/formula/scaled-portion.ts';
import { type Known, unknown } from '../calc/known.ts';
import type { MixingInput, MixingPhase } from '../calc/mixing/mixing-programme.ts';
import { minutesOfPhases } from '../calc/mixing/phase-times.ts';
import { byHand } from '../model/found-mixer.ts';
import type { Said } from '../model/properties.ts';
import type { ResolvedFormula } from '../model/resolve.ts';
import type { KeptProgramme, ResolvedMix } from '../model/resolve-mix.ts';
import { elementAt } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import type { Analysis } from './analysis.ts';
import { type ReadyProgramme, readyProgramme } from './mix-analysis.ts';

/**
 * The programme that a trial keeps, ready to be run on any mixer: its input holds hands until somebody puts the trial's own
 * mixer in. Weights are those of the formula as it is; what was run, and in what order, is the trial's own.
 */
export function keptProgramme(
  resolved: ResolvedFormula,
  solved: SolvedFormula | undefined,
  kept: KeptProgramme,
): Known<ReadyProgramme, Message> {
  if (solved === undefined) return unknown(message('mixing.no-lines'));
  if (kept.phases.some(({ statement }) => statement.value === undefined))
    return unknown(message('trial.line-unfinished'));
  const loaded = kept.phases.some(isLoad) ? kept : loadedAsTheFormula(kept, doughMixOf(resolved));
  return readyProgramme(resolved, solved, { ...loaded, mixer: byHand });
}

/** The programme that mixes the dough itself, whether it can be run or not. */
export function doughMixOf({ mixes, input }: ResolvedFormula): ResolvedMix | undefined {
  return mixes.find((mix) => mix.sectionId === doughOf(input).id);
}

/**
 * A programme on a mixer whose friction factor stands for the formula’s own: minutes beyond those go on warming. Without a programme of the
 * formula the factor says nothing.
 *
 * @param batchFactor how many times as large a batch was mixed as the formula's own
 */
export function withUsualFriction(
  input: MixingInput,
  usual: Analysis['doughMix'],
  batchFactor = 1,
): MixingInput {
  if (usual.known) {
    const frictionPhases = usual.value.input.phases.map(
      (phase): MixingPhase =>
        'portions' in phase
          ? { ...phase, portions: phase.portions.map((one) => scaledPortion(one, batchFactor)) }
          : phase,
    );
    return { ...input, frictionPhases };
  }
  const { friction: _, ...rest } = input;
  return rest;
}

/** Whether a programme is the formula’s own but for a fifth of the minutes: then a friction factor that it shows is one of the mixer. */
export function isRunAsUsual(phases: readonly MixingPhase[], usual: Analysis['doughMix']): boolean {
  if (!usual.known) return false;
  const own = usual.value.input.phases;
  const longer = Math.max(minutesOfPhases(phases), minutesOfPhases(own));
  return sharedMinutes(phases, own) >= 0.8 * longer;
}

/** For how many minutes two programmes run the same, rests included: as far as one can be set beside the other. */
export function sharedMinutes(one: readonly MixingPhase[], other: readonly MixingPhase[]): number {
  const [left, right] = [timed(one), timed(other)];
  let minutes = 0;
  for (const [index, phase] of left.entries()) {
    const beside = right[index];
    const isSame =
      beside?.kind === phase.kind &&
      (phase.kind !== 'speed' || (beside.kind === 'speed' && beside.number === phase.number));
    if (!isSame) break;
    minutes += Math.min(phase.seconds, beside.seconds) / 60;
    if (phase.seconds !== beside.seconds) break;
  }
  return minutes;
}

type TimedPhase = Exclude<MixingPhase, { readonly portions: unknown }>;

const timed = (phases: readonly MixingPhase[]): TimedPhase[] =>
  phases.flatMap((phase) => ('portions' in phase ? [] : [phase]));

/**
 * Of a trial that says only how long what ran, what went in is told by the formula. Where its lines run in the order of the
 * formula's as far as the last addition, each goes in where the formula adds it; else all of it goes in at the start.
 */
function loadedAsTheFormula(kept: KeptProgramme, mix: ResolvedMix | undefined): KeptProgramme {
  if (mix === undefined) return kept;
  const loads = mix.phases.filter(isLoad);
  const last = mix.phases.findLastIndex(isLoad);
  const worked = mix.phases.slice(0, last + 1).filter((phase) => !isLoad(phase));
  const isSameOrder =
    kept.phases.length > worked.length &&
    worked.every((phase, index) => whatRuns(phase) === whatRuns(elementAt(kept.phases, index)));
  if (!isSameOrder) return { ...kept, phases: [...loads, ...kept.phases], loads: mix.loads };
  const before = mix.phases.slice(0, last + 1);
  let ran = 0;
  const phases = before.map((phase) => (isLoad(phase) ? phase : elementAt(kept.phases, ran++)));
  return { ...kept, phases: [...phases, ...kept.phases.slice(ran)], loads: mix.loads };
}

const isLoad = ({ statement }: Said): boolean =>
  statement.property === 'load' || statement.property === 'add';

function whatRuns({ statement: { property, value } }: Said): string {
  return value?.form === 'mixSpeed' ? `speed ${value.number}` : property;
}
