import { type Known, known, unknown } from './known.ts';

/** The kinds of mixing the model knows. */
export type MixerKind = 'hand' | 'spiral' | 'planetary' | 'fork' | 'twin arm' | 'horizontal';

/** One speed of a mixer. */
export interface MixerSpeed {
  readonly number: number;
  readonly rpm?: number;
  /** Measured warming at this speed before losses to the room, °C a minute. */
  readonly warmsCelsiusPerMinute?: number;
  /** Slow minutes of development that one minute at this speed gives. */
  readonly developsTimes?: number;
}

/** A mixer as plain data; what is absent is taken from the kind. */
export interface MixerData {
  readonly kind: MixerKind;
  readonly speeds: readonly MixerSpeed[];
  /** Temperature that the dough drifts towards while it is worked, °C, in place of warming by power. */
  readonly warmsTowardsCelsius?: number;
  /** How slowly the dough follows its surroundings (time constant τ), as measured for this mass of dough. */
  readonly settles?: { readonly minutes: number; readonly grams: number };
  /** Measured friction factor of the three-temperature rule, °C. */
  readonly frictionCelsius?: number;
}

/** The bands that a mixer's speeds fall into. */
export type SpeedClass = 'slow' | 'medium' | 'fast' | 'top';

/** The band of a speed: of a planetary by its rpm (100, 160, 240 are the upper edges), of others by its number. */
export function speedClass(mixer: MixerData, speed: MixerSpeed): Known<SpeedClass> {
  if (mixer.kind !== 'planetary') {
    const classes: readonly SpeedClass[] = ['slow', 'medium', 'fast', 'top'];
    const index = Math.min(3, Math.max(0, Math.round(speed.number) - 1));
    return known(classes[Number.isFinite(index) ? index : 0] ?? 'slow', 'common practice');
  }
  if (speed.rpm === undefined || !believable(speed.rpm)) return unknown(noRpm(speed));
  if (speed.rpm <= 100) return known('slow', 'common practice');
  if (speed.rpm <= 160) return known('medium', 'common practice');
  return known(speed.rpm <= 240 ? 'fast' : 'top', 'common practice');
}

/** The speed of this number, or the reason why it is not known. Hand mixing has one speed, whatever its number. */
export function findSpeed(mixer: MixerData, number: number): Known<MixerSpeed> {
  const speed = mixer.speeds.find((one) => one.number === number);
  if (speed !== undefined) return known(speed, 'given');
  if (mixer.kind === 'hand') return known({ number: 1 }, 'common practice');
  return unknown(`speed ${number} of the mixer has no rpm; write it in the mixer’s section`);
}

/**
 * Warming H of dough at a speed, °C a minute before losses: as measured, else by kind (common practice, our own fit;
 * for horizontal mixers the power of published short processes, 110–170 W/kg). By hand there is none.
 */
export function warmingRate(mixer: MixerData, speed: MixerSpeed): Known<number> {
  const measured = speed.warmsCelsiusPerMinute;
  if (measured !== undefined && Math.abs(measured) < 1000) return known(measured, 'given');
  if (mixer.kind === 'hand') return known(0, 'common practice');
  if (mixer.kind === 'spiral') {
    const rpm = speed.rpm;
    if (rpm === undefined || !believable(rpm)) return unknown(noRpm(speed));
    return known(0.25 * (rpm / 100) ** 1.26, 'common practice');
  }
  return byClass(mixer, speed, warmingByClass[mixer.kind]);
}

/**
 * Slow minutes of development that one minute at a speed gives: as calibrated, else by kind (common practice). A spiral
 * hook gives rpm/150, so that 700–800 turns leave a baguette dough under-developed.
 */
export function developmentRate(mixer: MixerData, speed: MixerSpeed): Known<number> {
  const given = speed.developsTimes;
  if (given !== undefined && given >= 0 && given < 1000) return known(given, 'given');
  if (mixer.kind === 'hand') return known(1, 'common practice');
  if (mixer.kind === 'spiral') {
    const rpm = speed.rpm;
    if (rpm === undefined || !believable(rpm)) return unknown(noRpm(speed));
    return known(rpm / 150, 'common practice');
  }
  return byClass(mixer, speed, developmentByClass[mixer.kind]);
}

type ClassTable = Readonly<Record<SpeedClass, number>>;
type ClassedKind = Exclude<MixerKind, 'hand' | 'spiral'>;

const warmingByClass: Readonly<Record<ClassedKind, ClassTable>> = {
  planetary: { slow: 0.65, medium: 0.9, fast: 1.4, top: 2 },
  fork: { slow: 0.15, medium: 0.3, fast: 0.3, top: 0.3 },
  'twin arm': { slow: 0.15, medium: 0.3, fast: 0.3, top: 0.3 },
  horizontal: { slow: 1, medium: 2.3, fast: 3.6, top: 3.6 },
};

const developmentByClass: Readonly<Record<ClassedKind, ClassTable>> = {
  planetary: { slow: 1, medium: 1.25, fast: 1.6, top: 2 },
  fork: { slow: 0.6, medium: 1.1, fast: 1.1, top: 1.1 },
  'twin arm': { slow: 0.6, medium: 1, fast: 1, top: 1 },
  horizontal: { slow: 0.8, medium: 1.8, fast: 2.7, top: 2.7 },
};

function byClass(mixer: MixerData, speed: MixerSpeed, table: ClassTable): Known<number> {
  const found = speedClass(mixer, speed);
  return found.known ? known(table[found.value], 'common practice') : found;
}

// No dough mixer turns at ten thousand; such a number is a slip that would drown every result.
function believable(rpm: number): boolean {
  return rpm >= 0 && rpm < 10_000;
}

function noRpm(speed: MixerSpeed): string {
  return speed.rpm === undefined
    ? `speed ${speed.number} of the mixer has no rpm; write it in the mixer’s section`
    : `no mixer turns at ${speed.rpm} rpm; correct speed ${speed.number} in the mixer’s section`;
}
