import type { Calibration } from '../../calc/calibration/calibration.ts';
import { elementAt } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';

/** Readings missed by more than this even when calibrated contradict one another, °C; common practice, no source. */
const contradictoryCelsius = 1;

/** Readings that stand apart from the others, for whoever wants to look them over. */
export function apartOf({ residuals }: Calibration): Message | undefined {
  const apart = residuals.filter((one) => one.isSetAside);
  const [first] = apart;
  if (first === undefined) return undefined;
  const { measuredCelsius: celsius, minutes, label: name } = first;
  return apart.length === 1
    ? message('mixer-can-be-calibrated.apart', { celsius, minutes, name })
    : message('mixer-can-be-calibrated.several-apart', { count: apart.length, celsius, minutes, name });
}

/** What makes a fit doubtful, with what to do. */
export function oddOf(warming: Calibration): Message | undefined {
  return (
    coolerWhenFaster(warming) ??
    (isContradictory(warming) ? message('mixer-can-be-calibrated.contradict') : undefined)
  );
}

/** No mixer meets the readings, or more of them stand apart than slips explain. */
export function isContradictory({ residuals, spreadAfter }: Calibration): boolean {
  const apart = residuals.filter((one) => one.isSetAside).length;
  return spreadAfter > contradictoryCelsius || apart > residuals.length / 3;
}

/** What to say where the fit has a faster speed warm less than a slower one, which no mixer does. */
function coolerWhenFaster({ parameters }: Calibration): Message | undefined {
  const rates = parameters.flatMap(({ quantity, value }) =>
    quantity.kind === 'warms' && value.known ? [{ speed: quantity.speed, rate: value.value }] : [],
  );
  rates.sort((one, other) => one.speed - other.speed);
  const at = rates.findIndex(({ rate }, index) => index > 0 && rate < elementAt(rates, index - 1).rate);
  return at < 0
    ? undefined
    : message('mixer-can-be-calibrated.cooler', {
        number: elementAt(rates, at).speed,
        otherNumber: elementAt(rates, at - 1).speed,
      });
}
