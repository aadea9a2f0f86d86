import { type Known, known, unknown } from '../calc/known.ts';
import { type MixingStage, mixingStages } from '../calc/mixing/development.ts';
import { type MixingOutcome, simulateMixing } from '../calc/mixing/mixing.ts';
import type { MixingInput } from '../calc/mixing/mixing-programme.ts';
import { minutesOfPhases } from '../calc/mixing/phase-times.ts';
import { mixingUntil } from '../calc/mixing/stage-at.ts';
import { type Message, message } from '../words/message.ts';
import type { StageSpan } from './feel.ts';

/** What a dough is expected to be like at a minute of its programme. */
export interface ExpectedDough {
  readonly celsius: number;
  /** Either way, by what is not known of the mixer. */
  readonly bandCelsius: number;
  /** Unknown where the dough forms no gluten network, or nobody knows how fast it does. */
  readonly stage: Known<MixingStage, Message>;
  /** The stages that the dough may be in, by the bands of its minutes. */
  readonly stages?: StageSpan;
  /** The dough is expected to be broken down by then: such a reading shows what that is like. */
  readonly gone: boolean;
}

/** What a dough is expected to be like at a minute of a programme; unknown behind its end. Runs the programme as far as that. */
export function expectedAt(input: MixingInput, minutes: number): Known<ExpectedDough, Message> {
  const total = minutesOfPhases(input.phases);
  if (minutes > total + 1e-6) return unknown(message('experiment.past-the-run', { minutes: total }));
  const outcome = simulateMixing(mixingUntil(input, minutes));
  if (!outcome.endCelsius.known) return outcome.endCelsius;
  const { developedAfter, letDownAfter, breakdownAfter, stage } = outcome;
  const passed = (after: MixingOutcome['developedAfter'], which: 'low' | 'expected' | 'high'): boolean =>
    after.known && after.value[which] <= minutes + 1e-6;
  const at = (which: 'low' | 'high'): MixingStage | undefined => {
    if (!stage.known) return undefined;
    if (passed(breakdownAfter, which)) return 'breakdown';
    if (passed(letDownAfter, which)) return 'let-down';
    if (passed(developedAfter, which)) return 'developed';
    const place = mixingStages.indexOf(stage.value);
    return mixingStages[Math.min(place, mixingStages.indexOf('developing'))];
  };
  const [earliest, latest] = [at('high'), at('low')];
  return known(
    {
      celsius: outcome.endCelsius.value,
      bandCelsius: outcome.endCelsiusBand,
      stage,
      ...(earliest === undefined || latest === undefined ? {} : { stages: { earliest, latest } }),
      gone: stage.known && stage.value === 'breakdown',
    },
    'common practice',
  );
}
