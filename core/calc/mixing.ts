import { type DevelopmentTimes, letDownPart, type MixingStage, stageOf } from './development.ts';
import { believableCelsius, type HeatItem, hydrationHeat, mixedCelsius } from './heat-content.ts';
import { type Known, known, unknown } from './known.ts';
import { type FrictionScale, frictionScale, warmingIn } from './mixing-friction.ts';
import { type AddStep, type MixingInput, type TimeStep, takeApart, whyNoCurve } from './mixing-programme.ts';
import { minutesToReach, temperatureAfter, type WarmingPhase } from './warming.ts';

/** The dough at one moment of its programme. What is absent is not known. */
export interface MixingPoint {
  /** Minutes of the programme, rests included. */
  readonly minutes: number;
  readonly celsius?: number;
  readonly slowMinutes?: number;
  /** D: slow minutes done over those that full development needs. */
  readonly development?: number;
  readonly stage?: MixingStage;
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
  readonly points: readonly MixingPoint[];
  readonly phaseEnds: readonly PhaseEnd[];
  readonly programmeMinutes: number;
  /** Without rests. */
  readonly workedMinutes: number;
  readonly slowMinutes: Known<number>;
  readonly endCelsius: Known<number>;
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
  const programme = takeApart(input);
  const noCurve = whyNoCurve(input);
  const timed = programme.steps.filter((step) => step.kind === 'time');
  const noRate = firstReason(timed.map((step) => step.rate));
  const heat = runHeat(input, programme.steps, frictionScale(input, programme));
  const band = input.calibratedBand ?? (input.curve.known ? input.curve.value.band : 0.2);
  const run = samples(programme.steps, heat, noRate === undefined, noCurve === undefined);
  const last = run.points.at(-1);
  const programmeMinutes = timed.reduce((sum, step) => sum + step.minutes, 0);
  const lastTimes = timed.findLast((step) => step.times !== undefined)?.times;
  const why = noCurve ?? noRate;
  const tell = <T>(value: T | undefined, otherwise: string): Known<T> => {
    if (why !== undefined) return unknown(why);
    return value === undefined ? unknown(otherwise) : known(value, 'common practice');
  };
  const noDough = 'the programme never works flour and water together';
  const crossing = (event: MixingEvent): Known<MinutesBand> => {
    if (why !== undefined) return unknown(why);
    const steps = [...timed, ...programme.beyond];
    const at = (scale: number) => minutesUntil(event, steps, scale);
    const expected = at(1);
    const low = at(1 - band);
    const high = at(1 + band);
    if (expected === undefined || low === undefined || high === undefined) return unknown(noDough);
    return known({ low, expected, high, atLastSpeed: expected > programmeMinutes + 1e-9 }, 'common practice');
  };
  return {
    points: run.points,
    phaseEnds: run.phaseEnds,
    programmeMinutes,
    workedMinutes: timed.reduce((sum, step) => sum + (step.working ? step.minutes : 0), 0),
    slowMinutes: noRate === undefined ? known(run.slowMinutes, 'common practice') : unknown(noRate),
    endCelsius: heat.end,
    warmedCelsius: heat.warmed,
    development: tell(last?.development, noDough),
    stage: tell(last?.stage, noDough),
    times: tell(lastTimes, noDough),
    developedAfter: crossing('developed'),
    letDownAfter: crossing('let-down'),
    breakdownAfter: crossing('breakdown'),
    limitAfter: limitOf(input.limitCelsius, heat, timed, programme.beyond),
    band,
    notes: [...(input.curve.known ? input.curve.value.notes : []), ...programme.notes],
  };
}

/** The temperature of the dough at a minute of the programme, °C, read off the curve; unknown outside of it. */
export function celsiusAt(outcome: MixingOutcome, minutes: number): Known<number> {
  const after = outcome.points.findIndex((point) => point.minutes >= minutes);
  const right = outcome.points[after];
  const left = outcome.points[Math.max(0, after - 1)];
  if (!outcome.endCelsius.known) return outcome.endCelsius;
  if (right?.celsius === undefined || left?.celsius === undefined)
    return unknown('the programme is over by then');
  const span = right.minutes - left.minutes;
  const part = span > 0 ? (minutes - left.minutes) / span : 1;
  return known(left.celsius + (right.celsius - left.celsius) * part, outcome.endCelsius.provenance);
}

type MixingEvent = 'developed' | 'let-down' | 'breakdown';

interface HeatRun {
  /** Temperature at the start of each timed step and its warming, in order; undefined once it is not known. */
  readonly starts: readonly ({ readonly celsius: number; readonly warming: WarmingPhase } | undefined)[];
  readonly end: Known<number>;
  readonly warmed: Known<number>;
  readonly scale: FrictionScale;
}

