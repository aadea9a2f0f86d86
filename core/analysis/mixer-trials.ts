import { type Calibration, calibrateMixer } from '../calc/calibration/calibration.ts';
import { type DevelopmentFactor, developmentFactor } from '../calc/calibration/calibration-development.ts';
import type { CalibrationTrial } from '../calc/calibration/calibration-quantities.ts';
import { type Known, unknown } from '../calc/known.ts';
import { byHand, findHands, findMixer, type Mixer } from '../model/found-mixer.ts';
import { isSelf, type Notes, noting, stillFound } from '../model/noted-scope.ts';
import type { Definition, Scope } from '../model/scope.ts';
import type { Block, Name } from '../syntax/tree.ts';
import { firstOf } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import { evidenceOf, keyOf, type Told } from './trial-evidence.ts';
import { type Run, runsOf, triedModel } from './tried-runs.ts';

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

/**
 * Fits the mixer of a block to the newest trials, of all formulas of the workspace, that mean this very mixer. Undefined
 * when the block is no mixer, its name has several definitions, or no trial was run on it.
 */
export function mixerTrials(block: Block, name: Name, scope: Scope): MixerTrials | undefined {
  if (scope.names('tried').length === 0) return undefined;
  const found = findMixer(name, scope);
  if (found.kind !== 'found' || found.mixer.definition?.block !== block) return undefined;
  const { mixer } = found;
  return once(scope, mixer, (noted) => fittedTo(mixer, runsOf(noted, name.folded), noted));
}

/**
 * Fits the hands of the bakery, which need no section of their own, to the newest trials that were mixed by hand. Undefined
 * where they have a section, whose trials are `mixerTrials`, or where no trial was mixed by hand.
 */
export function handTrials(scope: Scope): MixerTrials | undefined {
  if (findHands(scope) !== byHand) return undefined;
  return once(scope, 'hands', (noted) => fittedTo(byHand, runsOf(noted, byHand.name), noted));
}

/** The newest trials of the workspace, on whatever mixer, that have something to compare. */
export function newestTrials(scope: Scope): readonly NewTrial[] {
  return once(scope, 'newest', (noted) => {
    const found: NewTrial[] = [];
    for (const run of runsOf(noted)) {
      if (found.length === mostTrials) break;
      const told = toldBy(run, noted);
      if (told !== undefined) found.push({ told, definition: run.definition });
    }
    return found;
  });
}

interface NewTrial {
  readonly told: Told;
  readonly definition: Definition;
}

interface Worked {
  readonly usual: Scope['usual'];
  readonly notes: Notes;
  readonly answer: unknown;
}

/** By the list of all formulas that are tried, which is another as soon as one of them is. */
const worked = new WeakMap<readonly Definition[], Map<Mixer | string, Worked>>();

/**
 * An answer from the trials of all formulas in sight, worked out once for all who ask for the same: each of ten thousand
 * formulas that keep trials asks for it. It stands while the formulas and all that was looked up for it are the same objects.
 */
function once<T>(scope: Scope, what: Mixer | string, work: (noted: Scope) => T): T {
  const tried = scope.names('tried');
  const answers = worked.get(tried) ?? new Map<Mixer | string, Worked>();
  worked.set(tried, answers);
  const before = answers.get(what);
  if (before?.usual === scope.usual && before !== undefined && stillFound(before.notes, scope, isSelf))
    return before.answer as T;
  const notes: Notes = new Map();
  const answer = work(noting(scope, notes));
  answers.set(what, { usual: scope.usual, notes, answer });
  return answer;
}

function fittedTo(mixer: Mixer, newest: readonly Run[], scope: Scope): MixerTrials | undefined {
  const counted = new Set<Definition>();
  const evidence: CalibrationTrial[] = [];
  let looked = 0;
  for (const run of newest) {
    if (evidence.length === mostTrials) break;
    looked++;
    const told = toldBy(run, scope);
    if (told === undefined || told.mixer !== keyOf(mixer)) continue;
    counted.add(run.definition);
    evidence.push(told.trial);
  }
  if (evidence.length === 0) return undefined;
  return {
    mixer,
    newest: firstOf([...counted]),
    formulas: scope.names('tried').filter((one) => counted.has(one)),
    trials: evidence.length,
    hasOlder: looked < newest.length,
    readings: evidence.reduce((sum, trial) => sum + trial.readings.length, 0),
    ...calibrationOf(mixer, evidence),
  };
}

function toldBy({ definition, index }: Run, scope: Scope): Told | undefined {
  const model = triedModel(definition, scope);
  return model === undefined ? undefined : evidenceOf(definition, model, scope.from(definition.uri))[index];
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
