import { minutesToReach, temperatureAfter } from '../heat/warming.ts';
import { unsureAfter } from '../heat/warmth-band.ts';
import { type DevelopmentTimes, letDownPart, type MixingStage, stageOf } from './development.ts';
import type { HeatRun } from './mixing-heat.ts';
import { countedRate, type Programme, type TimeStep } from './mixing-programme.ts';
import { minutesToWear, wearMinutes } from './wear.ts';

/** The dough at one moment of its programme. What is absent is not known. */
export interface MixingPoint {
  /** Minutes of the programme, rests included. */
  readonly minutes: number;
  /** 0 to 45 °C; absent also where it would be hotter than any dough. */
  readonly celsius?: number;
  /** How far the temperature may be off by what is not known of the mixer, either way, °C. */
  readonly celsiusBand?: number;
  readonly slowMinutes?: number;
  /** D: slow minutes done over those that full development needs. */
  readonly development?: number;
  /** The part of the gap from developed (0) to broken (1) that is worn off. */
  readonly worn?: number;
  readonly stage?: MixingStage;
  /** How its temperature goes on from here; its own may be virtual, below 0 °C, while ice melts. */
  readonly start?: StepStart;
}

/** The dough at the end of a line of the programme. */
export interface PhaseEnd extends MixingPoint {
  readonly phase: number;
}

/** No dough is mixed warmer than this, °C: yeast is dead and the starch begins to swell. Common practice, no source. */
export const hottestDough = 45;

/** The temperature some minutes into a step, °C, as a thermometer shows it; undefined beyond what a dough can be. */
export function celsiusInStep(start: NonNullable<StepStart>, minutes: number): number | undefined {
  return shownCelsius(temperatureAfter(start.warming, start.celsius, minutes));
}

/** What a thermometer shows: while ice melts the dough stands at 0 °C; undefined beyond what a dough can be. */
export function shownCelsius(celsius: number): number | undefined {
  return celsius > hottestDough ? undefined : Math.max(0, celsius);
}

/** How far the gluten has come: its two clocks. */
export interface GlutenState {
  development: number;
  worn: number;
}

/** How a step of a programme starts, as its heat says; absent where no temperature is known, and then it counts as at 27 °C. */
export type StepStart = HeatRun['starts'][number];

/** What may be off: a factor on the time to develop and on the gap, and the part of slack work that does not count. */
export interface Doubt {
  readonly scale: number;
  readonly slackPart: number;
}

export const expectedCourse: Doubt = { scale: 1, slackPart: 0.5 };

// Moves the gluten on by a step. Wear sets in when the dough is developed, and goes by its temperature at that moment.
function work(state: GlutenState, step: TimeStep, start: StepStart, minutes: number, doubt: Doubt): void {
  const { times } = step;
  const rate = countedRate(step, doubt.slackPart);
  if (times === undefined || !(rate > 0)) return;
  const untilDeveloped = minutesToDevelop(state, times, rate, doubt);
  state.development += (minutes * rate) / (times.slowMinutesToDeveloped * doubt.scale);
  const over = minutes - untilDeveloped;
  if (!(over > 0)) return;
  state.worn +=
    (step.wearRate * wearAfter(start, untilDeveloped, over)) / (times.wearToBreakdown * doubt.scale);
}

function minutesToDevelop(
  { development }: GlutenState,
  times: DevelopmentTimes,
  rate: number,
  { scale }: Doubt,
): number {
  return (Math.max(0, 1 - development) * times.slowMinutesToDeveloped * scale) / rate;
}

function wearAfter(start: StepStart, fromMinute: number, minutes: number): number {
  if (start === undefined) return minutes;
  return wearMinutes(start.warming, temperatureAfter(start.warming, start.celsius, fromMinute), minutes);
}

/** When a dough is developed as wished, developed, let down and broken, minutes of the programme; absent: never. */
export interface Moments {
  wished?: number | undefined;
  developed?: number | undefined;
  letDown?: number | undefined;
  breakdown?: number | undefined;
}

