import type { MixerData, MixerKind } from './mixer.ts';

/** How dough warms in one phase: dT/dt = H − (T − T_around)/τ. */
export interface WarmingPhase {
  /** H, °C a minute; 0 while it rests. */
  readonly celsiusPerMinute: number;
  /** What the dough drifts towards, °C. */
  readonly aroundCelsius: number;
  /** τ, minutes. */
  readonly settlesMinutes: number;
}

/** The temperature, °C, after some minutes of a phase, in closed form. With τ = 0 the dough is at its equilibrium at once. */
export function temperatureAfter(phase: WarmingPhase, startCelsius: number, minutes: number): number {
  const { celsiusPerMinute, aroundCelsius, settlesMinutes } = phase;
  if (!(settlesMinutes > 0)) return minutes > 0 ? aroundCelsius : startCelsius;
  if (!Number.isFinite(settlesMinutes)) return startCelsius + celsiusPerMinute * minutes;
  const equilibrium = aroundCelsius + celsiusPerMinute * settlesMinutes;
  return equilibrium + (startCelsius - equilibrium) * Math.exp(-minutes / settlesMinutes);
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

/** Minutes of a phase until the dough reaches `limitCelsius`; undefined when it never does. */
export function minutesToReach(
  phase: WarmingPhase,
  startCelsius: number,
  limitCelsius: number,
): number | undefined {
  if (startCelsius >= limitCelsius) return 0;
  const { celsiusPerMinute, aroundCelsius, settlesMinutes } = phase;
  if (!(settlesMinutes > 0)) return aroundCelsius >= limitCelsius ? 0 : undefined;
  const equilibrium = aroundCelsius + celsiusPerMinute * settlesMinutes;
  if (!(equilibrium > limitCelsius)) return undefined;
  return settlesMinutes * Math.log((equilibrium - startCelsius) / (equilibrium - limitCelsius));
}

/**
 * The time constant τ, minutes, of this mass of dough (grams). It grows with the mass to the power 1/3; without a
 * measurement it starts from the kind’s value at 0.7 kg (common practice, our own fit). 0 for no dough at all.
 */
export function settlingMinutes(mixer: MixerData, grams: number): number {
  const mass = Number.isFinite(grams) && grams > 0 ? grams : 0;
  const at = mixer.settles;
  if (at !== undefined && at.minutes > 0 && at.grams > 0) return at.minutes * Math.cbrt(mass / at.grams);
  return settlesAt700Grams[mixer.kind] * Math.cbrt(mass / 700);
}

/** What worked dough drifts towards, °C: as measured; by hand the room + 2 °C (common practice); else the room. */
export function workingSurroundings(mixer: MixerData, roomCelsius: number): number {
  if (mixer.warmsTowardsCelsius !== undefined) return mixer.warmsTowardsCelsius;
  return mixer.kind === 'hand' ? roomCelsius + 2 : roomCelsius;
}

const settlesAt700Grams: Readonly<Record<MixerKind, number>> = {
  hand: 12,
  planetary: 8,
  spiral: 9,
  fork: 9,
  'twin arm': 9,
  horizontal: 12,
};
