import { meanCelsius, mixedCelsius } from '../calc/heat/heat-content.ts';
import { type CapacityShares, frictionFactor, frictionFromRise } from '../calc/heat/heat-friction.ts';
import { type Known, known, unknown } from '../calc/known.ts';
import type { MixingInput } from '../calc/mixing/mixing-programme.ts';
import { type Message, message } from '../words/message.ts';

/**
 * The friction factor of three thermometers that a trial shows, °C. With a preferment or ice in the bowl the factor is that
 * of a straight dough of the same flour and water which mixing and wetting warm as much: a fourth temperature would make it another
 * number, and the cold of ice is in none of the three.
 */
export function frictionOfTrial(input: MixingInput, endCelsius: number | undefined): Known<number, Message> {
  if (endCelsius === undefined) return unknown(message('trial.no-end'));
  const portions = input.phases.flatMap((phase) => ('portions' in phase ? phase.portions : []));
  if (portions.some((portion) => portion.tempered === true)) return unknown(message('trial.no-water'));
  const flourCelsius = meanCelsius(portions, 'flour');
  const waterCelsius = meanCelsius(portions, 'water');
  if (flourCelsius === undefined || waterCelsius === undefined) return unknown(message('trial.not-apart'));
  const { roomCelsius } = input;
  const shares: CapacityShares | undefined = input.friction?.shares;
  const isStraight = !portions.some(
    ({ kind, frozen, grams }) => (kind === 'preferment' || frozen === true) && grams > 0,
  );
  if (isStraight || shares === undefined)
    return known(frictionFactor(endCelsius, [roomCelsius, flourCelsius, waterCelsius]), 'measured');
  const rise = endCelsius - mixedCelsius(portions);
  return Number.isFinite(rise)
    ? known(
        frictionFromRise(rise, { doughCelsius: endCelsius, roomCelsius, flourCelsius, shares }),
        'measured',
      )
    : unknown(message('trial.no-temperatures'));
}
