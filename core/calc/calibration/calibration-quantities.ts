import { elementAt, figureAt, firstOf } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import { settlingMinutes, workingSurroundings } from '../heat/warming.ts';
import { type Known, known } from '../known.ts';
import { findSpeed, type MixerData, warmingRate } from '../mixing/mixer.ts';
import type { MixingInput } from '../mixing/mixing-programme.ts';
import { phaseTimes } from '../mixing/phase-times.ts';

/** A reading: minutes from the start of the programme, rests included, °C where it was taken, and the stage where one was seen. */
export interface MeasuredReading {
  readonly minutes: number;
  readonly celsius?: number;
  readonly stage?: string;
  /** The stages between which the dough was, where it was not one alone that was seen. */
  readonly stages?: { readonly earliest: string; readonly latest: string };
}

/** Whether a thermometer was read, beside what was seen or alone. */
export function isTaken<T extends { readonly celsius?: number }>(
  reading: T,
): reading is T & { readonly celsius: number } {
  return reading.celsius !== undefined;
}

/** One batch that was mixed and measured. */
export interface CalibrationTrial {
  readonly label: string;
  /** The programme at the trial’s conditions; its mixer is replaced by the one that is calibrated. */
  readonly mixing: MixingInput;
  readonly readings: readonly MeasuredReading[];
  /** Water marked as tempered has no known temperature: the fit then finds where the dough started from. */
  readonly waterKnown: boolean;
  /** The friction factor of three thermometers that it shows, °C. */
  readonly frictionCelsius?: number;
  /** Names the flours of its dough, so that trials of one flour are known from those of another. */
  readonly flours?: string;
}

/** What of a mixer readings can tell. `grams` is the mass of dough that the time constant holds for. */
export type CalibratedQuantity =
  | { readonly kind: 'warms'; readonly speed: number }
  | { readonly kind: 'warms towards' }
  | { readonly kind: 'settles'; readonly grams: number }
  | { readonly kind: 'friction' };

/** Speeds whose warmings readings tell together only: all of them so many times what they were. */
export interface SharedWarming {
  readonly kind: 'warm alike';
  readonly rates: readonly { readonly speed: number; readonly celsiusPerMinute: number }[];
}

/** A quantity that may be fitted, with where the fit starts, the size of a usual change and its bounds. */
export interface Free {
  readonly quantity: CalibratedQuantity | SharedWarming;
  readonly before: Known<number, Message>;
  readonly start: number;
  readonly scale: number;
  readonly least: number;
  readonly most: number;
  /** With a standard error above this the readings do not tell it. */
  readonly tellable: (value: number) => number;
  /** Why not, and what would tell it. */
  readonly lacks: Message;
  /** A speed with a warming of its kind and readings after it: they may tell it together with others. */
  readonly mayShare?: boolean;
}

/** A quantity that a mixer’s section has a word for. */
export type NamedFree = Free & { readonly quantity: CalibratedQuantity };

/** These warmings as one quantity, a factor on them all. */
export function sharedWarming(several: readonly Free[]): Free {
  const rates = several.flatMap(({ quantity, start }) =>
    quantity.kind === 'warms' ? [{ speed: quantity.speed, celsiusPerMinute: start }] : [],
  );
  return {
    quantity: { kind: 'warm alike', rates },
    before: known(1, 'common practice'),
    start: 1,
    scale: 1,
    least: 0,
    most: 20,
    tellable: (value) => Math.max(0.05, 0.5 * value),
    lacks: firstOf(several).lacks,
  };
}

/** The mixer with a warming for every speed: one of unknown rpm begins at a middling one. */
export function startable(mixer: MixerData, mixing: MixingInput): MixerData {
  const unknownSpeeds = usedSpeeds(mixing).filter((number) => !rateOf(mixer, number).known);
  return unknownSpeeds.reduce((now, number) => withWarming(now, number, middlingWarming), mixer);
}

const middlingWarming = 0.5;

function rateOf(mixer: MixerData, number: number): Known<number, Message> {
  const speed = findSpeed(mixer, number);
  return speed.known ? warmingRate(mixer, speed.value) : speed;
}

function usedSpeeds({ phases }: MixingInput): number[] {
  const used = phases.flatMap((phase) => (phase.kind === 'speed' && phase.seconds > 0 ? [phase.number] : []));
  return [...new Set(used)].sort((one, other) => one - other);
}

/** How many times faster than usual a dough of its mass may follow its surroundings; our own choice. */
const believableFactor = 2.5;

/** The mass of dough that a time constant is written for, grams: others follow by the cube root. */
const baseGrams = 1000;

/** All that the trials could tell of the mixer, whether or not their readings then do. */
export function quantitiesOf(mixer: MixerData, trials: readonly CalibrationTrial[]): NamedFree[] {
  const speeds = [...new Set(trials.flatMap(({ mixing }) => usedSpeeds(mixing)))].sort((a, b) => a - b);
  const time = settling(mixer);
  if (mixer.kind === 'hand') return [drift(mixer, trials), time];
  // A machine that says what the dough drifts towards warms it so at every speed that has no warming of its own.
  const drifts = mixer.warmsTowardsCelsius !== undefined;
  const isMeasured = (number: number): boolean =>
    mixer.speeds.some((one) => one.number === number && one.warmsCelsiusPerMinute !== undefined);
  const warming = drifts ? speeds.filter(isMeasured) : speeds;
  const warms = warming.map((speed) => warmingOf(mixer, trials, speed));
  return warming.length < speeds.length ? [...warms, drift(mixer, trials), time] : [...warms, time];
}

