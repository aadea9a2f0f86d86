import { limitOf, type MixAnalysis } from '../analysis/mix-analysis.ts';
import { waterWanted, withFreeWater } from '../analysis/water-wanted.ts';
import { meanCelsius } from '../calc/heat/heat-content.ts';
import type { Known, Provenance } from '../calc/known.ts';
import { prepareMixing } from '../calc/mixing/mixing.ts';
import { type BilledWater, type HeatLine, type HeatSource, mixingBill } from '../calc/mixing/mixing-bill.ts';
import { runHeat } from '../calc/mixing/mixing-heat.ts';
import type { MixingInput } from '../calc/mixing/mixing-programme.ts';
import { allPortions, type TemperedWater, withPureWater } from '../calc/mixing/mixing-water.ts';
import type { Message } from '../words/message.ts';

/** The heat of a mixing programme as plain data, for hover, totals and sheet. What is not known is absent. */
export interface HeatFacts {
  readonly targetCelsius: number;
  /** Of the dough as it leaves the mixer. */
  readonly doughCelsius?: number;
  /** Every source of heat against the finished dough; the lines sum to zero. */
  readonly bill: readonly HeatLine[];
  /** The provenance of the weakest part of the bill; absent with it. */
  readonly billProvenance?: Provenance;
  readonly comparison?: WaterComparison;
  /** The dough with its water straight from the tap. */
  readonly fromTap?: { readonly tapCelsius: number; readonly doughCelsius: number };
  /** When the dough gets too warm: past its temperature by more than is tolerated. */
  readonly tooWarm?: {
    readonly celsius: number;
    readonly atMinutes: number;
    /** Past the end of the programme; negative before it. */
    readonly leftMinutes: number;
  };
}

/** The water by the rule of thumb and by the balance of heat, term by term, °C of water. Each column sums to its water. */
export interface WaterComparison {
  readonly rows: readonly ComparisonRow[];
  readonly ruleCelsius: number;
  readonly balanceCelsius: number;
  readonly frictionCelsius: number;
  /** The factor stands in the mixer’s section; else it is that of this programme on a mild day. */
  readonly frictionGiven: boolean;
}

export interface ComparisonRow {
  readonly source:
    | 'dough'
    | 'friction'
    | 'others'
    | 'flour'
    | 'preferment'
    | 'room'
    | 'working'
    | 'hydration';
  /** Temperature of what the row is about, where it has one. */
  readonly celsius?: number;
  /** Absent: the rule does not know of it. */
  readonly ruleCelsius?: number;
  readonly balanceCelsius?: number;
}

/** All that is to be said of the heat of a programme. Runs the programme a few times: for whoever asks, not for every key. */
export function heatOf(mix: MixAnalysis): HeatFacts {
  const { water, input, targetCelsius, outcome } = mix;
  const { tapCelsius } = mix.tempering;
  const bill = mixingBill(input, water.known ? billedWater(water.value) : undefined);
  const wanted = waterWanted(mix);
  const comparison = wanted.known ? compared(mix, wanted.value) : undefined;
  const hasWater = allPortions(input).some(({ kind, grams }) => kind === 'water' && grams > 0);
  const fromTap = tapCelsius === undefined || !hasWater ? undefined : doughFrom(input, tapCelsius);
  const limit = outcome.limitAfter;
  return {
    targetCelsius,
    ...(outcome.endCelsius.known ? { doughCelsius: outcome.endCelsius.value } : {}),
    bill: bill.known ? bill.value.lines : [],
    ...(bill.known ? { billProvenance: bill.provenance } : {}),
    ...(comparison === undefined ? {} : { comparison }),
    ...(tapCelsius === undefined || !fromTap?.known
      ? {}
      : { fromTap: { tapCelsius, doughCelsius: fromTap.value } }),
    ...(limit.known
      ? {
          tooWarm: {
            celsius: limitOf(mix),
            atMinutes: limit.value.minutes,
            leftMinutes: limit.value.minutes - outcome.programmeMinutes,
          },
        }
      : {}),
  };
}

function billedWater({ effectiveCelsius, ice, tapCelsius }: TemperedWater): BilledWater {
  return ice === undefined ? { celsius: effectiveCelsius } : { celsius: effectiveCelsius, ice, tapCelsius };
}

/** The dough for water as it comes, where the programme does not tie the temperature of its water. */
function doughFrom(input: MixingInput, celsius: number): Known<number, Message> {
  const free = withPureWater({ ...input, phases: withFreeWater(input.phases) });
  return runHeat(prepareMixing(free).heat, celsius).end;
}

function compared(mix: MixAnalysis, wanted: TemperedWater): WaterComparison | undefined {
  const { rule, waterCelsius } = wanted;
  // Term by term the two can be set against each other only where a balance of heat has a water to draw.
  if (wanted.reach !== 'reachable' || waterCelsius === undefined) return undefined;
  const free = { ...mix.input, phases: mix.water.known ? mix.input.phases : withFreeWater(mix.input.phases) };
  const bill = mixingBill(free, { celsius: waterCelsius });
  if (!rule.known || !bill.known) return undefined;
  const dough = mix.targetCelsius;
  const { lines, waterKilojoulesPerKelvin } = bill.value;
  const sum = (...sources: readonly HeatSource[]): number =>
    lines.reduce((all, line) => all + (sources.includes(line.source) ? line.kilojoules : 0), 0);
  const tempered = -lines.reduce((all, line) => all + (line.source === 'water' ? 0 : line.kilojoules), 0);
  const difference = waterCelsius - dough;
  const perDegree = Math.abs(difference) > 1e-6 ? tempered / difference : waterKilojoulesPerKelvin;
  if (!(perDegree > 0)) return undefined;
  const portions = allPortions(free);
  // Water of two temperatures is more than a rule of thumb has words for.
  if (portions.some((portion) => portion.kind === 'water' && portion.tempered !== true)) return undefined;
  const flour = meanCelsius(portions, 'flour')!;
  const preferment = meanCelsius(portions, 'preferment');
  const { roomCelsius } = mix.input;
  // From zero, so that what brings nothing reads 0 and never −0.
  const against = (...sources: readonly HeatSource[]): number => (0 - sum(...sources)) / perDegree;
  const rows: ComparisonRow[] = [
    { source: 'dough', celsius: dough, ruleCelsius: dough, balanceCelsius: dough },
    {
      source: 'flour',
      celsius: flour,
      ruleCelsius: dough - flour,
      balanceCelsius: against('flour'),
    },
  ];
  if (preferment !== undefined)
    rows.push({
      source: 'preferment',
      celsius: preferment,
      ruleCelsius: dough - preferment,
      balanceCelsius: against('preferment'),
    });
  if (sum('salt', 'other') !== 0) rows.push({ source: 'others', balanceCelsius: against('salt', 'other') });
  rows.push(
    {
      source: 'room',
      celsius: roomCelsius,
      ruleCelsius: dough - roomCelsius,
      balanceCelsius: against('room'),
    },
    { source: 'friction', ruleCelsius: 0 - rule.value.frictionCelsius },
    { source: 'working', balanceCelsius: against('working') },
    { source: 'hydration', balanceCelsius: against('hydration') },
  );
  return {
    rows,
    ruleCelsius: rule.value.waterCelsius,
    balanceCelsius: waterCelsius,
    frictionCelsius: rule.value.frictionCelsius,
    frictionGiven: rule.value.frictionGiven,
  };
}
