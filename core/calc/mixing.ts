import { type DevelopmentTimes, letDownPart, type MixingStage, stageOf } from './development.ts';
import { type Known, known, unknown } from './known.ts';
import { type HeatPlan, type HeatRun, planHeat, runHeat } from './mixing-heat.ts';
import {
  type MixingInput,
  type Programme,
  type TimeStep,
  takeApart,
  whyNoCurve,
} from './mixing-programme.ts';
import { minutesToReach, temperatureAfter, type WarmingPhase } from './warming.ts';
import { unsureAfter } from './warmth-band.ts';

/** The dough at one moment of its programme. What is absent is not known. */
export interface MixingPoint {
  /** Minutes of the programme, rests included. */
  readonly minutes: number;
  readonly celsius?: number;
  /** How far the temperature may be off by what is not known of the mixer, either way, °C. */
  readonly celsiusBand?: number;
  readonly slowMinutes?: number;
  /** D: slow minutes done over those that full development needs. */
  readonly development?: number;
  readonly stage?: MixingStage;
  /** How its temperature goes on from here. */
  readonly warming?: WarmingPhase;
}

/** The dough at the end of a line of the programme. */
export interface PhaseEnd extends MixingPoint {
  readonly phase: number;
}

/** When something happens, minutes of the programme with rests, as a band. */
export interface MinutesBand {
  readonly low: number;
  readonly expected: number;
  readonly high: number;
  /** Expected only if the last speed ran on past the end of the programme. */
  readonly atLastSpeed: boolean;
}

/** What a mixing programme does to a dough. */
export interface MixingOutcome {
  /** The dough at the start and at the end of each stretch of constant conditions, by turns. */
  readonly points: readonly MixingPoint[];
  readonly phaseEnds: readonly PhaseEnd[];
  readonly programmeMinutes: number;
  /** Without rests. */
  readonly workedMinutes: number;
  readonly slowMinutes: Known<number>;
  readonly endCelsius: Known<number>;
  /** How far the end temperature may be off by what is not known of the mixer, either way, °C. */
  readonly endCelsiusBand: number;
  /** Degrees that working and the room bring, additions not counted, °C. */
  readonly warmedCelsius: Known<number>;
  readonly development: Known<number>;
  readonly stage: Known<MixingStage>;
  /** Slow minutes that the dough as it is at the end needs, and its gap from developed to broken. */
  readonly times: Known<DevelopmentTimes>;
  readonly developedAfter: Known<MinutesBand>;
  readonly letDownAfter: Known<MinutesBand>;
  readonly breakdownAfter: Known<MinutesBand>;
  /** When the dough passes the limit asked for. */
  readonly limitAfter: Known<{ readonly minutes: number; readonly atLastSpeed: boolean }>;
  readonly band: number;
  readonly notes: readonly string[];
}

/**
 * Runs a mixing programme: temperature by dT/dt = H − (T − T_around)/τ in closed form, additions by balance of heat with
 * the heat of hydration, development in slow minutes. Defaults are common practice. Never throws, never NaN: what
 * cannot be told is a value with its reason.
 */
export function simulateMixing(input: MixingInput): MixingOutcome {
  return runMixing(prepareMixing(input));
}

/** A programme taken apart, ready to be run with its tempered water at any temperature. */
export interface PreparedMixing {
  readonly input: MixingInput;
  readonly programme: Programme;
  readonly heat: HeatPlan;
}

export function prepareMixing(input: MixingInput): PreparedMixing {
  const programme = takeApart(input);
  return { input, programme, heat: planHeat(input, programme) };
}

