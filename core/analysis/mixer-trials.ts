import { type Calibration, calibrateMixer } from '../calc/calibration/calibration.ts';
import { type DevelopmentFactor, developmentFactor } from '../calc/calibration/calibration-development.ts';
import type { CalibrationTrial } from '../calc/calibration/calibration-quantities.ts';
import { type Known, unknown } from '../calc/known.ts';
import type { MixerKind } from '../calc/mixing/mixer.ts';
import { type FormulaModel, formulaOf } from '../model/formula-model.ts';
import { byHand, findHands, findMixer, type Mixer } from '../model/found-mixer.ts';
import { saidValue } from '../model/properties.ts';
import type { Definition, DefinitionKind, Scope } from '../model/scope.ts';
import { wholeBlock } from '../model/variant.ts';
import type { Block, Name } from '../syntax/tree.ts';
import { firstOf } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import { analyse } from './analyse.ts';
import type { Analysis } from './analysis.ts';
import { trialEvidence, trialsOf } from './trials.ts';

/** A mixer fitted to the newest trials that were run on it. */
export interface MixerTrials {
  readonly mixer: Mixer;
  /** The formula of its newest trial. */
  readonly newest: Definition;
  /** The formulas whose trials count, in the order of the workspace. */
  readonly formulas: readonly Definition[];
  /** Trials that count. */
  readonly trials: number;
  /** Whether there are older ones that do not count. */
  readonly hasOlder: boolean;
  readonly readings: number;
  readonly calibration: Known<Calibration, Message>;
  /** How fast it develops dough, by the stages seen; worked out when asked for. */
  readonly development: () => Known<DevelopmentFactor, Message>;
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
  const runs = runsOf(scope, (model) => mayUse(model, name.folded));
  if (runs.length === 0) return undefined;
  const found = findMixer(name, scope);
  if (found.kind !== 'found' || found.mixer.definition?.block !== block) return undefined;
  return fittedTo(found.mixer, runs, scope);
}

/**
 * Fits the hands of the bakery, which need no section of their own, to the newest trials that were mixed by hand. Undefined
 * where they have a section, whose trials are `mixerTrials`, or where no trial was mixed by hand.
 */
export function handTrials(scope: Scope): MixerTrials | undefined {
  if (findHands(scope) !== byHand) return undefined;
  const runs = runsOf(scope, (model) => mayUse(model, byHand.name));
  return runs.length === 0 ? undefined : fittedTo(byHand, runs, scope);
}

function runsOf(scope: Scope, mayCount: (model: FormulaModel) => boolean): Run[] {
  return scope.names('tried').flatMap((definition): Run[] => {
    const model = formulaOf(wholeBlock(definition.block, scope.from(definition.uri)));
    if (model === undefined || !mayCount(model)) return [];
    return model.trials.map(({ header }, index) => ({ definition, model, index, date: header.date ?? '' }));
  });
}

function fittedTo(mixer: Mixer, runs: readonly Run[], scope: Scope): MixerTrials | undefined {
  const counted = new Set<Definition>();
  const evidence: CalibrationTrial[] = [];
  const newest = newestFirst(runs);
  let looked = 0;
  for (const { definition, model, index } of newest) {
    if (evidence.length === mostTrials) break;
    looked++;
    const own = evidenceOf(definition, model, scope.from(definition.uri))[index];
    if (own === undefined || own.mixer !== keyOf(mixer)) continue;
    counted.add(definition);
    evidence.push(own.trial);
  }
  if (evidence.length === 0) return undefined;
  return {
    mixer,
    newest: firstOf([...counted]),
    formulas: [...new Set(runs.map(({ definition }) => definition))].filter((one) => counted.has(one)),
    trials: evidence.length,
    hasOlder: looked < newest.length,
    readings: evidence.reduce((sum, trial) => sum + trial.readings.length, 0),
    ...calibrationOf(mixer, evidence),
  };
}

type Fitted = Pick<MixerTrials, 'calibration' | 'development'>;

function calibrationOf(mixer: Mixer, evidence: readonly CalibrationTrial[]): Fitted {
  const before = calibrations.get(firstOf(evidence));
  const same =
    before?.mixer === mixer &&
    before.evidence.length === evidence.length &&
    before.evidence.every((one, index) => one === evidence[index]);
  if (before !== undefined && same) return before.fitted;
  let development: Known<DevelopmentFactor, Message> | undefined;
  const fitted: Fitted = {
    calibration: mixer.kindAssumed
      ? unknown(message('calibration.no-kind'))
      : calibrateMixer(mixer.data, evidence),
    development: () => {
      development ??= developmentFactor(mixer.data, evidence);
      return development;
    },
  };
  calibrations.set(firstOf(evidence), { mixer, evidence, fitted });
  return fitted;
}

