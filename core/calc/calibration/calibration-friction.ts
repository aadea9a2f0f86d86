import { figureAt } from '../../text/element.ts';
import { thermometerCelsius } from '../heat/thermometer.ts';
import { known } from '../known.ts';
import type { MixerData } from '../mixing/mixer.ts';
import type { CalibratedParameter, CalibrationTrial } from './calibration-quantities.ts';

/** The error of one friction factor, °C: three times that of the dough, and once that of room, flour and water each. */
const errorOfOne = thermometerCelsius * Math.sqrt(3 ** 2 + 3);

/**
 * The friction factor of a mixer that states one, as its trials show it: the middle of theirs, which one bad trial does not
 * move. Undefined where it states none, or no trial shows one.
 */
export function frictionOf(
  mixer: MixerData,
  trials: readonly CalibrationTrial[],
): CalibratedParameter | undefined {
  const { frictionCelsius: stated } = mixer;
  const shown = trials
    .flatMap(({ frictionCelsius }) => frictionCelsius ?? [])
    .sort((one, other) => one - other);
  if (stated === undefined || shown.length === 0) return undefined;
  const half = shown.length / 2;
  const middle = (figureAt(shown, Math.ceil(half) - 1) + figureAt(shown, Math.floor(half))) / 2;
  const squares = shown.reduce((sum, one) => sum + (one - middle) ** 2, 0);
  const spread = shown.length > 1 ? Math.sqrt(squares / (shown.length - 1)) : 0;
  return {
    quantity: { kind: 'friction' },
    before: known(stated, 'given'),
    value: known(middle, 'measured'),
    standardError: Math.max(errorOfOne, spread) / Math.sqrt(shown.length),
  };
}