/** Runs a programme with its tempered water at `waterCelsius`; where that is absent, at what its portions say. */
export function runMixing(prepared: PreparedMixing, waterCelsius?: number): MixingOutcome {
  const { input, programme } = prepared;
  const noCurve = whyNoCurve(input);
  const timed = programme.steps.filter((step) => step.kind === 'time');
  const noRate = firstReason(timed.map((step) => step.rate));
  const heat = runHeat(prepared.heat, waterCelsius);
  const band = bandOf(input, timed);
  const run = course(programme.steps, heat, noRate === undefined, noCurve === undefined);
  const last = run.points.at(-1);
  const programmeMinutes = timed.reduce((sum, step) => sum + step.minutes, 0);
  const lastTimes = timed.findLast((step) => step.times !== undefined)?.times;
  const why = noCurve ?? noRate;
  const tell = <T>(value: T | undefined, otherwise: string): Known<T> => {
    if (why !== undefined) return unknown(why);
    return value === undefined ? unknown(otherwise) : known(value, 'common practice');
  };
  const noDough = timed.some((step) => step.working && step.times !== undefined)
    ? 'so gentle work never develops it'
    : 'the programme never works flour and water together';
  const steps = [...timed, ...programme.beyond];
  const [expected, low, high] =
    why === undefined ? [1, 1 - band, 1 + band].map((scale) => momentsOf(steps, scale)) : [];
  const crossing = (event: keyof Moments): Known<MinutesBand> => {
    if (why !== undefined) return unknown(why);
    const [at, from, to] = [expected?.[event], low?.[event], high?.[event]];
    if (at === undefined || from === undefined || to === undefined) return unknown(noDough);
    return known(
      { low: from, expected: at, high: to, atLastSpeed: at > programmeMinutes + 1e-9 },
      'common practice',
    );
  };
  return {
    points: run.points,
    phaseEnds: run.phaseEnds,
    programmeMinutes,
    workedMinutes: timed.reduce((sum, step) => sum + (step.working ? step.minutes : 0), 0),
    slowMinutes: noRate === undefined ? known(run.slowMinutes, 'common practice') : unknown(noRate),
    endCelsius: heat.end,
    endCelsiusBand: last?.celsiusBand ?? 0,
    warmedCelsius: heat.warmed,
    development: tell(last?.development, noDough),
    stage: tell(last?.stage, noDough),
    times: tell(lastTimes, noDough),
    developedAfter: crossing('developed'),
    letDownAfter: crossing('letDown'),
    breakdownAfter: crossing('breakdown'),
    limitAfter: limitOf(input.limitCelsius, heat, timed, prepared.heat.beyond),
    band,
    notes: [...(input.curve.known ? input.curve.value.notes : []), ...programme.notes],
  };
}

/**
 * The half-width of the bands. That of the flour’s curve is wide enough for an average mixer’s speeds too; half of its
 * variance is taken to be the mixer’s, and goes where all speeds of the programme state how fast they develop dough. Our own
 * choice; common practice.
 */
function bandOf({ curve }: MixingInput, timed: readonly TimeStep[]): number {
  const flour = curve.known ? curve.value.band : usualBand;
  const working = timed.filter((step) => step.working);
  const calibrated =
    working.length > 0 &&
    working.every((step) => step.rate.known && step.rate.provenance !== 'common practice');
  const judged = calibrated ? Math.sqrt(flour * flour - usualBand ** 2 / 2) : flour;
  // Flour and water are wetter than any dough while only a part of the flour is in: what counts is how wet they end.
  const beyond = working.at(-1)?.times?.beyondKnownPercent ?? 0;
  return judged + Math.min(mostByWetness, beyond * bandByPoint);
}

const usualBand = 0.2;
/** How much wider the band is for each point of water beyond the wettest dough that is known; our own choice. */
const bandByPoint = 0.01;
const mostByWetness = 0.2;

/** The temperature of the dough at a minute of the programme, °C; unknown outside of it. */
export function celsiusAt(outcome: MixingOutcome, minutes: number): Known<number> {
  const { points, endCelsius } = outcome;
  if (!endCelsius.known) return endCelsius;
  const after = points.findIndex((point) => point.minutes >= minutes);
  const right = points[after];
  if (right?.celsius === undefined) return unknown('the programme is over by then');
  const left = points[after - 1];
  if (left?.celsius === undefined || left.warming === undefined)
    return known(right.celsius, endCelsius.provenance);
  return known(temperatureAfter(left.warming, left.celsius, minutes - left.minutes), endCelsius.provenance);
}

/** How far the dough is developed at a minute of the programme; unknown outside of it, or where there is no curve. */
export function developmentAt({ points, development }: MixingOutcome, minutes: number): Known<number> {
  if (!development.known) return development;
  const after = points.findIndex((point) => point.minutes >= minutes);
  const [left, right] = [points[after - 1], points[after]];
  if (right?.development === undefined) return unknown('the programme is over by then');
  const span = right.minutes - (left?.minutes ?? 0);
  if (left?.development === undefined || !(span > 0)) return known(right.development, development.provenance);
  // Within a stretch the speed and the dough are the same, so it goes straight.
  const part = (minutes - left.minutes) / span;
  return known(left.development + part * (right.development - left.development), development.provenance);
}

interface Wear {
  development: number;
  worn: number;
}

// Moves the state of the gluten on by some slow minutes. `scale` stretches both the time to develop and the gap.
function work(state: Wear, times: DevelopmentTimes, slowMinutes: number, scale: number): void {
  const need = Math.max(0, 1 - state.development) * times.slowMinutesToDeveloped * scale;
  state.development += slowMinutes / (times.slowMinutesToDeveloped * scale);
  const over = slowMinutes - need;
  if (over > 0) state.worn += over / (times.slowMinutesToBreakdown * scale);
}

