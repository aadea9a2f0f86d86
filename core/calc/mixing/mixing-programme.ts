import { type Message, message } from '../../words/message.ts';
import type { FlourCurve } from '../flour/flour.ts';
import { restingMinutes } from '../heat/dough-cooling.ts';
import type { HeatItem } from '../heat/heat-content.ts';
import { type FrictionConditions, factorStandsFor } from '../heat/heat-friction.ts';
import { settlingMinutes, workingSurroundings } from '../heat/warming.ts';
import { type Known, known } from '../known.ts';
import { type DevelopmentTimes, developmentTimes, minutesUntil, strengthOf } from './development.ts';
import {
  developmentRate,
  findSpeed,
  type MixerData,
  type MixerKind,
  type MixerSpeed,
  rateWithin,
  warmingRate,
  wearRate,
} from './mixer.ts';

/** One portion as it goes into the bowl, with what it brings to the dough. */
export interface MixPortion extends HeatItem {
  /** Flour in it, grams, the flour of a preferment included. */
  readonly flourGrams: number;
  /** Water free for the dough, grams: not the flour’s own, nor what soaked seeds and scalds hold. */
  readonly freeWaterGrams: number;
  readonly fatGrams: number;
  readonly sugarGrams: number;
  readonly saltGrams: number;
  /** What liquid egg in it softens the dough by beyond its water, fat and sugar, grams; absent: no egg. */
  readonly eggBeyondGrams?: number;
  /** Water whose temperature is chosen to reach the dough temperature. */
  readonly tempered?: boolean;
}

/** One line of a mixing programme. */
export type MixingPhase =
  | { readonly kind: 'load' | 'add'; readonly portions: readonly MixPortion[] }
  | { readonly kind: 'speed'; readonly number: number; readonly seconds: number }
  | { readonly kind: 'rest'; readonly seconds: number }
  | { readonly kind: 'knead' | 'fold' | 'stir'; readonly seconds: number };

/** A mixing programme with all it depends on. */
export interface MixingInput {
  readonly phases: readonly MixingPhase[];
  readonly mixer: MixerData;
  /** Of all flour of the dough, by `blendCurve`. */
  readonly curve: Known<FlourCurve, Message>;
  readonly roomCelsius: number;
  /** Dough temperature whose passing is asked for, °C. */
  readonly limitCelsius?: number;
  /** The degree of mixing wished, as D; 1, an improved mix, where absent. */
  readonly wishedDevelopment?: number;
  /** How many times as fast as worked out trials saw it develop; it widens the band and moves nothing expected. */
  readonly seenDevelopment?: { readonly least: number; readonly most?: number };
  /** The conditions of the mixer’s measured friction factor; without them the factor does not scale the warming. */
  readonly friction?: FrictionConditions;
  /** The programme that the friction factor stands for, where another, or a part of it, is worked out. */
  readonly frictionPhases?: readonly MixingPhase[];
}

/** A stretch of time in which nothing but the clock changes. */
export interface TimeStep {
  readonly kind: 'time';
  /** Index of the line of the programme. */
  readonly phase: number;
  readonly minutes: number;
  readonly working: boolean;
  /** H, °C a minute. */
  readonly warming: Known<number, Message>;
  /** H was measured for this speed, so that a friction factor leaves it alone. */
  readonly measured: boolean;
  /** The standard error of the measured H, °C a minute, or of what the dough drifts towards, °C; absent where none is told. */
  readonly measuredWithin?: number;
  /** A friction factor measured on this mixer scales H: over the work that it stands for, or on beyond that. */
  readonly friction?: 'stands' | 'beyond';
  readonly mixerKind: MixerKind;
  /** Worked by hand: a friction factor moves its surroundings, for it has no H. */
  readonly byHand: boolean;
  readonly aroundCelsius: number;
  readonly settlesMinutes: number;
  /** Slow minutes a minute, were all of the work to count. */
  readonly rate: Known<number, Message>;
  /** How much of the work may not count, 0 to 1, since a planetary does not take up slack dough at first: half is expected. */
  readonly slack: number;
  /** Wear a minute of dough that is developed, at 27 °C. */
  readonly wearRate: number;
  /** The standard error of a measured rate as a part of it; absent where none is told. */
  readonly rateWithin?: number;
  /** Absent while the bowl holds no dough. */
  readonly times: DevelopmentTimes | undefined;
}

