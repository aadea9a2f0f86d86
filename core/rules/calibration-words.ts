import type { MixerTrials } from '../analysis/mixer-trials.ts';
import type { Residual } from '../calc/calibration.ts';
import type { CalibratedParameter, CalibratedQuantity } from '../calc/calibration-quantities.ts';
import { degrees, degreesApart, degreesPerMinute, figure, mass, minutes } from '../text/figures.ts';

/** What a calibration stands on: `24 readings of 3 formulas, of its newest 40 trials`. */
export function readingsWords({ readings, formulas, trials, hasOlder }: MixerTrials): string {
  const of = formulas.length === 1 ? 'one formula' : `${formulas.length} formulas`;
  return `${readings} readings of ${of}${hasOlder ? `, of its newest ${trials} trials` : ''}`;
}

/** What is calibrated, in words: `how speed 2 warms`. */
export function quantityWords(quantity: CalibratedQuantity): string {
  switch (quantity.kind) {
    case 'warms':
      return `how speed ${quantity.speed} warms`;
    case 'warms towards':
      return 'what hands warm the dough towards';
    case 'settles':
      return 'how slowly the dough follows the room';
    case 'friction':
      return 'the friction factor';
  }
}

/** A calibrated figure as the mixer’s section says it, `speed 1 warms 0.24 °C/min`; undefined where it cannot be told. */
export function writtenValue(one: CalibratedParameter): string | undefined {
  const { quantity, value } = one;
  if (!value.known) return undefined;
  switch (quantity.kind) {
    case 'warms':
      return `speed ${quantity.speed} warms ${calibratedFigure(one, value.value)}`;
    case 'warms towards':
      return `warms towards ${calibratedFigure(one, value.value)}`;
    case 'settles':
      return `settles ${calibratedFigure(one, value.value)} at ${mass(quantity.grams)}`;
    case 'friction':
      return `friction ${calibratedFigure(one, value.value)}`;
  }
}

/** The same for the text of a file, with its standard error, rounded up: no band is to be narrower than that. */
export function writtenWithError(one: CalibratedParameter): string | undefined {
  const written = writtenValue(one);
  const { quantity, standardError } = one;
  if (written === undefined || standardError === undefined) return written;
  const up = (places: number): number => Math.ceil(standardError * 10 ** places - 1e-9) / 10 ** places;
  if (quantity.kind === 'warms') return `${written} within ${degreesPerMinute(up(2), 2)}`;
  return quantity.kind === 'warms towards' ? `${written} within ${degreesApart(up(1))}` : written;
}

/** A reading that hardly counts, told so that it is found: `20.5 °C at 3 min (Quay Tin, 2026-03-03)`. */
export function residualWords({ label, minutes: at, measuredCelsius }: Residual): string {
  return `${degrees(measuredCelsius)} at ${minutes(at)} (${label})`;
}

/** A figure of a calibration in its unit; `apart` for one that tells how far others lie apart. */
export function calibratedFigure({ quantity }: CalibratedParameter, value: number, apart = false): string {
  switch (quantity.kind) {
    case 'warms':
      return degreesPerMinute(value, 2);
    case 'warms towards':
      return apart ? degreesApart(value) : degrees(value);
    case 'settles':
      return `${figure(value, value < 10 ? 1 : 0)} min`;
    case 'friction':
      return degreesApart(value);
  }
}
