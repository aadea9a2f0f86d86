import { minutesToReach, temperatureAfter } from '../heat/warming.ts';
import { type Known, known, unknown } from '../known.ts';
import { type DevelopmentTimes, degreesOfMixing, type MixingStage, whyNoCurve } from './development.ts';
import {
  celsiusInStep,
  courseOf,
  type Doubt,
  expectedCourse,
  hottestDough,
  type MixingPoint,
  type Moments,
  momentsOf,
  type PhaseEnd,
  type StepStart,
  shownCelsius,
} from './mixing-course.ts';
import { type HeatPlan, type HeatRun, planHeat, runHeat } from './mixing-heat.ts';
import { type MixingInput, type Programme, type TimeStep, takeApart } from './mixing-programme.ts';

export type { MixingPoint, PhaseEnd } from './mixing-course.ts';
export { hottestDough } from './mixing-course.ts';

import { type Message, message } from '../../words/message.ts';

/** When something happens, minutes of the programme with rests, as a band. */
export interface MinutesBand {
  readonly low: number;
  readonly expected: number;
  readonly high: number;
  /** Expected only if the last speed ran on past the end of the programme. */
  readonly atLastSpeed: boolean;
}

/** When the dough passes a temperature, minutes of the programme. */
export interface LimitPassed {
  readonly minutes: number;
  /** Only if the last speed ran on past the end of the programme. */
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
  readonly slowMinutes: Known<number, Message>;
  /** 0 to 45 °C; unknown, with the reason, where the dough would be hotter than that. */
  readonly endCelsius: Known<number, Message>;
  /** How far the end temperature may be off by what is not known of the mixer, either way, °C. */
  readonly endCelsiusBand: number;
  /** From this minute to its end the dough would be hotter than any dough is mixed; absent where it is not. */
  readonly hotAfterMinutes?: number;
  /** Degrees that working and the room bring, additions not counted, °C. */
  readonly warmedCelsius: Known<number, Message>;
  readonly development: Known<number, Message>;
  /** D at the end may lie between these, by the band. */
  readonly developmentBand: Known<{ readonly low: number; readonly high: number }, Message>;
  readonly stage: Known<MixingStage, Message>;
  /** Slow minutes that the dough as it is at the end needs, and its gap from developed to broken. */
  readonly times: Known<DevelopmentTimes, Message>;
  /** The degree of mixing wished, as D. */
  readonly wishedDevelopment: number;
  /** When the dough is developed as wished: the minute to stop at. */
  readonly wishedAfter: Known<MinutesBand, Message>;
  readonly developedAfter: Known<MinutesBand, Message>;
  readonly letDownAfter: Known<MinutesBand, Message>;
  readonly breakdownAfter: Known<MinutesBand, Message>;
  /** From when on the dough is above the limit asked for, up to its end; or when it will be at the last speed. */
  readonly limitAfter: Known<LimitPassed, Message>;
  readonly band: number;
  /** How the dough would start if the last speed just went on past the end; absent where its heat is not known. */
  readonly goingOn?: NonNullable<StepStart>;
  readonly notes: readonly Message[];
}

/**
 * Runs a mixing programme: temperature by dT/dt = H − (T − T_around)/τ in closed form, additions by balance of heat with
 * the heat of hydration, development in slow minutes, and from full development on wear by speed and warmth. Defaults are
 * common practice. Never throws, never NaN: what cannot be told is a value with its reason.
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

/** A programme made ready to be run at several temperatures of its water. Never throws. */
export function prepareMixing(input: MixingInput): PreparedMixing {
  const programme = takeApart(input);
  return { input, programme, heat: planHeat(input, programme) };
}