/** Portions that go into the bowl. */
export interface AddStep {
  readonly kind: 'add';
  readonly phase: number;
  readonly portions: readonly MixPortion[];
}

/** A programme taken apart; `beyond` would follow if the last speed just went on. */
export interface Programme {
  readonly steps: readonly (TimeStep | AddStep)[];
  readonly beyond: readonly TimeStep[];
  readonly notes: readonly Message[];
}

interface Bowl {
  grams: number;
  flourGrams: number;
  freeWaterGrams: number;
  fatGrams: number;
  sugarGrams: number;
  saltGrams: number;
  restedMinutes: number;
  development: number;
  workedMinutes: number;
}

const byHand: MixerData = { kind: 'hand', speeds: [] };

// Longer than any programme: a slip of the pen must not overflow the sums.
const longestMinutes = 100_000;

/** Takes a programme apart into steps of constant conditions. Never throws; what is not known stays so in its step. */
export function takeApart(input: MixingInput): Programme {
  const bowl: Bowl = {
    grams: 0,
    flourGrams: 0,
    freeWaterGrams: 0,
    fatGrams: 0,
    sugarGrams: 0,
    saltGrams: 0,
    restedMinutes: 0,
    development: 0,
    workedMinutes: 0,
  };
  const steps: (TimeStep | AddStep)[] = [];
  let worksTooEarly = false;
  const gentle = new Map<number | undefined, Message>();
  let again: (() => TimeStep[]) | undefined;
  for (const [index, phase] of input.phases.entries()) {
    if ('portions' in phase) {
      pour(bowl, phase.portions);
      steps.push({ kind: 'add', phase: index, portions: phase.portions });
      continue;
    }
    const minutes = Number.isFinite(phase.seconds)
      ? Math.min(longestMinutes, Math.max(0, phase.seconds / 60))
      : 0;
    if (phase.kind === 'rest') {
      steps.push(restStep(input, bowl, index, minutes));
      bowl.restedMinutes += minutes * restCounts(bowl);
      continue;
    }
    if (!(bowl.flourGrams > 0 && bowl.freeWaterGrams > 0)) {
      worksTooEarly = true;
    }
    const work = workOf(input, phase);
    if (work.speed.known && countedShare(rateOf(work, work.speed.value)) < 1)
      gentle.set(
        phase.kind === 'speed' ? phase.number : undefined,
        phase.kind === 'speed'
          ? message('mixing.gentle-speed', { number: phase.number })
          : message('mixing.gentle-work'),
      );
    steps.push(...workSteps(input, bowl, index, work, minutes));
    again = () => workSteps(input, bowl, index, work, Number.POSITIVE_INFINITY);
  }
  const notes = [...(worksTooEarly ? [message('mixing.works-too-early')] : []), ...gentle.values()];
  return { steps, beyond: again?.() ?? [], notes };
}

type WorkingPhase = Exclude<MixingPhase, { readonly kind: 'load' | 'add' } | { readonly kind: 'rest' }>;

interface Work {
  readonly mixer: MixerData;
  readonly speed: Known<MixerSpeed, Message>;
  /** Slow minutes a minute by hand: stirring only gathers the dough. */
  readonly handRate?: number;
}

function workOf(input: MixingInput, phase: WorkingPhase): Work {
  if (phase.kind === 'speed') return { mixer: input.mixer, speed: findSpeed(input.mixer, phase.number) };
  const mixer = input.mixer.kind === 'hand' ? input.mixer : byHand;
  return { mixer, speed: findSpeed(mixer, 1), handRate: phase.kind === 'stir' ? 0.5 : 1 };
}

