import type { Analysis } from '../analysis/analysis.ts';
import { limitOf, type MixAnalysis } from '../analysis/mix-analysis.ts';
import { sharedMinutes } from '../analysis/trial-programme.ts';
import { comparedReadings, type TrialAnalysis, type TrialReading, trialsOf } from '../analysis/trials.ts';
import { isTaken } from '../calc/calibration/calibration-quantities.ts';
import type { Known } from '../calc/known.ts';
import type { MixingStage } from '../calc/mixing/development.ts';
import type { MixerData } from '../calc/mixing/mixer.ts';
import type { MinutesBand, MixingPoint } from '../calc/mixing/mixing.ts';
import { celsiusInStep, hottestDough } from '../calc/mixing/mixing-course.ts';
import type { MixingPhase } from '../calc/mixing/mixing-programme.ts';
import { phaseTimes } from '../calc/mixing/phase-times.ts';
import type { Scope } from '../model/scope.ts';
import { elementAt } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';

/** A mixing programme over its minutes, rests included, as plain data for a chart. What is not known is absent. */
export interface ProgrammeCurve {
  readonly mixer: string;
  /** Line of the `mix` header, counted in the block of the formula. */
  readonly line: number;
  readonly programmeMinutes: number;
  readonly targetCelsius: number;
  /** Above this the dough is too warm; from `tooWarm` on it is, at the last speed where that lies past the end. */
  readonly limitCelsius: number;
  readonly tooWarm?: { readonly minutes: number; readonly atLastSpeed: boolean };
  /** When the dough is mixed as wished: the minute to stop at, at the last speed where that lies past the end. */
  readonly bestStopMinutes?: number;
  readonly points: readonly CurvePoint[];
  /** What goes on when: speeds, rests, work by hand, and what goes in at a minute (start and end alike). */
  readonly phases: readonly CurvePhase[];
  /** When the dough is developed, lets down and breaks down; those past the end hold if the last speed ran on. */
  readonly bands: readonly CurveBand[];
  readonly readings: readonly CurveReading[];
  /** Why there is no curve of temperature, or of development. */
  readonly noCelsius?: Message;
  readonly noDevelopment?: Message;
}

/** The dough at a minute: temperature in °C and development (1 = fully developed), each with its band. */
export interface CurvePoint {
  readonly minutes: number;
  readonly celsius?: number;
  readonly celsiusLow?: number;
  readonly celsiusHigh?: number;
  readonly development?: number;
  readonly developmentLow?: number;
  readonly developmentHigh?: number;
  readonly stage?: MixingStage;
}

export interface CurvePhase {
  readonly kind: 'load' | 'add' | 'speed' | 'rest' | 'knead' | 'fold' | 'stir';
  /** Speed 2, rest, add salt and yeast. */
  readonly title: Message;
  /** The number of its speed, where it is one. */
  readonly speed?: number;

  readonly line: number;
  readonly startMinutes: number;
  readonly endMinutes: number;
}

export interface CurveBand {
  readonly kind: 'developed' | 'let-down' | 'breakdown';
  readonly lowMinutes: number;
  readonly expectedMinutes: number;
  readonly highMinutes: number;
  /** Reached only if the last speed ran on past the end of the programme. */
  readonly atLastSpeed: boolean;
}

/** A thermometer reading of a trial of the same formula. */
export interface CurveReading {
  readonly trial: string;
  readonly minutes: number;
  readonly celsius: number;
  /** How far that was off what is computed for its own day, °C; absent where nothing can be computed of that day. */
  readonly offCelsius?: number;
  readonly stage?: string;
}

/**
 * The course of one programme of a formula (the one that mixes its dough, unless `mix` names another), ready to be drawn:
 * temperature and development with their bands, phases, the bands of let-down and breakdown, and the readings of the
 * formula’s trials. Minutes run from the start of mixing. Undefined where no programme can be run.
 */
export function programmeCurve(
  analysis: Analysis,
  scope: Scope,
  mix: Known<MixAnalysis, Message> = analysis.doughMix,
): ProgrammeCurve | undefined {
  if (!mix.known) return undefined;
  const run = mix.value;
  const { outcome } = run;
  const isDough = analysis.doughMix.known && analysis.doughMix.value === run;
  return {
    mixer: run.mixer.name,
    line: elementAt(analysis.resolved.model.mixes, run.index).headerLine,
    programmeMinutes: outcome.programmeMinutes,
    targetCelsius: run.targetCelsius,
    limitCelsius: limitOf(run),
    ...(outcome.limitAfter.known ? { tooWarm: outcome.limitAfter.value } : {}),
    ...(outcome.wishedAfter.known ? { bestStopMinutes: outcome.wishedAfter.value.expected } : {}),
    points: sampled(outcome.points).map((point) => curvePoint(point, outcome.band)),
    phases: curvePhases(run),
    bands: [
      ...bandOf('developed', outcome.developedAfter),
      ...bandOf('let-down', outcome.letDownAfter),
      ...bandOf('breakdown', outcome.breakdownAfter),
    ],
    readings: isDough ? readingsOf(run, analysis, scope) : [],
    ...(outcome.endCelsius.known ? {} : { noCelsius: outcome.endCelsius.reason }),
    ...(outcome.development.known ? {} : { noDevelopment: outcome.development.reason }),
  };
}

