import type { Analysis } from '../analysis/analysis.ts';
import { flourRows } from '../analysis/flour-axis.ts';
import type { AxisRows, MapAxis } from '../analysis/map-axis.ts';
import { limitOf, type MixAnalysis } from '../analysis/mix-analysis.ts';
import { speedRows } from '../analysis/speed-axis.ts';
import { portionsOf } from '../analysis/trial-weights.ts';
import { waterRows } from '../analysis/water-axis.ts';
import { type Known, known, unknown } from '../calc/known.ts';
import type { DegreeOfMixing, MixingStage } from '../calc/mixing/development.ts';
import { type DoughZone, zoneOf } from '../calc/mixing/dough-zone.ts';
import type { MinutesBand, MixingOutcome } from '../calc/mixing/mixing.ts';
import type { MixingPhase } from '../calc/mixing/mixing-programme.ts';
import type { Scope } from '../model/scope.ts';
import { type Message, message } from '../words/message.ts';
import { type CurvePhase, comparableTrials, curvePhases } from './programme-curve.ts';

/** What a map is asked for; without it minutes against water. */
export interface MapRequest {
  readonly against?: MapAxis;
  /** The second flour of a map against flour, by name. */
  readonly flour?: string;
  /** The last minute of the map; above 0. */
  readonly lastMinute?: number;
}

/**
 * The map of the gap as plain data: what a dough is by the minute at which its mixer is stopped, for doughs that differ in one thing.
 * Minutes run as the programme is written, rests included, and past its end as if the last speed went on. Each row has the water
 * drawn for it as its own sheet would say.
 */
export interface GapMap {
  readonly formula: string;
  readonly mixer: string;
  /** Line of the `mix` header, counted in the block of the formula. */
  readonly line: number;
  readonly against: MapAxis;
  /** The two flours, of which the rows have the share of the second. */
  readonly flours?: readonly [from: string, to: string];
  readonly programmeMinutes: number;
  /** What takes time in the programme, one after another. */
  readonly phases: readonly CurvePhase[];
  readonly lastMinute: number;
  readonly targetCelsius: number;
  /** The temperature from which on a dough is too warm. */
  readonly limitCelsius: number;
  /** The degree of mixing that the formula wishes, where it is another than an improved mix. */
  readonly wish?: DegreeOfMixing;
  /** From the lowest value up; one of them is the formula itself. */
  readonly rows: readonly GapRow[];
  /** The formula as it is written, where its programme ends. */
  readonly mark: GapPoint & { readonly stage: MixingStage };
  /** The formula as its file has it, where water or minutes of it are tried. */
  readonly before?: GapPoint;
  readonly trials: readonly TrialPoint[];
  readonly notes: readonly Message[];
}

/** The dough of one row by minutes. What never comes, or is not known, is absent; figures past the last minute of the map stand. */
export interface GapRow {
  readonly value: number;
  readonly isOwn: boolean;
  readonly developed?: MinutesBand;
  readonly letDown?: MinutesBand;
  readonly breakdown?: MinutesBand;
  /** When it is developed as the formula wishes. */
  readonly wished?: MinutesBand;
  /** From this minute on it is above the limit. */
  readonly tooWarmMinutes?: number;
  /** From developed to let-down as expected, minutes of mixing without rests: the gap. */
  readonly gapMinutes?: number;
  readonly outcome: MixingOutcome;
}

export interface GapPoint {
  readonly value: number;
  readonly minutes: number;
  readonly zone: DoughZone;
  readonly celsius?: number;
  readonly celsiusBand?: number;
}

/** A reading of a trial. */
export interface TrialPoint {
  readonly trial: string;
  readonly value: number;
  readonly minutes: number;
  /** Absent where nobody took it. */
  readonly celsius?: number;
  /** As the trial calls it. */
  readonly stage?: string;
  /** How it felt, in the words of the notation. */
  readonly feel?: readonly string[];
}

/**
 * The map of a formula, or why there is none. What trials measured is of the formula as its file has it (`inFile`), whatever is tried
 * of it.
 */
