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

/** A mixer fitted to the newest trials that were run on it. */
export interface MixerTrials {
  readonly mixer: Mixer;
  /** The formulas whose trials count, in the order of the workspace. */
  readonly formulas: readonly Definition[];
  /** Trials that count. */
  readonly trials: number;
  /** Whether there are older ones that do not count. */
  readonly hasOlder: boolean;
  readonly readings: number;
  readonly calibration: Known<Calibration>;
  /** How fast it develops dough, by the stages seen; worked out when asked for. */
  readonly development: () => Known<DevelopmentFactor>;
}

/** As many trials as a fit takes. Their readings tell enough, and older ones tell of a mixer before its repairs. */
const mostTrials = 40;

/** One trial of a formula that may have been run on the mixer. */
interface Run {
  readonly definition: Definition;
  readonly model: FormulaModel;
  readonly index: number;
  /** ISO 8601; '' where the trial has none. */
  readonly date: string;
}

/**
 * Fits the mixer of a block to the newest trials, of all formulas of the workspace, that mean this very mixer. Undefined
 * when the block is no mixer, its name has several definitions, or no trial was run on it.
 */
export function mixerTrials(block: Block, name: Name, scope: Scope): MixerTrials | undefined {
  const runs = scope.names('tried').flatMap((definition): Run[] => {
    const model = formulaOf(definition.block);
    if (model === undefined || !mayUse(model, name.folded)) return [];
    return model.trials.map(({ header }, index) => ({ definition, model, index, date: header.date ?? '' }));
  });
  if (runs.length === 0) return undefined;
  const found = findMixer(name, scope);
  if (found.kind !== 'found' || found.mixer.definition?.block !== block) return undefined;
  const counted = new Set<Definition>();
  const evidence: CalibrationTrial[] = [];
  const newest = runs.toSorted((one, other) => (one.date < other.date ? 1 : one.date > other.date ? -1 : 0));
  let looked = 0;
  for (const { definition, model, index } of newest) {
    if (evidence.length === mostTrials) break;
    looked++;
    const own = evidenceOf(definition, model, block, seenFrom(scope, definition.uri))[index];
    if (own === undefined) continue;
    counted.add(definition);
    evidence.push(own);
  }
  if (evidence.length === 0) return undefined;
  const { calibration, development } = calibrationOf(block, found.mixer, evidence);
  return {
    mixer: found.mixer,
    formulas: [...new Set(runs.map(({ definition }) => definition))].filter((one) => counted.has(one)),
    trials: evidence.length,
    hasOlder: looked < newest.length,
    readings: evidence.reduce((sum, trial) => sum + trial.readings.length, 0),
    calibration,
    development,
  };
}

type Fitted = Pick<MixerTrials, 'calibration' | 'development'>;

function calibrationOf(block: Block, mixer: Mixer, evidence: readonly CalibrationTrial[]): Fitted {
  const before = calibrations.get(block);
  const same =
    before?.evidence.length === evidence.length &&
    before.evidence.every((one, index) => one === evidence[index]);
  if (before !== undefined && same) return before;
  let development: Known<DevelopmentFactor> | undefined;
  const made = {
    evidence,
    calibration: mixer.kindAssumed
      ? unknown('the mixer does not say of what kind it is')
      : calibrateMixer(mixer.data, evidence),
    development: () => {
      development ??= developmentFactor(mixer.data, evidence);
      return development;
    },
  };
  calibrations.set(block, made);
  return made;
}

const calibrations = new WeakMap<Block, Fitted & { readonly evidence: readonly CalibrationTrial[] }>();

/** Whether a formula can have trials on a mixer of this name at all: most have none, and cost nothing. */
function mayUse(model: FormulaModel, folded: string): boolean {
  if (model.trials.length === 0) return false;
  const byTrial = model.trials.some(
    ({ said }) =>
      saidValue(said, 'mixed', 'mixedIn')?.name?.folded === folded ||
      saidValue(said, 'mixer', 'name')?.name.folded === folded,
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

/** By the trials of a formula, in their order; undefined for one that says nothing of the mixer. */
type Evidence = readonly (CalibrationTrial | undefined)[];

const remembered = new WeakMap<
  Block,
  { readonly asked: readonly Asked[]; readonly mixer: Block; readonly evidence: Evidence }
>();

/**
 * What each trial of one formula says of the mixer. Remembered while the formula and all it looked up stay the same, so
 * that a change of one formula works out that one alone.
 */
function evidenceOf(
  { uri, block, name }: Definition,
  model: FormulaModel,
  mixer: Block,
  scope: Scope,
): Evidence {
  const before = remembered.get(block);
  if (before?.mixer === mixer && before.asked.every((one) => stands(one, scope))) return before.evidence;
  const asked: Asked[] = [];
  const listening = noting(scope, asked);
  const analysis = analyse(model, listening);
  const evidence = trialsOf(analysis, listening).map((trial) => {
    if (!trial.mix.known || trial.mix.value.mixer.definition?.block !== mixer) return undefined;
    return trialEvidence(trial, `${name.text}, ${trial.model.header.date ?? uri}`);
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
