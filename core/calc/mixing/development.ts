import type { Message } from '../../words/message.ts';
import type { FlourCurve } from '../flour/flour.ts';
import type { Known } from '../known.ts';

/** The textbook’s words for the stages of mixing, in their order. */
export const mixingStages = [
  'pick-up',
  'clean-up',
  'developing',
  'developed',
  'let-down',
  'breakdown',
] as const;
export type MixingStage = (typeof mixingStages)[number];

/** What of a dough decides how long it takes to develop. */
export interface DoughState {
  /** Δ: free water in the bowl above the absorption, in percent of flour as it is. */
  readonly excessWaterPercent: number;
  /** Minutes that flour and water stood together before kneading. */
  readonly restedMinutes: number;
  /** Fat and sugar in the bowl, percent of flour. */
  readonly fatPercent: number;
  readonly sugarPercent: number;
}

/** Slow minutes to full development, and the wear from there to breakdown. */
export interface DevelopmentTimes {
  readonly slowMinutesToDeveloped: number;
  /** G: minutes of wear at one slow minute a minute and 27 °C. */
  readonly wearToBreakdown: number;
  /** Points of water beyond the wettest dough that the times are known of: so much of them is a guess. */
  readonly beyondKnownPercent: number;
}

/** Water above the absorption, percent of flour, up to which practice tells how doughs behave. */
const wettestKnown = 12;
/** Water below it, percent of flour, from which a dough gets no slower to develop. */
const driestKnown = 15;

/** From this part of the gap on a dough is let down. */
export const letDownPart = 0.8;

/** Farinograph peak and stability that the times start from, minutes, and the share of flour that forms no gluten network. */
export type Strength = {
  readonly peakMinutes: number;
  readonly stabilityMinutes: number;
  readonly shareWithoutNetwork: number;
};

/**
 * Slow minutes to develop a dough, and the gap from developed to broken. t = 7·√(peak/6)·exp(0.065·Δ) for Δ from 0 to
 * 12, constant above, and ×(1 + 0.02·|Δ|) when drier, down to 15 points; up to 20 % less after a 30 min rest of flour and water; 3 % more for
 * each point of fat and of sugar above 10 %. Gap G = 58·(S/15)^0.75·exp(−max(0, Δ)/40)·(1 − share of rye and its like)²,
 * at least 2. Our own model on common practice; the directions are published (Hwang & Gunasekaran 2001; Kilborn & Tipples 1972).
 */
export function developmentTimes(strength: Strength, dough: DoughState): DevelopmentTimes {
  const excess = dough.excessWaterPercent;
  const wetness =
    excess >= 0
      ? Math.exp(0.065 * Math.min(wettestKnown, excess))
      : 1 + 0.02 * Math.min(driestKnown, Math.abs(excess));
  const rested = 1 - 0.2 * Math.min(1, Math.max(0, dough.restedMinutes) / 30);
  const rich = 1 + 0.03 * (Math.max(0, dough.fatPercent - 10) + Math.max(0, dough.sugarPercent - 10));
  const toDeveloped = 7 * Math.sqrt(Math.max(0.1, strength.peakMinutes) / 6) * wetness * rested * rich;
  const tolerance = 58 * (Math.max(0, strength.stabilityMinutes) / 15) ** 0.75;
  const gap = tolerance * Math.exp(-Math.max(0, excess) / 40) * (1 - strength.shareWithoutNetwork) ** 2;
  return {
    slowMinutesToDeveloped: toDeveloped,
    wearToBreakdown: Math.max(2, gap),
    beyondKnownPercent: Math.max(0, excess - wettestKnown),
  };
}

/** The strength of a flour or blend, or undefined where a part of it is not known. */
export function strengthOf(curve: FlourCurve): Strength | undefined {
  if (!curve.peakMinutes.known || !curve.stabilityMinutes.known) return undefined;
  return {
    peakMinutes: curve.peakMinutes.value,
    stabilityMinutes: curve.stabilityMinutes.value,
    shareWithoutNetwork: curve.shareWithoutNetwork,
  };
}

/** D at which the first stages begin; common practice, our own choice. */
export const stageStarts = { 'pick-up': 0, 'clean-up': 0.2, developing: 0.45, developed: 1 } as const;

/** The degrees of mixing that the trade names, as D: what a baker may wish of a programme. */
export const degreesOfMixing = { short: 0.6, improved: 1, intensive: 1.5 } as const;
export type DegreeOfMixing = keyof typeof degreesOfMixing;

/**
 * The stage of a dough. `development` is D = slow minutes done over those it needs; `worn` is the part of the gap from
 * developed (0) to broken (1) that is used up.
 */
export function stageOf(development: number, worn: number): MixingStage {
  if (worn >= 1) return 'breakdown';
  if (worn >= letDownPart) return 'let-down';
  if (development >= 1) return 'developed';
  if (development >= stageStarts.developing) return 'developing';
  return development >= stageStarts['clean-up'] ? 'clean-up' : 'pick-up';
}

/** Minutes of work at a rate, in slow minutes a minute, until a dough is developed so far, 1 being developed; 0 where it is already. */
export function minutesUntil(
  wanted: number,
  development: number,
  rate: number,
  { slowMinutesToDeveloped }: DevelopmentTimes,
): number {
  return (Math.max(0, wanted - development) * slowMinutesToDeveloped) / rate;
}

/** Why a flour has no curve of development; undefined when it has one. */
export function whyNoCurve(curve: Known<FlourCurve, Message>): Message | undefined {
  if (!curve.known) return curve.reason;
  const { absorptionAsIs, peakMinutes, stabilityMinutes } = curve.value;
  for (const part of [absorptionAsIs, peakMinutes, stabilityMinutes]) if (!part.known) return part.reason;
  return undefined;
}