export function gapMap(
  analysis: Analysis,
  scope: Scope,
  asked: MapRequest = {},
  inFile: Analysis = analysis,
): Known<GapMap, Message> {
  const { doughMix } = analysis;
  if (!doughMix.known) return doughMix;
  const mix = doughMix.value;
  const { outcome } = mix;
  if (!(outcome.workedMinutes > 0)) return unknown(message('map.no-work'));
  if (!outcome.development.known) return outcome.development;
  if (!outcome.stage.known) return outcome.stage;
  const against = asked.against ?? 'water';
  const found = rowsOf(against, { analysis, mix }, scope, asked.flour);
  if (!found.known) return found;
  const { rows: made, flours, notes } = found.value;
  const phases = curvePhases(mix).filter(({ startMinutes, endMinutes }) => endMinutes > startMinutes);
  // A dough that forms no gluten network has no zones: it must not look as if it were not developed yet.
  const dull = made.find((row) => !row.outcome.development.known)?.outcome.development;
  const rows = made
    .filter((row) => row.outcome.development.known)
    .map(({ value, outcome: one, isOwn }): GapRow => ({ value, isOwn, ...momentsOf(one, phases) }));
  const own = rows.find(({ isOwn }) => isOwn);
  if (own === undefined) return unknown(message('map.no-water'));
  const written = against === 'water' ? inFile.solved?.hydration : undefined;
  const trials = trialPoints(against, written ?? own.value, inFile, scope);
  const before =
    inFile === analysis || !isOfSameFlours(inFile, analysis) ? undefined : pointOf(inFile, written);
  const { endCelsius, endCelsiusBand, programmeMinutes } = outcome;
  return known(
    {
      formula: analysis.resolved.model.name.text,
      mixer: mix.mixer.name,
      line: analysis.resolved.model.mixes[mix.index]?.headerLine ?? 0,
      against,
      ...(flours === undefined ? {} : { flours }),
      programmeMinutes,
      phases,
      lastMinute: asked.lastMinute ?? lastMinuteOf(own, programmeMinutes, trials),
      targetCelsius: mix.targetCelsius,
      limitCelsius: limitOf(mix),
      ...(mix.wish === undefined || mix.wish === 'improved' ? {} : { wish: mix.wish }),
      rows,
      mark: {
        value: own.value,
        minutes: programmeMinutes,
        stage: outcome.stage.value,
        zone: zoneOf(outcome.stage.value),
        ...(endCelsius.known ? { celsius: endCelsius.value, celsiusBand: endCelsiusBand } : {}),
      },
      ...(before === undefined ? {} : { before }),
      trials,
      notes: [
        ...notes,
        ...(dull === undefined || dull.known ? [] : [message('map.rows-left-out', { reason: dull.reason })]),
        ...outcome.notes,
      ],
    },
    'common practice',
  );
}

function rowsOf(
  against: MapAxis,
  base: { readonly analysis: Analysis; readonly mix: MixAnalysis },
  scope: Scope,
  flour: string | undefined,
): Known<AxisRows, Message> {
  switch (against) {
    case 'water':
      return waterRows(base);
    case 'flour':
      return flourRows(base, scope, flour);
    case 'speed':
      return speedRows(base);
  }
}

function momentsOf(outcome: MixingOutcome, phases: readonly CurvePhase[]): Omit<GapRow, 'value' | 'isOwn'> {
  const { developedAfter, letDownAfter, breakdownAfter, wishedAfter, limitAfter } = outcome;
  const [developed, letDown] = [valueIn(developedAfter), valueIn(letDownAfter)];
  const [breakdown, wished, limit] = [valueIn(breakdownAfter), valueIn(wishedAfter), valueIn(limitAfter)];
  return {
    ...(developed === undefined ? {} : { developed }),
    ...(letDown === undefined ? {} : { letDown }),
    ...(breakdown === undefined ? {} : { breakdown }),
    ...(wished === undefined ? {} : { wished }),
    ...(limit === undefined ? {} : { tooWarmMinutes: limit.minutes }),
    ...(developed === undefined || letDown === undefined
      ? {}
      : { gapMinutes: workedBetween(phases, developed.expected, letDown.expected) }),
    outcome,
  };
}

