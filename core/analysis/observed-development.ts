import { type DevelopmentFactor, developmentFactor } from '../calc/calibration/calibration-development.ts';
import type { FormulaModel } from '../model/formula-model.ts';
import type { Mixer } from '../model/found-mixer.ts';
import type { Scope } from '../model/scope.ts';
import { isReadingValue } from '../syntax/reading-value.ts';
import type { Analysis } from './analysis.ts';
import { trialEvidence, trialsOf } from './trials.ts';

/** Whether a trial of a formula says how its dough looked: most say nothing of it, and cost nothing. */
export function seesStages({ trials }: FormulaModel): boolean {
  return trials.some((trial) =>
    [...(trial.said.get('at') ?? []), ...(trial.said.get('end') ?? [])].some(
      ({ statement: { value } }) =>
        isReadingValue(value) && (value.stage !== undefined || value.feel !== undefined),
    ),
  );
}

/**
 * How many times as fast as worked out the trials of a formula on its own mixer saw the dough develop; undefined where they
 * agree with what is worked out, or with nothing. One flour on one mixer cannot tell whose that is.
 */
export function seenDevelopment(analysis: Analysis, scope: Scope): DevelopmentFactor | undefined {
  const { doughMix } = analysis;
  if (!doughMix.known) return undefined;
  const { mixer } = doughMix.value;
  const evidence = trialsOf(analysis, scope).flatMap((trial) => {
    const isOwn = trial.mix.known && isSameMixer(trial.mix.value.mixer, mixer);
    return (isOwn ? trialEvidence(trial, '') : undefined) ?? [];
  });
  if (evidence.length === 0) return undefined;
  const factor = developmentFactor(mixer.data, evidence);
  if (!factor.known) return undefined;
  const { least, most } = factor.value;
  return least > 1 || (most !== undefined && most < 1) ? factor.value : undefined;
}

/** A kind of mixer that nobody defines is made anew each time it is looked up, and is one mixer all the same. */
function isSameMixer(one: Mixer, other: Mixer): boolean {
  if (one === other || one.definition?.block !== other.definition?.block) return one === other;
  return one.definition !== undefined || (one.name === other.name && one.data.kind === other.data.kind);
}