/** Runs a programme with its tempered water at `waterCelsius`; where that is absent, at what its portions say. */
export function runMixing(prepared: PreparedMixing, waterCelsius?: number): MixingOutcome {
  const { input, programme } = prepared;
  const noCurve = whyNoCurve(input.curve);
  const timed = programme.steps.filter((step) => step.kind === 'time');
  const noRate = firstReason(timed.map((step) => step.rate));
  const heat = runHeat(prepared.heat, waterCelsius);
  const band = bandOf(input, timed);
  const scales = scalesOf(input, band);
  const run = courseOf(programme.steps, heat, noRate === undefined, noCurve === undefined);
  const last = run.points.at(-1);
  const programmeMinutes = timed.reduce((sum, step) => sum + step.minutes, 0);
  const lastTimes = timed.findLast((step) => step.times !== undefined)?.times;
  const wished = wishOf(input);
  const why = noCurve ?? noRate;
  const tell = <T>(value: T | undefined, otherwise: Message): Known<T, Message> => {
    if (why !== undefined) return unknown(why);
    return value === undefined ? unknown(otherwise) : known(value, 'common practice');
  };
  const noDough = timed.some((step) => step.working && step.times !== undefined)
    ? message('mixing.too-gentle')
    : message('mixing.never-together');
  const steps = [...timed, ...programme.beyond];
  const later = beyondStarts(prepared.heat, heat, programme.beyond);
  const starts = [...heat.starts, ...later];
  const doubts: readonly Doubt[] = [
    expectedCourse,
    { scale: scales.low, slackPart: 0 },
    { scale: scales.high, slackPart: 1 },
  ];
  const [expected, low, high] =
    why === undefined ? doubts.map((doubt) => momentsOf(steps, starts, wished, doubt)) : [];
  const crossing = (event: keyof Moments): Known<MinutesBand, Message> => {
    if (why !== undefined) return unknown(why);
    const [at, from, to] = [expected?.[event], low?.[event], high?.[event]];
    if (at === undefined || from === undefined || to === undefined) return unknown(noDough);
    return known(
      { low: from, expected: at, high: to, atLastSpeed: at > programmeMinutes + 1e-9 },
      'common practice',
    );
  };
  const hot = hotAfter(heat, timed);
  const shown = heat.endsAtCelsius === undefined ? undefined : shownCelsius(heat.endsAtCelsius);
  return {
    points: run.points,
    phaseEnds: run.phaseEnds,
    programmeMinutes,
    workedMinutes: timed.reduce((sum, step) => sum + (step.working ? step.minutes : 0), 0),
    slowMinutes: noRate === undefined ? known(run.slowMinutes, 'common practice') : unknown(noRate),
    endCelsius: !heat.end.known
      ? heat.end
      : shown === undefined
        ? unknown(message('mixing.too-hot', { limitCelsius: hottestDough }))
        : { ...heat.end, value: shown },
    endCelsiusBand: last?.celsiusBand ?? 0,
    ...(hot === undefined ? {} : { hotAfterMinutes: hot }),
    warmedCelsius: heat.warmed,
    development: tell(last?.development, noDough),
    developmentBand: tell(developmentBand(timed, run.slowMinutes, last?.development, scales), noDough),
    stage: tell(last?.stage, noDough),
    times: tell(lastTimes, noDough),
    wishedDevelopment: wished,
    wishedAfter: crossing('wished'),
    developedAfter: crossing('developed'),
    letDownAfter: crossing('letDown'),
    breakdownAfter: crossing('breakdown'),
    limitAfter: limitOf(input.limitCelsius, prepared.heat, heat, timed),
    band,
    ...(later[0] === undefined ? {} : { goingOn: later[0] }),
    notes: [...(input.curve.known ? input.curve.value.notes : []), ...programme.notes],
  };
}

function wishOf({ wishedDevelopment }: MixingInput): number {
  const wished = wishedDevelopment ?? degreesOfMixing.improved;
  return wished > 0 && wished < 100 ? wished : degreesOfMixing.improved;
}