function workedBetween(phases: readonly CurvePhase[], from: number, to: number): number {
  const rested = phases.reduce((sum, { kind, startMinutes, endMinutes }) => {
    if (kind !== 'rest') return sum;
    return sum + Math.max(0, Math.min(to, endMinutes) - Math.max(from, startMinutes));
  }, 0);
  return to - from - rested;
}

function valueIn<T>(value: Known<T, Message>): T | undefined {
  return value.known ? value.value : undefined;
}

/** How far past the end a map goes at least and at most, as parts of the programme. */
const leastBeyond = 1.5;
const mostBeyond = 3;

/** As far as the formula's own gap and its trials go, within bounds; a round figure of minutes. */
function lastMinuteOf(
  { breakdown, letDown }: GapRow,
  programmeMinutes: number,
  trials: readonly TrialPoint[],
): number {
  const gone = breakdown?.high ?? letDown?.high ?? Number.POSITIVE_INFINITY;
  const shown = Math.min(programmeMinutes * mostBeyond, gone * 1.1);
  const last = Math.max(programmeMinutes * leastBeyond, shown, ...trials.map(({ minutes }) => minutes));
  const step = last > 60 ? 10 : last > 20 ? 5 : 2;
  return Math.ceil(last / step - 1e-9) * step;
}

/** The readings of the formula's trials, at the water they had; of a speed those that ran it. */
function trialPoints(against: MapAxis, own: number, inFile: Analysis, scope: Scope): TrialPoint[] {
  if (!inFile.doughMix.known) return [];
  const { input } = inFile.doughMix.value;
  // A trial that let the last speed run longer is the same programme going on.
  return comparableTrials(input.mixer, goingOn(input.phases), inFile, scope).flatMap(
    ({ trial, analysis: { mix: ran }, readings }) => {
      const wetter =
        against === 'water' && ran.known ? wetnessOf(ran.value.input.phases) - wetnessOf(input.phases) : 0;
      return readings.map(({ minutes, celsius, stage, feel }): TrialPoint => {
        const value = own + wetter;
        return {
          ...{ trial, value, minutes },
          ...(celsius === undefined ? {} : { celsius }),
          ...(stage === undefined ? {} : { stage }),
          ...(feel === undefined ? {} : { feel }),
        };
      });
    },
  );
}

/** Where a formula stands on a map of its water; undefined where that is not known. */
function pointOf({ doughMix }: Analysis, value: number | undefined): GapPoint | undefined {
  if (!doughMix.known || value === undefined || !doughMix.value.outcome.stage.known) return undefined;
  const { programmeMinutes, stage } = doughMix.value.outcome;
  return { value, minutes: programmeMinutes, zone: zoneOf(stage.value) };
}

/** Whether two states of a formula are of the same flours in the same mixer, so that they stand on one map. */
function isOfSameFlours(one: Analysis, other: Analysis): boolean {
  const floursOf = ({ solved, doughMix }: Analysis): string =>
    JSON.stringify([
      doughMix.known ? doughMix.value.mixer.name : '',
      (solved?.overall ?? []).flatMap(({ key, isFlour, fraction }) =>
        isFlour ? [[key, fraction?.toFixed(6)]] : [],
      ),
    ]);
  return floursOf(one) === floursOf(other);
}

/** Longer than any programme runs. */
const foreverSeconds = 1e7;

function goingOn(phases: readonly MixingPhase[]): MixingPhase[] {
  const last = phases.findLastIndex((phase) => !('portions' in phase));
  return phases.map((phase, index) =>
    index === last && !('portions' in phase) && phase.kind !== 'rest'
      ? { ...phase, seconds: foreverSeconds }
      : phase,
  );
}

/** Water poured as such by all flour in the bowl. */
function wetnessOf(phases: readonly MixingPhase[]): number {
  let [water, flour] = [0, 0];
  for (const portion of portionsOf(phases)) {
    if (portion.kind === 'water') water += portion.grams;
    flour += portion.flourGrams;
  }
  return flour > 0 ? water / flour : 0;
}
