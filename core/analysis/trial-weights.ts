import { type Known, known, unknown } from '../calc/known.ts';
import type { MixingPhase, MixPortion } from '../calc/mixing/mixing-programme.ts';
import type { TrialModel } from '../model/formula-model.ts';
import { fractionOf, saidValue } from '../model/properties.ts';
import { type Message, message } from '../words/message.ts';
import type { Analysis } from './analysis.ts';
import type { ReadyProgramme } from './mix-analysis.ts';

/** What a dough weighed less than what went in, read as water that is gone. */
export interface WeightLoss {
  readonly pouredGrams: number;
  readonly doughGrams: number;
  readonly lostGrams: number;
  readonly hydrationBefore: number;
  /** Were all of it water; what stuck to hands, bowl and table takes no hydration with it. */
  readonly hydrationIfWater: number;
  /** What the formula itself counts as dough left in bowl, on table and hands, of what is gone; absent where it counts none. */
  readonly stuckGrams?: number;
  /** With that left out, the rest read as water. */
  readonly hydrationAfter: number;
}

/** Of a batch of the formula’s size; a trial that weighs less or more than these was a batch of another size. */
const sameBatch = { least: 0.8, most: 1.25 };

/** Whether a trial that weighs so many times what the formula does was a batch of its size. */
export function isSameBatch(ratio: number): boolean {
  return ratio >= sameBatch.least && ratio <= sameBatch.most;
}

/** All that goes into the bowl. */
export function portionsOf(phases: readonly MixingPhase[]): MixPortion[] {
  return phases.flatMap((phase) => ('portions' in phase ? phase.portions : []));
}

/** What went into the bowl of a trial. */
export interface Poured {
  readonly grams: number;
  readonly flourGrams: number;
  /** The water lines of the programme against those of the formula. */
  readonly waterFactor: number;
  readonly waterGrams: number;
  /** The batch against that of the formula. */
  readonly batchFactor: number;
  /** The formula, or the experiment, gives the size of the batch. */
  readonly sized: boolean;
}

/**
 * Weighs what a programme pours, with the water that the trial says it took.
 *
 * @param batchGrams of dough, where an experiment says how much of it is mixed
 */
export function pouredOf(
  { solved }: Analysis,
  trial: TrialModel,
  { input }: ReadyProgramme,
  batchGrams: number | undefined,
): Known<Poured, Message> {
  const portions = portionsOf(input.phases);
  const doughGrams = solved?.doughGrams ?? 0;
  const isOfBatch = batchGrams !== undefined && doughGrams > 0;
  const batchFactor = isOfBatch ? batchGrams / doughGrams : 1;
  const sum = (of: (portion: MixPortion) => number): number =>
    batchFactor * portions.reduce((all, one) => all + of(one), 0);
  const waterGrams = sum((one) => (one.kind === 'water' ? one.grams : 0));
  const given = saidMass(trial, 'water');
  const waterFactor = given === undefined || !(waterGrams > 0) ? 1 : given / waterGrams;
  return known(
    {
      grams: sum((one) => one.grams) + (waterFactor - 1) * waterGrams,
      flourGrams: sum((one) => one.flourGrams),
      waterFactor,
      waterGrams,
      batchFactor,
      sized: isOfBatch || solved?.assumedScale === false,
    },
    'given',
  );
}

/** What the dough of a trial weighed less than what went in; unknown where nothing can be told from it. */
export function lossOf(
  analysis: Analysis,
  trial: TrialModel,
  poured: Known<Poured, Message>,
): Known<WeightLoss, Message> {
  const doughGrams = saidValue(trial.said, 'dough', 'mass')?.grams;
  if (doughGrams === undefined) return unknown(message('trial.no-dough-weight'));
  if (!poured.known) return poured;
  const { grams, flourGrams, sized, waterFactor } = poured.value;
  const hydration = analysis.solved?.hydration;
  if (!sized) return unknown(message('trial.no-size'));
  if (hydration === undefined || !(flourGrams > 0)) return unknown(message('trial.no-hydration'));
  if (!isSameBatch(doughGrams / grams)) return unknown(message('trial.other-size'));
  const lostGrams = grams - doughGrams;
  // The scale steps: less than a thousandth is no loss.
  if (lostGrams < grams * 1e-3) return unknown(message('trial.no-loss'));
  const counted = (fractionOf(analysis.resolved.model.said, 'loss') ?? 0) * grams;
  const stuckGrams = Math.min(counted, lostGrams);
  const hydrationBefore = hydration + ((waterFactor - 1) * poured.value.waterGrams) / flourGrams;
  return known(
    {
      pouredGrams: grams,
      doughGrams,
      lostGrams,
      hydrationBefore,
      hydrationIfWater: hydrationBefore - lostGrams / flourGrams,
      hydrationAfter: hydrationBefore - (lostGrams - stuckGrams) / flourGrams,
      ...(counted > 0 ? { stuckGrams } : {}),
    },
    'measured',
  );
}

function saidMass(trial: TrialModel, word: string): number | undefined {
  for (const { statement } of trial.said.get(word) ?? [])
    if (statement.value?.form === 'mass') return statement.value.grams;
  return undefined;
}
