import type { CalibrationTrial } from '../calc/calibration/calibration-quantities.ts';
import type { MixerKind } from '../calc/mixing/mixer.ts';
import type { FormulaModel } from '../model/formula-model.ts';
import type { Mixer } from '../model/found-mixer.ts';
import { isSameText, type Notes, noting, stillFound } from '../model/noted-scope.ts';
import type { Definition, Scope, UsualConditions } from '../model/scope.ts';
import type { Block } from '../syntax/tree.ts';
import { analyse } from './analyse.ts';
import type { Analysis } from './analysis.ts';
import { isRunAsUsual } from './trial-programme.ts';
import { trialEvidence, trialsOf } from './trials.ts';

/** What tells mixers apart: the block that defines one, else its kind; all that is mixed by hand without a section is one pair of hands. */
export type MixerKey = Block | MixerKind;

/** What a mixer is known by while trials are gathered: the block that defines it, else its kind. */
export function keyOf({ definition, data }: Mixer): MixerKey {
  return definition?.block ?? data.kind;
}

/** What a trial says, and of which mixer. */
export interface Told {
  readonly mixer: MixerKey;
  readonly trial: CalibrationTrial;
}

/** By the trials of a formula, in their order; undefined for one that says nothing of its mixer. */
type Evidence = readonly (Told | undefined)[];

interface Remembered {
  readonly model: FormulaModel;
  readonly usual: UsualConditions | undefined;
  readonly notes: Notes;
  readonly evidence: Evidence;
}

const remembered = new WeakMap<Block, Remembered>();

/**
 * What each trial of one formula says of its mixer. Remembered while the formula and all it looked up stay the same, so
 * that a change of one formula works out that one alone.
 */
export function evidenceOf({ uri, block, name }: Definition, model: FormulaModel, scope: Scope): Evidence {
  const before = remembered.get(block);
  // A variant is another as soon as its base is.
  if (before?.model === model && before.usual === scope.usual && stillFound(before.notes, scope, isSameText))
    return before.evidence;
  const notes: Notes = new Map();
  const listening = noting(scope, notes);
  const analysis = analyse(model, listening);
  const flours = flourNames(analysis);
  const evidence = trialsOf(analysis, listening).map((trial): Told | undefined => {
    if (!trial.mix.known) return undefined;
    const told = trialEvidence(trial, `${name.text}, ${trial.model.header.date ?? uri}`);
    if (told === undefined) return undefined;
    // A factor holds for the minutes that it was taken over: of an hour’s trial it is none of the mixer’s.
    const isUsual = isRunAsUsual(trial.mix.value.input.phases, analysis.doughMix);
    const friction = isUsual ? trial.friction() : undefined;
    return {
      mixer: keyOf(trial.mix.value.mixer),
      trial: { ...told, flours, ...(friction?.known ? { frictionCelsius: friction.value } : {}) },
    };
  });
  remembered.set(block, { model, usual: scope.usual, notes, evidence });
  return evidence;
}

/** The flours of a dough by name: what its trials show of development may be theirs. */
function flourNames({ solved }: Analysis): string {
  const names = solved?.overall.filter((line) => line.isFlour).map((line) => line.key) ?? [];
  return [...new Set(names)].sort().join(', ');
}