/** The moments of a programme whose timed steps start so, under a doubt. */
export function momentsOf(
  steps: readonly TimeStep[],
  starts: readonly StepStart[],
  wished: number,
  doubt: Doubt,
): Moments {
  const moments: Moments = {};
  const state: GlutenState = { development: 0, worn: 0 };
  let clock = 0;
  for (const [index, step] of steps.entries()) {
    const rate = countedRate(step, doubt.slackPart);
    const { times } = step;
    if (times !== undefined && rate > 0) {
      const perMinute = rate / (times.slowMinutesToDeveloped * doubt.scale);
      const reach = (development: number): number | undefined => {
        const minutes = (development - state.development) / perMinute;
        return minutes <= step.minutes ? clock + Math.max(0, minutes) : undefined;
      };
      moments.wished ??= reach(wished);
      moments.developed ??= reach(1);
      const start = starts[index];
      const until = minutesToDevelop(state, times, rate, doubt);
      const wear = (part: number): number | undefined => {
        if (!(until <= step.minutes) || !(step.wearRate > 0)) return undefined;
        const wanted = (Math.max(0, part - state.worn) * times.wearToBreakdown * doubt.scale) / step.wearRate;
        const left = step.minutes - until;
        const minutes = minutesFor(start, until, wanted, left);
        return minutes === undefined ? undefined : clock + until + minutes;
      };
      moments.letDown ??= wear(letDownPart);
      if (moments.letDown !== undefined) moments.breakdown ??= wear(1);
      if (moments.breakdown !== undefined && moments.wished !== undefined) break;
      work(state, step, start, step.minutes, doubt);
    }
    clock += step.minutes;
  }
  return moments;
}

function minutesFor(start: StepStart, fromMinute: number, wanted: number, most: number): number | undefined {
  if (start === undefined) return wanted <= most ? wanted : undefined;
  return minutesToWear(
    start.warming,
    temperatureAfter(start.warming, start.celsius, fromMinute),
    wanted,
    most,
  );
}

/** What a course tells: the dough at both ends of every stretch, and what of it each line of the programme leaves. */
export interface Course {
  readonly points: readonly MixingPoint[];
  readonly phaseEnds: readonly PhaseEnd[];
  readonly slowMinutes: number;
}

/** Runs the two clocks of the gluten along the temperatures of a programme, as expected. */
export function courseOf(
  steps: Programme['steps'],
  heat: HeatRun,
  withRate: boolean,
  withCurve: boolean,
): Course {
  const points: MixingPoint[] = [];
  const phaseEnds: PhaseEnd[] = [];
  const state: GlutenState = { development: 0, worn: 0 };
  let [clock, slow, timed, unsure] = [0, 0, 0, 0];
  let begun = false;
  const point = (celsius: number | undefined): MixingPoint => {
    const made: { -readonly [K in keyof MixingPoint]: MixingPoint[K] } = { minutes: clock };
    const shown = celsius === undefined ? undefined : shownCelsius(celsius);
    if (shown !== undefined) {
      made.celsius = shown;
      made.celsiusBand = unsure;
    }
    if (withRate) made.slowMinutes = slow;
    if (withRate && withCurve && begun) {
      made.development = state.development;
      made.worn = state.worn;
      made.stage = stageOf(state.development, state.worn);
    }
    return made;
  };
  // A curve that gets hotter than a dough can be ends where it does so.
  const stopAtHottest = (start: NonNullable<StepStart>, step: TimeStep): void => {
    const minutes = minutesToReach(start.warming, start.celsius, hottestDough);
    if (minutes === undefined || !(minutes > 0 && minutes < step.minutes)) return;
    const before: GlutenState = { ...state };
    const [clockBefore, slowBefore, unsureBefore] = [clock, slow, unsure];
    clock += minutes;
    slow += countedRate(step) * minutes;
    work(state, step, start, minutes, expectedCourse);
    unsure = unsureAfter({ ...step, minutes }, start.warming, unsure);
    points.push(point(hottestDough));
    Object.assign(state, before);
    [clock, slow, unsure] = [clockBefore, slowBefore, unsureBefore];
  };
  for (const step of steps) {
    if (step.kind === 'add') {
      const next = heat.starts[timed];
      const ended = heat.starts.length === timed ? heat.endsAtCelsius : undefined;
      phaseEnds.push({ ...point(next?.celsius ?? ended), phase: step.phase });
      continue;
    }
    const start = heat.starts[timed];
    timed++;
    if (step.times !== undefined) begun = true;
    const first = point(start?.celsius);
    points.push(start === undefined || first.celsius === undefined ? first : { ...first, start });
    if (start !== undefined) stopAtHottest(start, step);
    work(state, step, start, step.minutes, expectedCourse);
    clock += step.minutes;
    slow += countedRate(step) * step.minutes;
    if (start !== undefined) unsure = unsureAfter(step, start.warming, unsure);
    const end = point(start && temperatureAfter(start.warming, start.celsius, step.minutes));
    points.push(end);
    if (phaseEnds.at(-1)?.phase === step.phase) phaseEnds.pop();
    phaseEnds.push({ ...end, phase: step.phase });
  }
  if (points.length === 0 && phaseEnds.length > 0) points.push(point(heat.endsAtCelsius));
  return { points, phaseEnds, slowMinutes: slow };
}
