import type { MixerTrials } from '../../analysis/mixer-trials.ts';
import type {
  CalibratedParameter,
  CalibratedQuantity,
} from '../../calc/calibration/calibration-quantities.ts';
import { trimmed } from '../../text/figures.ts';
import { type Message, message } from '../../words/message.ts';

/** What a calibration stands on: `24 readings of 3 formulas, of its newest 40 trials`. */
export function readingsMessage({ readings, formulas, trials, hasOlder }: MixerTrials): Message {
  const facts = { count: readings, otherCount: formulas.length };
  return hasOlder
    ? message('calibration.readings-newest', { ...facts, trialCount: trials })
    : message('calibration.readings', facts);
}

/** What is calibrated: `how speed 2 warms`. */
export function quantityMessage(quantity: CalibratedQuantity): Message {
  switch (quantity.kind) {
    case 'warms':
      return message('calibration.warms', { number: quantity.speed });
    case 'warms towards':
      return message('calibration.warms-towards');
    case 'settles':
      return message('calibration.settles');
    case 'friction':
      return message('calibration.friction');
  }
}

/** A calibrated figure as the notation has it in the mixer’s section, behind the speed where it is one’s. */
interface Written {
  /** Absent where the figure is not of one speed. */
  readonly speed?: number;
  /** `warms 0.24 °C/min`, `settles 34 min at 1 kg`. */
  readonly clause: string;
}

/** What the mixer’s section states of a calibrated figure; undefined where the readings do not show it. */
function writtenOf({ quantity, value }: CalibratedParameter): Written | undefined {
  if (!value.known) return undefined;
  const figure = value.value;
  switch (quantity.kind) {
    case 'warms':
      return { speed: quantity.speed, clause: `warms ${trimmed(figure, 2)} °C/min` };
    case 'warms towards':
      return { clause: `warms towards ${trimmed(figure, 1)} °C` };
    case 'settles': {
      const minutes = trimmed(figure, figure < 10 ? 1 : 0);
      return { clause: `settles ${minutes} min at ${trimmed(quantity.grams / 1000, 3)} kg` };
    }
    case 'friction':
      return { clause: `friction ${trimmed(figure, 1)} °C` };
  }
}

/** A calibrated figure as its line says it, `speed 1 warms 0.24 °C/min`; undefined where the readings do not show it. */
export function writtenValue(one: CalibratedParameter): string | undefined {
  const written = writtenOf(one);
  if (written?.speed === undefined) return written?.clause;
  return `speed ${written.speed} ${written.clause}`;
}

/** The clause of a figure with its standard error, rounded up: no band is to be narrower than that. */
export function clauseWithError(one: CalibratedParameter): string | undefined {
  const clause = writtenOf(one)?.clause;
  const { quantity, standardError } = one;
  if (clause === undefined || standardError === undefined) return clause;
  const up = (places: number): string =>
    trimmed(Math.ceil(standardError * 10 ** places - 1e-9) / 10 ** places, places);
  if (quantity.kind === 'warms') return `${clause} within ${up(2)} °C/min`;
  return quantity.kind === 'warms towards' ? `${clause} within ${up(1)} °C` : clause;
}