/** Between the two ends of a stretch the temperature bends and the rest is straight: a few points draw both. */
function sampled(points: readonly MixingPoint[]): MixingPoint[] {
  const drawn: MixingPoint[] = [];
  for (const [index, point] of points.entries()) {
    drawn.push(point);
    const next = points[index + 1];
    const minutes = next === undefined ? 0 : next.minutes - point.minutes;
    const pieces = Math.min(most, Math.ceil(minutes / pieceMinutes));
    for (let piece = 1; next !== undefined && piece < pieces; piece++)
      drawn.push(between(point, next, piece / pieces));
  }
  return drawn;
}

const pieceMinutes = 0.5;
const most = 24;

function between(left: MixingPoint, right: MixingPoint, part: number): MixingPoint {
  const at = (from: number | undefined, to: number | undefined): number | undefined =>
    from === undefined || to === undefined ? undefined : from + part * (to - from);
  const minutes = at(left.minutes, right.minutes)!;
  const celsius = left.start === undefined ? undefined : celsiusInStep(left.start, minutes - left.minutes);
  const celsiusBand = at(left.celsiusBand, right.celsiusBand);
  const development = at(left.development, right.development);
  return {
    minutes,
    ...(celsius === undefined ? {} : { celsius }),
    ...(celsiusBand === undefined ? {} : { celsiusBand }),
    ...(development === undefined ? {} : { development }),
  };
}

function curvePoint(point: MixingPoint, band: number): CurvePoint {
  const { minutes, celsius, celsiusBand = 0, development, stage } = point;
  return {
    minutes,
    ...(celsius === undefined
      ? {}
      : {
          celsius,
          celsiusLow: Math.max(0, celsius - celsiusBand),
          celsiusHigh: Math.min(hottestDough, celsius + celsiusBand),
        }),
    ...(development === undefined
      ? {}
      : {
          development,
          // A dough that needs so much more or less work is so much less or more developed.
          developmentLow: development / (1 + band),
          developmentHigh: development / (1 - band),
        }),
    ...(stage === undefined ? {} : { stage }),
  };
}

/** What goes on in a programme when, one after another. */
export function curvePhases({ input, phaseLines }: MixAnalysis): CurvePhase[] {
  const times = phaseTimes(input.phases);
  return input.phases.map(
    (phase, index): CurvePhase => ({
      kind: phase.kind,
      title: titleOf(phase),
      ...(phase.kind === 'speed' ? { speed: phase.number } : {}),
      line: elementAt(phaseLines, index),
      ...elementAt(times, index),
    }),
  );
}

function titleOf(phase: MixingPhase): Message {
  if ('portions' in phase) {
    const names = [...new Set(phase.portions.map((portion) => portion.label))];
    return message(`phase.${phase.kind}`, { names });
  }
  return phase.kind === 'speed'
    ? message('phase.speed', { number: phase.number })
    : message(`phase.${phase.kind}`);
}

function bandOf(kind: CurveBand['kind'], band: Known<MinutesBand, Message>): CurveBand[] {
  if (!band.known) return [];
  const { low, expected, high, atLastSpeed } = band.value;
  return [{ kind, lowMinutes: low, expectedMinutes: expected, highMinutes: high, atLastSpeed }];
}

function readingsOf(run: MixAnalysis, analysis: Analysis, scope: Scope): CurveReading[] {
  return comparableTrials(run.input.mixer, run.input.phases, analysis, scope).flatMap((one) => {
    const predicted = new Map(
      comparedReadings(one.analysis).map(({ line, predictedCelsius }) => [line, predictedCelsius]),
    );
    return one.readings.filter(isTaken).map(({ line, minutes, celsius, stage }): CurveReading => {
      const computed = predicted.get(line);
      return {
        ...{ trial: one.trial, minutes, celsius },
        ...(computed?.known === true ? { offCelsius: celsius - computed.value } : {}),
        ...(stage === undefined ? {} : { stage }),
      };
    });
  });
}

/** A trial by its date and words, and those of its readings that can be set beside a programme. */
export interface ComparableTrial {
  readonly trial: string;
  readonly analysis: TrialAnalysis;
  readonly readings: readonly TrialReading[];
}

/** The trials whose readings can be set beside a programme: those of another mixer, or of minutes that ran otherwise, cannot. */
export function comparableTrials(
  mixer: MixerData,
  phases: readonly MixingPhase[],
  analysis: Analysis,
  scope: Scope,
): ComparableTrial[] {
  return trialsOf(analysis, scope).flatMap((one): ComparableTrial[] => {
    const { model, mix } = one;
    const trial = [model.header.date, model.header.words].filter((part) => part !== undefined).join(', ');
    const isKept = mix.known && mix.value.isKept;
    const isSameMixer = !isKept || mix.value.input.mixer === mixer;
    const shared = isKept ? sharedMinutes(mix.value.input.phases, phases) : Number.POSITIVE_INFINITY;
    const readings = one.readings.filter(({ minutes }) => isSameMixer && minutes <= shared + 1e-6);
    return readings.length === 0 ? [] : [{ trial, analysis: one, readings }];
  });
}
