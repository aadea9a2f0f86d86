import { type Calibration, calibrateMixer } from '../calc/calibration.ts';
import { type DevelopmentFactor, developmentFactor } from '../calc/calibration-development.ts';
import type { CalibrationTrial } from '../calc/calibration-quantities.ts';
import { type Known, unknown } from '../calc/known.ts';
import { type FormulaModel, formulaOf } from '../model/formula-model.ts';
import { findMixer, type Mixer } from '../model/mixer.ts';
import { saidValue } from '../model/properties.ts';
import type { Definition, DefinitionKind, Scope } from '../model/scope.ts';
import { seenFrom } from '../model/seen-from.ts';
import type { Block, Name } from '../syntax/tree.ts';
import { analyse } from './analysis.ts';
import { trialEvidence, trialsOf } from './trials.ts';

/** A mixer fitted to all trials that were run on it. */
export interface MixerTrials {
  readonly mixer: Mixer;
  /** The formulas whose trials count, in the order of the workspace. */
  readonly formulas: readonly Definition[];
  readonly readings: number;
  readonly calibration: Known<Calibration>;
  /** How fast it develops dough, by the stages seen; worked out when asked for. */
  readonly development: () => Known<DevelopmentFactor>;
}

/**
 * Fits the mixer of a block to the trials of all formulas of the workspace that mean this very mixer. Undefined when the
 * block is no mixer, its name has several definitions, or no trial was run on it.
 */
export function mixerTrials(block: Block, name: Name, scope: Scope): MixerTrials | undefined {
  const candidates = scope.names('tried').flatMap((definition) => {
    const model = formulaOf(definition.block);
    return model !== undefined && mayUse(model, name.folded) ? [{ definition, model }] : [];
  });
  if (candidates.length === 0) return undefined;
  const found = findMixer(name, scope);
  if (found.kind !== 'found' || found.mixer.definition?.block !== block) return undefined;
  const formulas: Definition[] = [];
  const evidence: CalibrationTrial[] = [];
  for (const { definition, model } of candidates) {
    const own = evidenceOf(definition, model, block, seenFrom(scope, definition.uri));
    if (own.length === 0) continue;
    formulas.push(definition);
    evidence.push(...own);
  }
  if (evidence.length === 0) return undefined;
  return {
    mixer: found.mixer,
    formulas,
    readings: evidence.reduce((sum, trial) => sum + trial.readings.length, 0),
    calibration: calibrationOf(block, found.mixer, evidence),
    development: () => developmentFactor(found.mixer.data, evidence),
  };
}

function calibrationOf(
  block: Block,
  mixer: Mixer,
  evidence: readonly CalibrationTrial[],
): Known<Calibration> {
  const before = calibrations.get(block);
  const same =
    before?.evidence.length === evidence.length &&
    before.evidence.every((one, index) => one === evidence[index]);
  if (before !== undefined && same) return before.calibration;
  const calibration = mixer.kindAssumed
    ? unknown('the mixer does not say of what kind it is')
    : calibrateMixer(mixer.data, evidence);
  calibrations.set(block, { evidence, calibration });
  return calibration;
}

const calibrations = new WeakMap<
  Block,
  { readonly evidence: readonly CalibrationTrial[]; readonly calibration: Known<Calibration> }
>();

/** Whether a formula can have trials on a mixer of this name at all: most have none, and cost nothing. */
function mayUse(model: FormulaModel, folded: string): boolean {
  if (model.trials.length === 0) return false;
  const byTrial = model.trials.some(
    (trial) => saidValue(trial.said, 'mixer', 'name')?.name.folded === folded,
  );
  return (
    byTrial ||
    model.mixes.some(
      ({ header }) =>
        header.byHand === undefined && (header.mixer === undefined || header.mixer.folded === folded),
    )
  );
}

interface Asked {
  readonly kind: DefinitionKind;
  readonly folded: string | undefined;
  readonly blocks: readonly Block[];
}

const remembered = new WeakMap<
  Block,
  { readonly asked: readonly Asked[]; readonly mixer: Block; readonly evidence: readonly CalibrationTrial[] }
>();

/**
 * What the trials of one formula say of the mixer. Remembered while the formula and all it looked up stay the same, so
 * that a change of one formula works out that one alone.
 */
function evidenceOf(
  { uri, block, name }: Definition,
  model: FormulaModel,
  mixer: Block,
  scope: Scope,
): readonly CalibrationTrial[] {
  const before = remembered.get(block);
  if (before?.mixer === mixer && before.asked.every((one) => stands(one, scope))) return before.evidence;
  const asked: Asked[] = [];
  const listening = noting(scope, asked);
  const analysis = analyse(model, listening);
  const evidence = trialsOf(analysis, listening).flatMap((trial) => {
    if (!trial.mix.known || trial.mix.value.mixer.definition?.block !== mixer) return [];
    return trialEvidence(trial, `${name.text}, ${trial.model.header.date ?? uri}`) ?? [];
  });
  remembered.set(block, { asked, mixer, evidence });
  return evidence;
}

function stands({ kind, folded, blocks }: Asked, scope: Scope): boolean {
  const now = folded === undefined ? nearestOf(scope, kind) : scope.find(kind, folded).flat();
  return now.length === blocks.length && now.every((one, index) => one.block === blocks[index]);
}

function nearestOf(scope: Scope, kind: DefinitionKind): readonly Definition[] {
  const nearest = scope.nearest(kind);
  return nearest === undefined ? [] : [nearest];
}

function noting(scope: Scope, asked: Asked[]): Scope {
  const note = (kind: DefinitionKind, folded: string | undefined, found: readonly Definition[]): void => {
    if (asked.some((one) => one.kind === kind && one.folded === folded)) return;
    asked.push({ kind, folded, blocks: found.map((one) => one.block) });
  };
  return {
    ...scope,
    find: (kind, folded) => {
      const found = scope.find(kind, folded);
      note(kind, folded, found.flat());
      return found;
    },
    nearest: (kind) => {
      const found = scope.nearest(kind);
      note(kind, undefined, found === undefined ? [] : [found]);
      return found;
    },
  };
}
