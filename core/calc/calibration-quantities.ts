import { type Known, known } from './known.ts';
import { findSpeed, type MixerData, warmingRate } from './mixer.ts';
import type { MixingInput } from './mixing-programme.ts';
import { settlingMinutes, workingSurroundings } from './warming.ts';

/** A reading: minutes from the start of the programme, rests included, °C, and the stage where one was seen. */
export interface MeasuredReading {
  readonly minutes: number;
  readonly celsius: number;
  readonly stage?: string;
}

/** One batch that was mixed and measured. */
export interface CalibrationTrial {
  readonly label: string;
  /** The programme at the trial’s conditions; its mixer is replaced by the one that is calibrated. */
  readonly mixing: MixingInput;
  readonly readings: readonly MeasuredReading[];
  /** Water marked as tempered has no known temperature: the fit then finds where the dough started from. */
  readonly waterKnown: boolean;
}

/** What of a mixer readings can tell. `grams` is the mass of dough that the time constant holds for. */
export type CalibratedQuantity =
  | { readonly kind: 'warms'; readonly speed: number }
  | { readonly kind: 'warms towards' }
  | { readonly kind: 'settles'; readonly grams: number };

/** A quantity that may be fitted, with where the fit starts, the size of a usual change and its bounds. */
export interface Free {
  readonly quantity: CalibratedQuantity;
  readonly before: Known<number>;
  readonly start: number;
  readonly scale: number;
  readonly least: number;
  readonly most: number;
  /** With a standard error above this the readings do not tell it. */
  readonly tellable: (value: number) => number;
}

/** The mixer with a warming for every speed: one of unknown rpm begins at a middling one. */
export function startable(mixer: MixerData, mixing: MixingInput): MixerData {
  const unknownSpeeds = usedSpeeds(mixing).filter((number) => !rateOf(mixer, number).known);
  return unknownSpeeds.reduce((now, number) => withWarming(now, number, middlingWarming), mixer);
}

const middlingWarming = 0.5;

function rateOf(mixer: MixerData, number: number): Known<number> {
  const speed = findSpeed(mixer, number);
  return speed.known ? warmingRate(mixer, speed.value) : speed;
}

function usedSpeeds({ phases }: MixingInput): number[] {
  const used = phases.flatMap((phase) => (phase.kind === 'speed' && phase.seconds > 0 ? [phase.number] : []));
  return [...new Set(used)].sort((one, other) => one - other);
}

/** How many times faster than usual a dough of its mass may follow its surroundings; our own choice. */
const believableFactor = 4;

/** All that the trials could tell of the mixer, whether or not their readings then do. */
export function quantitiesOf(mixer: MixerData, trials: readonly CalibrationTrial[]): Free[] {
  const grams = roundedGrams(trials.map(({ mixing }) => doughGrams(mixing)));
  const settles = settlingMinutes(mixer, grams);
  const usual = settlingMinutes({ kind: mixer.kind, speeds: [] }, grams);
  const time: Free = {
    quantity: { kind: 'settles', grams },
    before: known(settles, mixer.settles === undefined ? 'common practice' : 'given'),
    start: settles,
    scale: settles,
    // No dough gives its heat away several times as fast as others of its mass: such a fit stands in for a slip.
    least: usual / believableFactor,
    most: 600,
    tellable: (value) => 0.5 * value,
  };
  if (mixer.kind === 'hand') {
    const rooms = trials.map(({ mixing }) => mixing.roomCelsius);
    const towards = workingSurroundings(mixer, rooms.reduce((sum, room) => sum + room, 0) / rooms.length);
    const given = mixer.warmsTowardsCelsius !== undefined;
    return [
      {
        quantity: { kind: 'warms towards' },
        before: known(towards, given ? 'given' : 'common practice'),
        start: towards,
        scale: 5,
        least: 0,
        most: 60,
        tellable: () => 2,
      },
      time,
    ];
  }
  const speeds = [...new Set(trials.flatMap(({ mixing }) => usedSpeeds(mixing)))].sort((a, b) => a - b);
  const warms = speeds.map((speed): Free => {
    const before = rateOf(mixer, speed);
    const start = before.known && before.value > 0 ? before.value : middlingWarming;
    return {
      quantity: { kind: 'warms', speed },
      before,
      start,
      scale: Math.max(0.05, start),
      least: 0,
      most: 20,
      tellable: (value) => Math.max(0.05, 0.5 * value),
    };
  });
  return [...warms, time];
}

/** The mixer with these values of the quantities, in their order. */
export function withValues(mixer: MixerData, free: readonly Free[], values: readonly number[]): MixerData {
  let now = mixer;
  for (const [index, { quantity }] of free.entries()) now = withValue(now, quantity, values[index]!);
  return now;
}

function withValue(mixer: MixerData, quantity: CalibratedQuantity, value: number): MixerData {
  if (quantity.kind === 'warms') return withWarming(mixer, quantity.speed, value);
  if (quantity.kind === 'settles') return { ...mixer, settles: { minutes: value, grams: quantity.grams } };
  return { ...mixer, warmsTowardsCelsius: value };
}

function withWarming(mixer: MixerData, number: number, warmsCelsiusPerMinute: number): MixerData {
  const before = mixer.speeds.find((speed) => speed.number === number) ?? { number };
  const others = mixer.speeds.filter((speed) => speed.number !== number);
  const speeds = [...others, { ...before, warmsCelsiusPerMinute }].sort((a, b) => a.number - b.number);
  return { ...mixer, speeds };
}

function doughGrams({ phases }: MixingInput): number {
  return phases
    .flatMap((phase) => ('portions' in phase ? phase.portions : []))
    .reduce((sum, portion) => sum + Math.max(0, portion.grams), 0);
}

/** The middle of the masses, to two figures, as a baker would write it. */
function roundedGrams(masses: readonly number[]): number {
  const sorted = masses.filter((mass) => mass > 0).sort((one, other) => one - other);
  return Number((sorted[Math.floor(sorted.length / 2)] ?? 1000).toPrecision(2));
}