function workSteps(input: MixingInput, bowl: Bowl, phase: number, work: Work, minutes: number): TimeStep[] {
  const { mixer, speed } = work;
  const rate = speed.known ? effectiveRate(rateOf(work, speed.value)) : speed;
  const warms = speed.known ? warmingRate(mixer, speed.value) : speed;
  const measured = speed.known && speed.value.warmsCelsiusPerMinute !== undefined;
  const drifts = mixer.warmsTowardsCelsius !== undefined && !measured;
  const byDrift = drifts ? mixer.warmsTowardsWithinCelsius : undefined;
  const within = measured && speed.known ? speed.value.warmsWithinPerMinute : byDrift;
  const base = {
    kind: 'time' as const,
    phase,
    working: true,
    warming: drifts ? known(0, 'given') : warms,
    measured: measured || drifts,
    ...(within === undefined ? {} : { measuredWithin: within }),
    ...(mixer.frictionCelsius === undefined || input.friction === undefined
      ? {}
      : { friction: 'stands' as const }),
    mixerKind: mixer.kind,
    byHand: mixer.kind === 'hand' && !drifts,
    aroundCelsius: measured ? input.roomCelsius : workingSurroundings(mixer, input.roomCelsius),
    settlesMinutes: settlingMinutes(mixer, bowl.grams),
    rate,
    wearRate: rate.known ? wearRate(mixer, rate.value) : 0,
    ...(speed.known ? rateWithin(speed.value) : {}),
    times: timesOf(input, bowl),
  };
  // Dough gets slack by degrees, so that a gram of water does not take off half the work of five minutes.
  const slack = mixer.kind === 'planetary' ? Math.min(1, Math.max(0, (excessWater(input, bowl) - 7) / 2)) : 0;
  const slackMinutes = slack > 0 ? Math.min(minutes, Math.max(0, slackLasts - bowl.workedMinutes)) : 0;
  const steps: TimeStep[] = [];
  if (slackMinutes > 0) steps.push({ ...base, minutes: slackMinutes, slack });
  if (minutes > slackMinutes)
    steps.push(
      ...asTheFactorStands({ ...base, minutes: minutes - slackMinutes, slack: 0 }, bowl.development),
    );
  if (Number.isFinite(minutes)) {
    bowl.workedMinutes += minutes;
    for (const step of steps) {
      if (step.rate.known && step.times !== undefined) {
        bowl.development += (step.minutes * countedRate(step)) / step.times.slowMinutesToDeveloped;
      }
    }
  }
  return steps;
}

/** A step parted where the friction factor of the mixer, if it states one, no longer stands for the work. */
function asTheFactorStands(step: TimeStep, development: number): TimeStep[] {
  if (step.friction === undefined || step.times === undefined || !step.rate.known) return [step];
  const minutes = minutesUntil(factorStandsFor, development, step.rate.value, step.times);
  if (!(minutes < step.minutes)) return [step];
  const beyond: TimeStep = { ...step, friction: 'beyond' };
  if (!(minutes > 0) || !Number.isFinite(step.minutes)) return [beyond];
  return [
    { ...step, minutes },
    { ...beyond, minutes: step.minutes - minutes },
  ];
}

/** The first minutes in which a planetary may not take up slack dough. */
const slackLasts = 5;

/** Slow minutes a minute of a step, when this part of its slack does not count: a half is expected. */
export function countedRate({ rate, slack }: TimeStep, slackPart = 0.5): number {
  return rate.known ? rate.value * (1 - slackPart * slack) : 0;
}