/** Dough that needs so much more or less work is so much less or more developed; slack work may count in full or not at all. */
function developmentBand(
  timed: readonly TimeStep[],
  slowMinutes: number,
  development: number | undefined,
  scales: { readonly low: number; readonly high: number },
): { low: number; high: number } | undefined {
  if (development === undefined) return undefined;
  const slack = timed.reduce(
    (sum, step) => sum + (step.rate.known ? 0.5 * step.slack * step.rate.value * step.minutes : 0),
    0,
  );
  const share = slowMinutes > 0 ? slack / slowMinutes : 0;
  return {
    low: (development * (1 - share)) / scales.high,
    high: (development * (1 + share)) / scales.low,
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
  // What is left is the flour’s, and the error of the fit where one is told: never less than that.
  const own = Math.max(0, ...working.map((step) => step.rateWithin ?? 0));
  const judged = calibrated ? Math.sqrt(flour * flour - usualBand ** 2 / 2 + own * own) : flour;
  // Flour and water are wetter than any dough while only a part of the flour is in: what counts is how wet they end.
  const beyond = working.at(-1)?.times?.beyondKnownPercent ?? 0;
  return judged + Math.min(mostByWetness, beyond * bandByPoint);
}

/** Trials that see more than this many times as much, or as little, tell of a slip rather than of a dough. */
const mostSeen = 4;

/**
 * The least and the most of the work that the dough may need, beside what is worked out: by the band, and as far as trials of one
 * flour on one mixer saw it. That may be the flour’s or the mixer’s, so it moves no expected figure.
 */
function scalesOf({ seenDevelopment: seen }: MixingInput, band: number): { low: number; high: number } {
  const [low, high] = [1 - band, 1 + band];
  if (seen === undefined) return { low, high };
  const { least, most = Math.max(1, least) } = seen;
  const slowest = least > 0 ? 1 / least : most < 1 ? 1 / most : 1;
  return {
    low: Math.min(low, Math.max(1 / mostSeen, 1 / most)),
    high: Math.max(high, Math.min(mostSeen, slowest)),
  };
}

const usualBand = 0.2;
/** How much wider the band is for each point of water beyond the wettest dough that is known; our own choice. */
const bandByPoint = 0.01;
const mostByWetness = 0.2;

/** The temperature of the dough at a minute of the programme, °C; unknown outside of it. */
export function celsiusAt(outcome: MixingOutcome, minutes: number): Known<number, Message> {
  const { points, endCelsius } = outcome;
  const after = points.findIndex((point) => point.minutes >= minutes);
  const right = points[after];
  const left = points[after - 1];
  const inside = left?.start === undefined ? undefined : celsiusInStep(left.start, minutes - left.minutes);
  const celsius = left?.start === undefined ? right?.celsius : inside;
  if (celsius !== undefined && right !== undefined) return known(celsius, 'common practice');
  return endCelsius.known ? unknown(message('mixing.over')) : endCelsius;
}

/** How far the dough is developed at a minute of the programme; unknown outside of it, or where there is no curve. */
export function developmentAt(
  { points, development }: MixingOutcome,
  minutes: number,
): Known<number, Message> {
  if (!development.known) return development;
  const after = points.findIndex((point) => point.minutes >= minutes);
  const [left, right] = [points[after - 1], points[after]];
  if (right?.development === undefined) return unknown(message('mixing.over'));
  const span = right.minutes - (left?.minutes ?? 0);
  if (left?.development === undefined || !(span > 0)) return known(right.development, development.provenance);
  // Within a stretch the speed and the dough are the same, so it goes straight.
  const part = (minutes - left.minutes) / span;
  return known(left.development + part * (right.development - left.development), development.provenance);
}

/** How the steps past the end of a programme start: where its last speed just goes on. */
function beyondStarts(
  { beyond }: HeatPlan,
  { endsAtCelsius }: HeatRun,
  steps: readonly TimeStep[],
): StepStart[] {
  if (beyond === undefined || endsAtCelsius === undefined) return [];
  let celsius = endsAtCelsius;
  return steps.map(({ minutes }) => {
    const start = { celsius, warming: beyond };
    celsius = temperatureAfter(beyond, celsius, minutes);
    return start;
  });
}

/** From when on the dough is hotter than any dough is mixed, up to its end; undefined where it is not so at the end. */
function hotAfter(heat: HeatRun, timed: readonly TimeStep[]): number | undefined {
  const { endsAtCelsius } = heat;
  if (endsAtCelsius === undefined || endsAtCelsius <= hottestDough) return undefined;
  return aboveSince(heat, timed, hottestDough) ?? 0;
}

/** From which minute on the dough stays above a temperature up to the end of its programme; undefined where it ends below. */
function aboveSince(heat: HeatRun, timed: readonly TimeStep[], limit: number): number | undefined {
  let clock = 0;
  let since: number | undefined;
  for (const [index, step] of timed.entries()) {
    const start = heat.starts[index];
    if (start === undefined) since = undefined;
    else {
      if (start.celsius <= limit) since = undefined;
      const minutes = minutesToReach(start.warming, start.celsius, limit);
      if (minutes !== undefined && minutes <= step.minutes) since ??= clock + minutes;
      if (temperatureAfter(start.warming, start.celsius, step.minutes) <= limit) since = undefined;
    }
    clock += step.minutes;
  }
  return since;
}

function limitOf(
  limit: number | undefined,
  plan: HeatPlan,
  heat: HeatRun,
  timed: readonly TimeStep[],
): MixingOutcome['limitAfter'] {
  if (limit === undefined || !Number.isFinite(limit)) return unknown(message('mixing.no-limit'));
  const { end, endsAtCelsius } = heat;
  if (!end.known || endsAtCelsius === undefined) return end.known ? unknown(message('mixing.no-end')) : end;
  if (endsAtCelsius > limit)
    return known({ minutes: aboveSince(heat, timed, limit) ?? 0, atLastSpeed: false }, 'common practice');
  const minutes = plan.beyond && minutesToReach(plan.beyond, endsAtCelsius, limit);
  const programme = timed.reduce((sum, step) => sum + step.minutes, 0);
  return minutes === undefined
    ? unknown(message('mixing.never-so-warm'))
    : known({ minutes: programme + minutes, atLastSpeed: true }, 'common practice');
}

function firstReason(values: readonly Known<number, Message>[]): Message | undefined {
  for (const value of values) if (!value.known) return value.reason;
  return undefined;
}