/** When a dough is developed, let down and broken, minutes of the programme; absent: never. */
interface Moments {
  developed?: number;
  letDown?: number;
  breakdown?: number;
}

const wearAt = { developed: 0, letDown: letDownPart, breakdown: 1 } as const;
const events = ['developed', 'letDown', 'breakdown'] as const;

function momentsOf(steps: readonly TimeStep[], scale: number): Moments {
  const moments: Moments = {};
  const state: Wear = { development: 0, worn: 0 };
  let clock = 0;
  let next = 0;
  for (const step of steps) {
    const rate = step.rate.known ? step.rate.value : 0;
    if (step.times !== undefined && rate > 0) {
      const develop = Math.max(0, 1 - state.development) * step.times.slowMinutesToDeveloped * scale;
      for (let event = events[next]; event !== undefined; event = events[++next]) {
        const wearing = Math.max(0, wearAt[event] - state.worn) * step.times.slowMinutesToBreakdown * scale;
        const minutes = (develop + wearing) / rate;
        if (!(minutes <= step.minutes)) break;
        moments[event] = clock + minutes;
      }
      if (next === events.length) break;
      work(state, step.times, rate * step.minutes, scale);
    }
    clock += step.minutes;
  }
  return moments;
}

// The dough at both ends of every stretch, and what of it each line of the programme leaves.
function course(
  steps: Programme['steps'],
  heat: HeatRun,
  withRate: boolean,
  withCurve: boolean,
): { points: MixingPoint[]; phaseEnds: PhaseEnd[]; slowMinutes: number } {
  const points: MixingPoint[] = [];
  const phaseEnds: PhaseEnd[] = [];
  const state: Wear = { development: 0, worn: 0 };
  let clock = 0;
  let slow = 0;
  let timed = 0;
  let begun = false;
  let unsure = 0;
  const point = (celsius: number | undefined): MixingPoint => {
    const made: { -readonly [K in keyof MixingPoint]: MixingPoint[K] } = { minutes: clock };
    if (celsius !== undefined) {
      made.celsius = celsius;
      made.celsiusBand = unsure;
    }
    if (withRate) made.slowMinutes = slow;
    if (withRate && withCurve && begun) {
      made.development = state.development;
      made.stage = stageOf(state.development, state.worn);
    }
    return made;
  };
  for (const step of steps) {
    if (step.kind === 'add') {
      const next = heat.starts[timed];
      const ended = heat.starts.length === timed && heat.end.known ? heat.end.value : undefined;
      phaseEnds.push({ ...point(next?.celsius ?? ended), phase: step.phase });
      continue;
    }
    const start = heat.starts[timed];
    timed++;
    const rate = step.rate.known ? step.rate.value : 0;
    if (step.times !== undefined) begun = true;
    points.push(start === undefined ? point(undefined) : { ...point(start.celsius), warming: start.warming });
    clock += step.minutes;
    slow += rate * step.minutes;
    if (step.times !== undefined && rate > 0) work(state, step.times, rate * step.minutes, 1);
    if (start !== undefined) unsure = unsureAfter(step, start.warming, unsure);
    const end = point(start && temperatureAfter(start.warming, start.celsius, step.minutes));
    points.push(end);
    if (phaseEnds.at(-1)?.phase === step.phase) phaseEnds.pop();
    phaseEnds.push({ ...end, phase: step.phase });
  }
  if (points.length === 0 && phaseEnds.length > 0)
    points.push(point(heat.end.known ? heat.end.value : undefined));
  return { points, phaseEnds, slowMinutes: slow };
}

function limitOf(
  limit: number | undefined,
  heat: HeatRun,
  timed: readonly TimeStep[],
  beyond: WarmingPhase | undefined,
): MixingOutcome['limitAfter'] {
  if (limit === undefined || !Number.isFinite(limit)) return unknown('no temperature was asked for');
  if (!heat.end.known) return heat.end;
  let clock = 0;
  for (const [index, step] of timed.entries()) {
    const start = heat.starts[index];
    const minutes = start && minutesToReach(start.warming, start.celsius, limit);
    if (minutes !== undefined && minutes <= step.minutes) {
      return known({ minutes: clock + minutes, atLastSpeed: false }, 'common practice');
    }
    clock += step.minutes;
  }
  const minutes = beyond && minutesToReach(beyond, heat.end.value, limit);
  return minutes === undefined
    ? unknown('at the last speed the dough never gets that warm')
    : known({ minutes: clock + minutes, atLastSpeed: true }, 'common practice');
}

function firstReason(values: readonly Known<number>[]): string | undefined {
  for (const value of values) if (!value.known) return value.reason;
  return undefined;
}