function restStep(input: MixingInput, bowl: Bowl, phase: number, minutes: number): TimeStep {
  return {
    kind: 'time',
    phase,
    minutes,
    working: false,
    warming: known(0, 'given'),
    measured: true,
    mixerKind: input.mixer.kind,
    byHand: false,
    aroundCelsius: input.roomCelsius,
    // Dough that stands follows the room as in bulk: it is the working that turns its inside to the air and the bowl.
    settlesMinutes: Math.max(settlingMinutes(input.mixer, bowl.grams), restingMinutes(bowl.grams)),
    rate: known(0, 'given'),
    slack: 0,
    wearRate: 0,
    times: timesOf(input, bowl),
  };
}

/** Salt in percent of the flour that takes all of its effect from a rest of flour and water; common practice, our own choice. */
const saltStopsRest = 1;
/** D from which a rest saves less and less work, down to none for a dough that is developed; our own choice. */
const restSavesUpTo = 0.5;

/** The part of a rest that saves work, 0 to 1: all of it for flour and water that are hardly worked and not salted. */
function restCounts({ flourGrams, freeWaterGrams, saltGrams, development }: Bowl): number {
  if (!(flourGrams > 0 && freeWaterGrams > 0)) return 0;
  const salt = 1 - (100 * saltGrams) / flourGrams / saltStopsRest;
  const work = (1 - development) / (1 - restSavesUpTo);
  return Math.max(0, salt) * Math.min(1, Math.max(0, work));
}

function rateOf(work: Work, speed: MixerSpeed): Known<number, Message> {
  const rate = developmentRate(work.mixer, speed);
  return work.handRate === undefined ? rate : scaled(rate, work.handRate);
}

/**
 * Slow minutes a minute from which all of the work counts, and up to which none does. Kilborn & Tipples (1972): development
 * needs an intensity above a least one as well as work enough; that there is one is published, its size is our own choice.
 */
const fullRate = 0.4;
const idleRate = 0.2;

/** The part of work of this intensity that develops, 0 to 1. A rate that the file gives is believed as it is. */
function countedShare(rate: Known<number, Message>): number {
  if (!rate.known || rate.provenance !== 'common practice') return 1;
  return Math.min(1, Math.max(0, (rate.value - idleRate) / (fullRate - idleRate)));
}

function effectiveRate(rate: Known<number, Message>): Known<number, Message> {
  return scaled(rate, countedShare(rate));
}

function scaled(value: Known<number, Message>, factor: number): Known<number, Message> {
  return value.known ? { ...value, value: value.value * factor } : value;
}

function pour(bowl: Bowl, portions: readonly MixPortion[]): void {
  for (const portion of portions) {
    bowl.grams += amount(portion.grams);
    bowl.flourGrams += amount(portion.flourGrams);
    bowl.freeWaterGrams += amount(portion.freeWaterGrams);
    bowl.fatGrams += amount(portion.fatGrams);
    bowl.sugarGrams += amount(portion.sugarGrams);
    bowl.saltGrams += amount(portion.saltGrams);
  }
}

function amount(grams: number): number {
  return grams > 1e-9 && grams < 1e12 ? grams : 0;
}

function excessWater(input: MixingInput, bowl: Bowl): number {
  if (!input.curve.known || !input.curve.value.absorptionAsIs.known || !(bowl.flourGrams > 0)) return 0;
  return 100 * (bowl.freeWaterGrams / bowl.flourGrams - input.curve.value.absorptionAsIs.value);
}

function timesOf(input: MixingInput, bowl: Bowl): DevelopmentTimes | undefined {
  if (!input.curve.known || !(bowl.flourGrams > 0) || !(bowl.freeWaterGrams > 0)) return undefined;
  const strength = strengthOf(input.curve.value);
  if (strength === undefined) return undefined;
  return developmentTimes(strength, {
    excessWaterPercent: excessWater(input, bowl),
    restedMinutes: bowl.restedMinutes,
    fatPercent: (100 * bowl.fatGrams) / bowl.flourGrams,
    sugarPercent: (100 * bowl.sugarGrams) / bowl.flourGrams,
  });
}
