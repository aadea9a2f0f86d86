import { elementAt } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import { type Known, known, unknown } from '../known.ts';

/** The kinds of mixing the model knows. */
export type MixerKind = 'hand' | 'spiral' | 'planetary' | 'fork' | 'twin arm' | 'horizontal';

/** One speed of a mixer. */
export interface MixerSpeed {
  readonly number: number;
  readonly rpm?: number;
  /** Measured warming at this speed before losses to the room, °C a minute. */
  readonly warmsCelsiusPerMinute?: number;
  /** The standard error of that, °C a minute. */
  readonly warmsWithinPerMinute?: number;
  /** Slow minutes of development that one minute at this speed gives, and the standard error of that. */
  readonly developsTimes?: number;
  readonly developsWithinTimes?: number;
}

/** A mixer as plain data; what is absent is taken from the kind. */
export interface MixerData {
  readonly kind: MixerKind;
  readonly speeds: readonly MixerSpeed[];
  /** Temperature that the dough drifts towards while it is worked, °C, in place of warming by power. */
  readonly warmsTowardsCelsius?: number;
  /** The standard error of that, °C. */
  readonly warmsTowardsWithinCelsius?: number;
  /** How slowly the dough follows its surroundings (time constant τ), as measured for this mass of dough. */
  readonly settles?: { readonly minutes: number; readonly grams: number };
  /** Measured friction factor of the three-temperature rule, °C. */
  readonly frictionCelsius?: number;
  /** The part of the mixing heat that a cooled jacket takes, 0 to 1; absent where there is none. */
  readonly jacketFraction?: number;
}

/** The speed of this number, or the reason why it is not known. Hand mixing has one speed, whatever its number. */
export function findSpeed(mixer: MixerData, number: number): Known<MixerSpeed, Message> {
  const speed = mixer.speeds.find((one) => one.number === number);
  if (speed !== undefined) return known(speed, 'given');
  if (mixer.kind === 'hand') return known({ number: 1 }, 'common practice');
  return unknown(message('mixing.no-rpm', { number }));
}

/**
 * Warming H of dough at a speed, °C a minute before losses: as measured, else by kind as a continuous function of the tool’s
 * rpm, less what a jacket takes (common practice, our own fit; the last speed of horizontal mixers by the power of published
 * short processes, 110–170 W/kg). By hand there is none.
 */
export function warmingRate(mixer: MixerData, speed: MixerSpeed): Known<number, Message> {
  const measured = speed.warmsCelsiusPerMinute;
  if (measured !== undefined && Math.abs(measured) < 1000) return known(measured, 'given');
  if (mixer.kind === 'hand') return known(0, 'common practice');
  const rate = byRpm(speed, warmingByRpm[mixer.kind]);
  return rate.known ? { ...rate, value: rate.value * (1 - jacketShare(mixer)) } : rate;
}

/**
 * Slow minutes of development that one minute at a speed gives: as calibrated, else by kind as a continuous function of the
 * tool’s rpm (common practice). A spiral hook gives rpm/100, so that about 1,000 turns make an improved mix.
 */
export function developmentRate(mixer: MixerData, speed: MixerSpeed): Known<number, Message> {
  const given = speed.developsTimes;
  if (given !== undefined && given >= 0 && given < 1000) return known(given, 'given');
  if (mixer.kind === 'hand') return known(1, 'common practice');
  return byRpm(speed, developmentByRpm[mixer.kind]);
}

/** No rate is taken to be off by more than this part of it: beyond it the low end would be no time at all. Our own choice. */
const mostWithin = 0.5;

/** The standard error of a calibrated rate of development as a part of it; nothing where none is told. */
export function rateWithin({ developsTimes, developsWithinTimes }: MixerSpeed): {
  readonly rateWithin?: number;
} {
  if (developsWithinTimes === undefined || !(developsTimes !== undefined && developsTimes > 0)) return {};
  return { rateWithin: Math.min(mostWithin, developsWithinTimes / developsTimes) };
}

/** Hands are too gentle to tear a wheat dough: they wear it at this part of what a machine would. Common practice, our choice. */
const handWear = 0.25;

/**
 * How fast a minute of work wears a dough that is developed, before the dough’s own temperature counts: the rate of
 * development to the power 1.55, so that a fast tool wears faster than it develops; by hand a quarter of it. That
 * intensity counts beside work is published (Kilborn & Tipples 1972); the size is common practice, our own fit.
 */
export function wearRate(mixer: MixerData, slowMinutesPerMinute: number): number {
  return Math.max(0, slowMinutesPerMinute) ** 1.55 * (mixer.kind === 'hand' ? handWear : 1);
}

/** The part of the mixing heat that a jacket takes away, 0 to 1; none where the mixer has none. */
function jacketShare(mixer: MixerData): number {
  const share = mixer.jacketFraction ?? 0;
  return Number.isFinite(share) ? Math.min(1, Math.max(0, share)) : 0;
}

type MachineKind = Exclude<MixerKind, 'hand'>;

/** A rate at some rpm; between two of them it follows a power of the rpm, and goes on so beyond the outer ones. */
type ByRpm = readonly { readonly rpm: number; readonly rate: number }[];

/** A rate that is a power of the rpm throughout. */
function power(rate: number, rpm: number, exponent: number): ByRpm {
  return [
    { rpm, rate },
    { rpm: 2 * rpm, rate: rate * 2 ** exponent },
  ];
}

const warmingByRpm: Readonly<Record<MachineKind, ByRpm>> = {
  planetary: power(0.62, 60, 0.78),
  spiral: power(0.25, 100, 1.26),
  fork: [
    { rpm: 35, rate: 0.15 },
    { rpm: 65, rate: 0.3 },
  ],
  'twin arm': [
    { rpm: 40, rate: 0.15 },
    { rpm: 60, rate: 0.3 },
  ],
  horizontal: [
    { rpm: 35, rate: 0.6 },
    { rpm: 70, rate: 1.4 },
    { rpm: 100, rate: 3.3 },
  ],
};

const developmentByRpm: Readonly<Record<MachineKind, ByRpm>> = {
  planetary: power(1, 60, 0.35),
  spiral: power(1, 100, 1),
  fork: [
    { rpm: 35, rate: 0.6 },
    { rpm: 65, rate: 1.1 },
  ],
  'twin arm': [
    { rpm: 40, rate: 0.6 },
    { rpm: 60, rate: 1 },
  ],
  horizontal: [
    { rpm: 35, rate: 0.4 },
    { rpm: 70, rate: 0.9 },
    { rpm: 100, rate: 1.3 },
  ],
};

function byRpm(speed: MixerSpeed, table: ByRpm): Known<number, Message> {
  const { rpm } = speed;
  if (rpm === undefined || !believable(rpm)) return unknown(noRpm(speed));
  const above = table.findIndex((one) => one.rpm >= rpm);
  const right = above < 0 ? table.length - 1 : Math.max(1, above);
  const [from, to] = [elementAt(table, right - 1), elementAt(table, right)];
  const exponent = Math.log(to.rate / from.rate) / Math.log(to.rpm / from.rpm);
  return known(from.rate * (rpm / from.rpm) ** exponent, 'common practice');
}

// No dough mixer turns at ten thousand; such a number is a slip that would drown every result.
function believable(rpm: number): boolean {
  return rpm >= 0 && rpm < 10_000;
}

function noRpm({ number, rpm }: MixerSpeed): Message {
  return rpm === undefined
    ? message('mixing.no-rpm', { number })
    : message('mixing.no-such-rpm', { number, rpm });
}
