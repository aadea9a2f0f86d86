import { type Known, known } from '../calc/known.ts';
import type { MixingInput } from '../calc/mixing/mixing-programme.ts';
import type { Mixer } from '../model/found-mixer.ts';
import { saidValue } from '../model/properties.ts';
import type { Definition, Scope } from '../model/scope.ts';
import type { Name } from '../syntax/tree.ts';
import type { Message } from '../words/message.ts';
import { analyseBlock } from './analyse.ts';
import { keyOf } from './trial-evidence.ts';
import { sharedMinutes } from './trial-programme.ts';
import { type TrialAnalysis, type TrialReading, trialsOf } from './trials.ts';

/** A trial of a dough of an experiment: what was measured, each beside what its own programme and day let expect. */
export interface MeasuredDough {
  readonly definition: Definition;
  readonly trial: TrialAnalysis;
  readonly readings: readonly TrialReading[];
  /** The programme that the trial ran on its day; unknown with its reason, as where it does not say how warm the water was. */
  readonly input: Known<MixingInput, Message>;
}

interface Dough {
  readonly definition?: Definition;
  readonly mixer?: Mixer;
  readonly programme: Known<{ readonly input: MixingInput; readonly programmeMinutes: number }, Message>;
}

/** Of the lines that have a formula, the one that a trial of it was run as; the first of those that are worked alike. */
function ranAs({ mix }: TrialAnalysis, all: readonly Dough[], { block }: Definition): Dough | undefined {
  if (!mix.known) return undefined;
  const { mixer, input, programmeMinutes } = mix.value;
  const likenessOf = ({ programme }: Dough): readonly [sharedMinutes: number, lessMinutes: number] =>
    programme.known
      ? [
          sharedMinutes(input.phases, programme.value.input.phases),
          -Math.abs(programmeMinutes - programme.value.programmeMinutes),
        ]
      : [0, -Number.MAX_VALUE];
  return all
    .filter(
      (one) =>
        one.definition?.block === block && one.mixer !== undefined && keyOf(one.mixer) === keyOf(mixer),
    )
    .map((one) => ({ one, likeness: likenessOf(one) }))
    .toSorted(
      ({ likeness: [shared, less] }, { likeness: [otherShared, otherLess] }) =>
        otherShared - shared || otherLess - less,
    )[0]?.one;
}

/**
 * The trials that name an experiment and were run on a dough of it: where it has the dough twice, on the mixer of its line, and where that
 * is the same twice, worked more like this line than like the others.
 */
export function measuredDoughs(
  dough: Dough,
  all: readonly Dough[],
  experiment: Name,
  scope: Scope,
): readonly MeasuredDough[] {
  const { definition, mixer } = dough;
  if (definition === undefined || definition.tried !== true) return [];
  const seen = scope.from(definition.uri);
  const analysis = analyseBlock(definition.block, seen);
  if (analysis === undefined) return [];
  const isShared = all.filter((one) => one.definition?.block === definition.block).length > 1;
  return trialsOf(analysis, seen).flatMap((trial): MeasuredDough[] => {
    if (saidValue(trial.model.said, 'experiment', 'name')?.name.folded !== experiment.folded) return [];
    if (isShared && (mixer === undefined || ranAs(trial, all, definition) !== dough)) return [];
    const predicted = trial.predicted();
    const input =
      trial.mix.known && predicted.known
        ? known(trial.mix.value.input, 'given')
        : predicted.known
          ? (trial.mix as Extract<typeof trial.mix, { known: false }>)
          : predicted;
    return [{ definition, trial, readings: trial.readings, input }];
  });
}