function settling(mixer: MixerData): NamedFree {
  const settles = settlingMinutes(mixer, baseGrams);
  return {
    quantity: { kind: 'settles', grams: baseGrams },
    before: known(settles, mixer.settles === undefined ? 'common practice' : 'given'),
    start: settles,
    scale: settles,
    // No dough gives its heat away several times as fast as others of its mass: such a fit stands in for a slip.
    least: settlingMinutes({ kind: mixer.kind, speeds: [] }, baseGrams) / believableFactor,
    most: 600,
    tellable: (value) => 0.5 * value,
    lacks: message('calibration.lacks-settling'),
  };
}

function drift(mixer: MixerData, trials: readonly CalibrationTrial[]): NamedFree {
  const rooms = trials.map(({ mixing }) => mixing.roomCelsius);
  const towards = workingSurroundings(mixer, rooms.reduce((sum, room) => sum + room, 0) / rooms.length);
  const given = mixer.warmsTowardsCelsius !== undefined;
  return {
    quantity: { kind: 'warms towards' },
    before: known(towards, given ? 'given' : 'common practice'),
    start: towards,
    scale: 5,
    least: 0,
    most: 60,
    tellable: () => 2,
    lacks: message('calibration.lacks-drift'),
  };
}

function warmingOf(mixer: MixerData, trials: readonly CalibrationTrial[], speed: number): NamedFree {
  const before = rateOf(mixer, speed);
  const start = before.known && before.value > 0 ? before.value : middlingWarming;
  const isRead = isReadAfter(trials, speed);
  return {
    quantity: { kind: 'warms', speed },
    before,
    start,
    scale: Math.max(0.05, start),
    least: 0,
    most: 20,
    tellable: (value) => Math.max(0.05, 0.5 * value),
    mayShare: before.known && isRead,
    lacks: message(isRead ? 'calibration.lacks-time' : 'calibration.lacks-reading', { number: speed }),
  };
}

/** Whether some reading comes after dough was worked at a speed. */
function isReadAfter(trials: readonly CalibrationTrial[], speed: number): boolean {
  return trials.some(({ mixing, readings }) => {
    const last = Math.max(...readings.map(({ minutes }) => minutes));
    const times = phaseTimes(mixing.phases);
    return mixing.phases.some(
      (phase, index) =>
        phase.kind === 'speed' &&
        phase.number === speed &&
        phase.seconds > 0 &&
        last > elementAt(times, index).startMinutes + 1e-6,
    );
  });
}

/** The mixer with these values of the quantities, in their order. */
export function withValues(mixer: MixerData, free: readonly Free[], values: readonly number[]): MixerData {
  let now = mixer;
  for (const [index, { quantity }] of free.entries()) now = withValue(now, quantity, figureAt(values, index));
  return now;
}

function withValue(mixer: MixerData, quantity: Free['quantity'], value: number): MixerData {
  if (quantity.kind === 'warms') return withWarming(mixer, quantity.speed, value);
  if (quantity.kind === 'warm alike')
    return quantity.rates.reduce(
      (now, { speed, celsiusPerMinute }) => withWarming(now, speed, value * celsiusPerMinute),
      mixer,
    );
  if (quantity.kind === 'friction') return { ...mixer, frictionCelsius: value };
  if (quantity.kind === 'settles') return { ...mixer, settles: { minutes: value, grams: quantity.grams } };
  return { ...mixer, warmsTowardsCelsius: value };
}

/** The mixer with the standard error of what was fitted, so that its bands are never narrower. */
export function withError(mixer: MixerData, quantity: CalibratedQuantity, error: number): MixerData {
  if (quantity.kind === 'warms towards') return { ...mixer, warmsTowardsWithinCelsius: error };
  if (quantity.kind !== 'warms') return mixer;
  const speeds = mixer.speeds.map((one) =>
    one.number === quantity.speed ? { ...one, warmsWithinPerMinute: error } : one,
  );
  return { ...mixer, speeds };
}

function withWarming(mixer: MixerData, number: number, warmsCelsiusPerMinute: number): MixerData {
  const before = mixer.speeds.find((speed) => speed.number === number) ?? { number };
  const others = mixer.speeds.filter((speed) => speed.number !== number);
  const speeds = [...others, { ...before, warmsCelsiusPerMinute }].sort((a, b) => a.number - b.number);
  return { ...mixer, speeds };
}

/** One quantity of a mixer: °C a minute, °C, or minutes. */
export interface CalibratedParameter {
  readonly quantity: CalibratedQuantity;
  /** As the mixer has it now, measured or by its kind. */
  readonly before: Known<number, Message>;
  /** As the readings have it, or why they cannot tell. */
  readonly value: Known<number, Message>;
  /** One standard error of `value`, in its unit; absent where it cannot be told. */
  readonly standardError?: number;
  /** The readings tell it only together with other speeds, all of them by one factor. */
  readonly shared?: true;
}