// The temperatures through the programme. What is in the bowl is kept portion by portion, all at one temperature.
function runHeat(input: MixingInput, steps: readonly (TimeStep | AddStep)[], scale: FrictionScale): HeatRun {
  const starts: HeatRun['starts'][number][] = [];
  let bowl: HeatItem[] = [];
  let dry: HeatItem[] = [];
  let wet = false;
  let celsius = Number.NaN;
  let warmed = 0;
  let reason = believableCelsius(input.roomCelsius) ? undefined : 'the temperature of the room is not given';
  for (const step of steps) {
    if (step.kind === 'add') {
      const portions = step.portions.filter((portion) => portion.grams > 1e-9 && portion.grams < 1e12);
      const lacking = portions.find(
        (portion) => !believableCelsius(portion.celsius) && portion.tempered !== true,
      );
      if (lacking !== undefined) reason ??= `the temperature of ${lacking.label} is not known`;
      dry = [...dry, ...portions.filter((portion) => portion.dryFlourMoisture !== undefined)];
      wet ||= portions.some((portion) => portion.freeWaterGrams > 0);
      const heat = wet ? hydrationHeat(dry) : 0;
      if (wet) dry = [];
      const here = bowl.map((item): HeatItem => ({ ...item, celsius, frozen: false }));
      const mixed = reason === undefined ? mixedCelsius([...here, ...portions], heat) : Number.NaN;
      if (Number.isFinite(mixed)) celsius = mixed;
      bowl = [...bowl, ...portions];
      continue;
    }
    if (!step.warming.known) reason ??= step.warming.reason;
    if (reason !== undefined || bowl.length === 0) {
      starts.push(undefined);
      continue;
    }
    const warming = warmingIn(step, scale);
    starts.push({ celsius, warming });
    const after = temperatureAfter(warming, celsius, step.minutes);
    if (!Number.isFinite(after)) {
      reason = 'the numbers of the mixer lead to no temperature';
      continue;
    }
    warmed += after - celsius;
    celsius = after;
  }
  const why =
    reason ?? (Number.isFinite(celsius) ? undefined : 'nothing with a known temperature is in the bowl');
  return {
    starts,
    end: why === undefined ? known(celsius, 'common practice') : unknown(why),
    warmed: why === undefined ? known(warmed, 'common practice') : unknown(why),
    scale,
  };
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

function minutesUntil(event: MixingEvent, steps: readonly TimeStep[], scale: number): number | undefined {
  const wear = event === 'developed' ? 0 : event === 'let-down' ? letDownPart : 1;
  const state: Wear = { development: 0, worn: 0 };
  let clock = 0;
  for (const step of steps) {
    const rate = step.rate.known ? step.rate.value : 0;
    if (step.times !== undefined && rate > 0) {
      const develop = Math.max(0, 1 - state.development) * step.times.slowMinutesToDeveloped * scale;
      const wearing = Math.max(0, wear - state.worn) * step.times.slowMinutesToBreakdown * scale;
      const minutes = (develop + wearing) / rate;
      if (minutes <= step.minutes) return clock + minutes;
      work(state, step.times, rate * step.minutes, scale);
    }
    clock += step.minutes;
  }
  return undefined;
}

// Samples every step at most half a minute apart while worked, more rarely where the programme is long.
function samples(
  steps: readonly (TimeStep | AddStep)[],
  heat: HeatRun,
  withRate: boolean,
  withCurve: boolean,
): { points: MixingPoint[]; phaseEnds: PhaseEnd[]; slowMinutes: number } {
  const points: MixingPoint[] = [];
  const phaseEnds: PhaseEnd[] = [];
  const total = steps.reduce((sum, step) => sum + (step.kind === 'time' ? step.minutes : 0), 0);
  const spacing = Math.max(0.5, total / 200);
  const state: Wear = { development: 0, worn: 0 };
  let clock = 0;
  let slow = 0;
  let timed = 0;
  let begun = false;
  const point = (celsius: number | undefined): MixingPoint => ({
    minutes: clock,
    ...(celsius === undefined ? {} : { celsius }),
    ...(withRate ? { slowMinutes: slow } : {}),
    ...(withRate && withCurve && begun
      ? { development: state.development, stage: stageOf(state.development, state.worn) }
      : {}),
  });
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
    points.push(point(start?.celsius));
    const parts = Math.max(1, Math.ceil(step.minutes / (step.working ? spacing : spacing * 4)));
    const length = step.minutes / parts;
    for (let part = 1; part <= parts; part++) {
      clock += length;
      slow += rate * length;
      if (step.times !== undefined && rate > 0) work(state, step.times, rate * length, 1);
      points.push(point(start && temperatureAfter(start.warming, start.celsius, part * length)));
    }
    const end = points.at(-1);
    const previous = phaseEnds.at(-1);
    if (previous?.phase === step.phase) phaseEnds.pop();
    if (end !== undefined) phaseEnds.push({ ...end, phase: step.phase });
  }
  if (points.length === 0 && phaseEnds.length > 0)
    points.push(point(heat.end.known ? heat.end.value : undefined));
  return { points, phaseEnds, slowMinutes: slow };
}

function limitOf(
  limit: number | undefined,
  heat: HeatRun,
  timed: readonly TimeStep[],
  beyond: readonly TimeStep[],
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
  const next = beyond[0];
  const minutes = next?.warming.known
    ? minutesToReach(warmingIn(next, heat.scale), heat.end.value, limit)
    : undefined;
  return minutes === undefined
    ? unknown('at the last speed the dough never gets that warm')
    : known({ minutes: clock + minutes, atLastSpeed: true }, 'common practice');
}

function firstReason(values: readonly Known<number>[]): string | undefined {
  for (const value of values) if (!value.known) return value.reason;
  return undefined;
}
