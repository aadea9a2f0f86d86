import type { AmountInput, FormulaInput, LineInput } from '../calc/formula/formula-input.ts';
import { type Known, known, unknown } from '../calc/known.ts';
import { type Message, message } from '../words/message.ts';
import { analyseResolved } from './analyse.ts';
import type { Analysis } from './analysis.ts';
import { type AxisBase, type AxisRow, type AxisRows, rowOf } from './map-axis.ts';

/** Rows of a map, and how far apart two of them are in hydration. */
const rowCount = 40;
const apart = 0.0075;
/** All water by all flour: drier flour is not wetted, and wetter is a batter; common practice, no source. */
const driest = 0.3;
const wettest = 1.3;

/** The same formula with less and with more water, its main line of water changed and all else as it is written. */
export function waterRows({ analysis, mix }: AxisBase): Known<AxisRows, Message> {
  const own = analysis.solved?.hydration;
  const lever = own === undefined ? undefined : waterLever(analysis);
  if (own === undefined || lever === undefined) return unknown(message('map.no-water'));
  const rows: AxisRow[] = [];
  for (let step = -rowCount / 2; step < rowCount / 2; step++) {
    if (step === 0) {
      rows.push({ value: own, outcome: mix.outcome, isOwn: true });
      continue;
    }
    const changed = lever.to(own + step * apart);
    const { hydration: value, effectiveHydration: wetness = value } = changed?.solved ?? {};
    if (changed === undefined || value === undefined || wetness === undefined) continue;
    if (wetness < driest || wetness > wettest) continue;
    const row = rowOf(analysis, changed, value);
    if (row !== undefined) rows.push(row);
  }
  return known({ rows, notes: [] }, 'common practice');
}

/** The line whose amount sets how wet a dough is, and the formula with it changed. */
export interface WaterLever {
  readonly line: LineInput;
  readonly amount: number;
  /** The amount that makes this hydration, as the line has it: a fraction, or grams. */
  amountFor(hydration: number): number;
  /** The formula at this hydration; undefined where that would take less than no water. */
  to(hydration: number): Analysis | undefined;
}

/**
 * The dough's own line of most water, where its amount can be changed: a percentage, a weight, or the hydration that it brings the
 * dough to. Undefined where there is none, or where it changes nothing.
 */
export function waterLever(analysis: Analysis): WaterLever | undefined {
  const { input } = analysis.resolved;
  const own = analysis.solved?.hydration;
  const grams = new Map(analysis.solved?.sections[0]?.lines.map((line) => [line.id, line.grams ?? 0]));
  const [line] = (input.sections[0]?.lines ?? [])
    .filter((one) => one.role === 'water' && !one.part && figureOf(one.amount) !== undefined)
    .sort((one, other) => (grams.get(other.id) ?? 0) - (grams.get(one.id) ?? 0));
  const amount = line === undefined ? undefined : figureOf(line.amount);
  if (line === undefined || amount === undefined || own === undefined || !(amount > 0)) return undefined;
  const withAmount = (figure: number): Analysis =>
    analyseResolved({ ...analysis.resolved, input: withFigure(input, line.id, figure) });
  // Hydration is straight in the amount of one line of water: a second point gives the slope.
  const other = withAmount(amount * 1.01).solved?.hydration;
  const slope = other === undefined ? Number.NaN : (other - own) / (amount * 0.01);
  if (!(slope > 0)) return undefined;
  const amountFor = (hydration: number): number => amount + (hydration - own) / slope;
  return {
    line,
    amount,
    amountFor,
    to: (hydration) => {
      const figure = amountFor(hydration);
      return figure > 0 ? withAmount(figure) : undefined;
    },
  };
}

function figureOf(amount: AmountInput): number | undefined {
  switch (amount.kind) {
    case 'fraction':
    case 'ofAllFlour':
    case 'toHydration':
      return amount.fraction;
    case 'grams':
      return amount.grams;
    default:
      return undefined;
  }
}

function withFigure(input: FormulaInput, lineId: string, figure: number): FormulaInput {
  const [dough, ...others] = input.sections;
  if (dough === undefined) return input;
  const lines = dough.lines.map((line): LineInput => {
    if (line.id !== lineId) return line;
    const { amount } = line;
    if (amount.kind === 'grams') return { ...line, amount: { ...amount, grams: figure } };
    return 'fraction' in amount ? { ...line, amount: { ...amount, fraction: figure } } : line;
  });
  return { ...input, sections: [{ ...dough, lines }, ...others] };
}