/** By the newest trial, which stays the same object while its formula and its mixer do. */
const calibrations = new WeakMap<
  CalibrationTrial,
  { readonly mixer: Mixer; readonly evidence: readonly CalibrationTrial[]; readonly fitted: Fitted }
>();

/** What tells mixers apart: the block that defines one, else its kind; all that is mixed by hand without a section is one pair of hands. */
export type MixerKey = Block | MixerKind;

/** What a mixer is known by while trials are gathered: the block that defines it, else its kind. */
export function keyOf({ definition, data }: Mixer): MixerKey {
  return definition?.block ?? data.kind;
}

/** The newest trials of the workspace, on whatever mixer, that have something to compare. */
export function newestTrials(scope: Scope): { readonly told: Told; readonly definition: Definition }[] {
  const found: { told: Told; definition: Definition }[] = [];
  for (const { definition, model, index } of newestFirst(runsOf(scope, ({ trials }) => trials.length > 0))) {
    if (found.length === mostTrials) break;
    const told = evidenceOf(definition, model, scope.from(definition.uri))[index];
    if (told !== undefined) found.push({ told, definition });
  }
  return found;
}

function newestFirst(runs: readonly Run[]): Run[] {
  return runs.toSorted((one, other) => (one.date < other.date ? 1 : one.date > other.date ? -1 : 0));
}

/** Whether a formula can have trials on a mixer of this name at all: most have none, and cost nothing. */
function mayUse(model: FormulaModel, folded: string): boolean {
  if (model.trials.length === 0) return false;
  const byTrial = model.trials.some(({ said }) => {
    const mixed = saidValue(said, 'mixed', 'mixedIn');
    const name = mixed?.name ?? saidValue(said, 'mixer', 'name')?.name;
    return name?.folded === folded || (mixed?.byHand === true && folded === byHand.name);
  });
  return (
    byTrial ||
    model.mixes.some(({ header }) =>
      header.byHand === true
        ? folded === byHand.name
        : header.mixer === undefined || header.mixer.folded === folded,
    )
  );
}

interface Asked {
  readonly kind: DefinitionKind;
  readonly folded: string | undefined;
  readonly blocks: readonly Block[];
}

/** What a trial says, and of which mixer. */
export interface Told {
  readonly mixer: MixerKey;
  readonly trial: CalibrationTrial;
}

/** By the trials of a formula, in their order; undefined for one that says nothing of its mixer. */
type Evidence = readonly (Told | undefined)[];

const remembered = new WeakMap<
  Block,
  { readonly model: FormulaModel; readonly asked: readonly Asked[]; readonly evidence: Evidence }
>();

/**
 * What each trial of one formula says of its mixer. Remembered while the formula and all it looked up stay the same, so
 * that a change of one formula works out that one alone.
 */
function evidenceOf({ uri, block, name }: Definition, model: FormulaModel, scope: Scope): Evidence {
  const before = remembered.get(block);
  // A variant is another as soon as its base is.
  if (before?.model === model && before.asked.every((one) => stands(one, scope))) return before.evidence;
  const asked: Asked[] = [];
  const listening = noting(scope, asked);
  const analysis = analyse(model, listening);
  const flours = flourNames(analysis);
  const evidence = trialsOf(analysis, listening).map((trial): Told | undefined => {
    if (!trial.mix.known) return undefined;
    const told = trialEvidence(trial, `${name.text}, ${trial.model.header.date ?? uri}`);
    if (told === undefined) return undefined;
    const friction = trial.friction();
    return {
      mixer: keyOf(trial.mix.value.mixer),
      trial: { ...told, flours, ...(friction.known ? { frictionCelsius: friction.value } : {}) },
    };
  });
  remembered.set(block, { model, asked, evidence });
  return evidence;
}

/** The flours of a dough by name: what its trials show of development may be theirs. */
function flourNames({ solved }: Analysis): string {
  const names = solved?.overall.filter((line) => line.isFlour).map((line) => line.key) ?? [];
  return [...new Set(names)].sort().join(', ');
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
