import { celsiusOf, heatCurve, latentHeatOfIce, liquidEnthalpy } from '../formula/composition.ts';
import { pureWater } from './heat-content.ts';

/** How the water of a batch is made up of ice and tap water. */
export interface IceShare {
  /** Ice to weigh in, grams. */
  readonly iceGrams: number;
  /** Tap water to weigh in, grams. */
  readonly tapGrams: number;
  /** The batch wants more ice than it has water: all of the water is ice, and the dough still comes out warmer. */
  readonly capped: boolean;
  /** More than half of the water is ice, which melts late in a short mix. */
  readonly muchIce: boolean;
}

/**
 * The part of the water to replace by ice so that ice and tap water together have the heat content of water at
 * `waterCelsius`, which may be a virtual temperature below 0 °C. Balance of enthalpies with 333.6 kJ/kg (ASHRAE) and the
 * specific heats of Choi & Okos; no ice when the tap is cool enough.
 */
export function iceFor(
  waterGrams: number,
  tapCelsius: number,
  waterCelsius: number,
  iceCelsius = 0,
): IceShare {
  if (!(waterGrams > 0) || !(tapCelsius > waterCelsius)) {
    return { iceGrams: 0, tapGrams: Math.max(0, waterGrams || 0), capped: false, muchIce: false };
  }
  const excess = liquidEnthalpy(pureWater, tapCelsius) - liquidEnthalpy(pureWater, waterCelsius);
  const wanted = (waterGrams * excess) / (liquidEnthalpy(pureWater, tapCelsius) - iceEnthalpy(iceCelsius));
  const iceGrams = Math.min(wanted, waterGrams);
  return {
    iceGrams,
    tapGrams: waterGrams - iceGrams,
    capped: wanted > waterGrams,
    muchIce: iceGrams > waterGrams / 2,
  };
}

/**
 * The bakers' rule for ice, grams: water × (tap − wanted) / (tap + 80), temperatures in °C (the form of the handbooks;
 * agrees with the ice table of Koerner Co. to 0.006 per unit of water). Zero when the tap is cool enough.
 */
export function iceByRule(waterGrams: number, tapCelsius: number, waterCelsius: number): number {
  return Math.max(0, (waterGrams * (tapCelsius - waterCelsius)) / (tapCelsius + 80));
}

/** Heat taken up by melting, kJ, for ice at 0 °C. */
export function heatToMelt(iceGrams: number): number {
  return (iceGrams / 1000) * latentHeatOfIce;
}

/**
 * The temperature of liquid water, °C, that holds as much heat as this mix of ice and tap water; below 0 °C it is virtual
 * and says that ice is left to melt in the dough.
 */
export function virtualWaterCelsius(
  iceGrams: number,
  tapGrams: number,
  tapCelsius: number,
  iceCelsius = 0,
): number {
  const grams = iceGrams + tapGrams;
  if (!(grams > 0)) return tapCelsius;
  const heat =
    (iceGrams * iceEnthalpy(iceCelsius) + tapGrams * liquidEnthalpy(pureWater, tapCelsius)) / grams;
  return celsiusOf(heatCurve(pureWater), heat);
}

/** Heat content of ice, kJ/kg above liquid water at 0 °C, at 0 °C or below. */
export function iceEnthalpy(celsius: number): number {
  const t = Math.min(0, celsius);
  return t * (2.0623 + (6.0769e-3 * t) / 2) - latentHeatOfIce;
}
