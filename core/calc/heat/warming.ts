import type { MixerData, MixerKind } from '../mixing/mixer.ts';

/**
 * How dough warms in one phase: dT/dt = H − (T − T_around)/τ. A temperature below 0 °C is virtual: it is that of dough at 0 °C
 * in which ice is left to melt, and says how much heat the melting still takes.
 */
export interface WarmingPhase {
  /** H, °C a minute; 0 while it rests. */
  readonly celsiusPerMinute: number;
  /** What the dough drifts towards, °C. */
  readonly aroundCelsius: number;
  /** τ, minutes. */
  readonly settlesMinutes: number;
}

/**
 * The temperature, °C, after some minutes of a phase, in closed form. With τ = 0 the dough is at its equilibrium at once.
 * While ice melts the dough stands at 0 °C, and what warms it goes into the melting.
 */
export function temperatureAfter(phase: WarmingPhase, startCelsius: number, minutes: number): number {
  if (startCelsius < 0 && phase.settlesMinutes > 0) {
    const melting = meltingRate(phase);
    const melted = melting > 0 ? -startCelsius / melting : Number.POSITIVE_INFINITY;
    if (melting <= 0) return startCelsius;
    return minutes <= melted
      ? startCelsius + melting * minutes
      : temperatureAfter(phase, 0, minutes - melted);
  }
  const { celsiusPerMinute, aroundCelsius, settlesMinutes } = phase;
  if (!(settlesMinutes > 0)) return minutes > 0 ? aroundCelsius : startCelsius;
  if (!Number.isFinite(settlesMinutes)) return startCelsius + celsiusPerMinute * minutes;
  const equilibrium = aroundCelsius + celsiusPerMinute * settlesMinutes;
  return equilibrium + (startCelsius - equilibrium) * Math.exp(-minutes / settlesMinutes);
}

/** Degrees a minute that dough at 0 °C takes up. */
function meltingRate({ celsiusPerMinute, aroundCelsius, settlesMinutes }: WarmingPhase): number {
  return celsiusPerMinute + (Number.isFinite(settlesMinutes) ? aroundCelsius / settlesMinutes : 0);
}

/** The part of a difference at the start of a phase that is left after some minutes, 0 to 1. */
export function differenceLeft({ settlesMinutes }: WarmingPhase, minutes: number): number {
  if (!(settlesMinutes > 0)) return minutes > 0 ? 0 : 1;
  return Number.isFinite(settlesMinutes) ? Math.exp(-minutes / settlesMinutes) : 1;
}

/** The temperature, °C, from which dough must start to end a phase at `endCelsius`. */
export function temperatureBefore(phase: WarmingPhase, endCelsius: number, minutes: number): number {
  const { celsiusPerMinute, aroundCelsius, settlesMinutes } = phase;
  if (!(settlesMinutes > 0) || !Number.isFinite(settlesMinutes))
    return endCelsius - celsiusPerMinute * minutes;
  const equilibrium = aroundCelsius + celsiusPerMinute * settlesMinutes;
  return equilibrium + (endCelsius - equilibrium) * Math.exp(minutes / settlesMinutes);
}

/** Minutes of a phase until the dough warms to `limitCelsius`; undefined when it never does. */
export function minutesToReach(
  phase: WarmingPhase,
  startCelsius: number,
  limitCelsius: number,
): number | undefined {
  if (startCelsius >= limitCelsius) return 0;
  if (startCelsius < 0 && phase.settlesMinutes > 0) {
    const melting = meltingRate(phase);
    if (!(melting > 0)) return undefined;
    const later = limitCelsius > 0 ? minutesToReach(phase, 0, limitCelsius) : 0;
    return later === undefined ? undefined : later - startCelsius / melting;
  }
  const { celsiusPerMinute, aroundCelsius, settlesMinutes } = phase;
  if (!(settlesMinutes > 0)) return aroundCelsius >= limitCelsius ? 0 : undefined;
  const equilibrium = aroundCelsius + celsiusPerMinute * settlesMinutes;
  if (!(equilibrium > limitCelsius)) return undefined;
  return settlesMinutes * Math.log((equilibrium - startCelsius) / (equilibrium - limitCelsius));
}

/**
 * The time constant τ, minutes, of this mass of dough (grams). It grows with the mass to the power 1/3; without a
 * measurement it starts from the kind’s value at 1 kg (common practice, our own fit). 0 for no dough at all.
 */
export function settlingMinutes(mixer: MixerData, grams: number): number {
  const mass = Number.isFinite(grams) && grams > 0 ? grams : 0;
  const at = mixer.settles;
  if (at !== undefined && at.minutes > 0 && at.grams > 0) return at.minutes * Math.cbrt(mass / at.grams);
  return settlesAtAKilogram[mixer.kind] * Math.cbrt(mass / 1000);
}

/** Degrees above the room that hands warm a dough towards, and the warmth of hands, °C: common practice, our own fit. */
const handsAboveRoom = 5;
const warmestHands = 33;

/** What worked dough drifts towards, °C: as measured; by hand the room + 5 °C, never above that of hands; else the room. */
export function workingSurroundings(mixer: MixerData, roomCelsius: number): number {
  if (mixer.warmsTowardsCelsius !== undefined) return mixer.warmsTowardsCelsius;
  if (mixer.kind !== 'hand') return roomCelsius;
  return Math.max(roomCelsius, Math.min(roomCelsius + handsAboveRoom, warmestHands));
}

const settlesAtAKilogram: Readonly<Record<MixerKind, number>> = {
  hand: 13.5,
  planetary: 9,
  spiral: 10,
  fork: 10,
  'twin arm': 10,
  horizontal: 13.5,
};
