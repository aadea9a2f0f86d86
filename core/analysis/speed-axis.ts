import { type Known, known, unknown } from '../calc/known.ts';
import { simulateMixing } from '../calc/mixing/mixing.ts';
import type { MixingInput } from '../calc/mixing/mixing-programme.ts';
import { temperWater } from '../calc/mixing/mixing-water.ts';
import { type Message, message } from '../words/message.ts';
import type { AxisBase, AxisRow, AxisRows } from './map-axis.ts';

/** The same programme with its last worked line at each speed that the mixer has. */
export function speedRows({ mix }: AxisBase): Known<AxisRows, Message> {
  const { phases, mixer } = mix.input;
  const last = phases.findLastIndex((phase) => !('portions' in phase) && phase.kind !== 'rest');
  const phase = phases[last];
  if (phase?.kind !== 'speed' || mixer.speeds.length < 2)
    return unknown(message('map.no-speeds', { name: mix.mixer.name }));
  const rows = [...mixer.speeds]
    .sort((one, other) => one.number - other.number)
    .map(({ number }): AxisRow => {
      if (number === phase.number) return { value: number, outcome: mix.outcome, isOwn: true };
      const changed = phases.map((one, index) => (index === last ? { ...phase, number } : one));
      // A friction factor stands for the programme as it is written.
      const mixing: MixingInput = { ...mix.input, phases: changed, frictionPhases: mix.input.phases };
      const water = mix.water.known ? temperWater({ mixing, ...mix.tempering }) : mix.water;
      const outcome = water.known ? water.value.outcome : simulateMixing(mixing);
      return { value: number, outcome, isOwn: false };
    });
  return known({ rows, notes: [] }, 'common practice');
}
