import type { FormulaTotals } from '../facts/totals.ts';
import type { TrialFacts } from '../facts/trial-facts.ts';
import { daysOf } from '../text/dates.ts';
import type { Message } from '../words/message.ts';

/**
 * The figures of a formula at one revision, each with its unit in its name. What is not known is absent, never zero.
 * Fractions are of all flour.
 */
export interface FormulaFigures {
  readonly hydration?: number;
  readonly saltFraction?: number;
  readonly prefermentedFlour?: number;
  /** Of the programme of the final dough from its start to its end, rests included. */
  readonly mixMinutes?: number;
  /** Of the dough at the end of mixing, as computed. */
  readonly endCelsius?: number;
  /** Of the water to draw. */
  readonly waterCelsius?: number;
  /** What the ingredients of a kilogram of dough cost, by the prices of that revision, in `currency`. */
  readonly costPerKilogram?: number;
  readonly currency?: string;
  /** Some ingredients have no price, so that it costs more than that. */
  readonly costIsAtLeast?: true;
  /** By the words of the files, in the order of the alphabet. */
  readonly allergens?: readonly string[];
  /** Every ingredient of the overall formula but salt and water, which `saltFraction` and `hydration` stand for. */
  readonly ingredients: readonly { readonly name: string; readonly fraction?: number }[];
}

/** A trial with what was measured at the end of its mixing, and what was worked out for it at the revision that first had it so. */
export interface TrialPoint {
  /** Date and words of its header. */
  readonly title: string;
  /** As its header has it, `2026-03-14`; absent where it has none, or one that is no day. */
  readonly date?: string;
  readonly measuredCelsius?: number;
  readonly predictedCelsius?: number;
}

/** A formula as a revision has it. */
export interface FormulaMoment {
  readonly file: string;
  readonly formula: string;
  /** Of its header, from zero. */
  readonly line: number;
  readonly figures: FormulaFigures;
  readonly trials: readonly TrialPoint[];
  /** The lines of both sides of a merge stand in it, so that its figures are none that anybody wrote. */
  readonly unfinishedMerge?: true;
}

/** The figures that a history follows, out of the totals of a formula. */
export function figuresOf(totals: FormulaTotals<Message>): FormulaFigures {
  const { hydration, saltFraction, prefermentedFlour, water, mixing, label } = totals;
  const mixMinutes = mixing?.curve.at(-1)?.minutes;
  return {
    ...present('hydration', hydration),
    ...present('saltFraction', saltFraction),
    ...present('prefermentedFlour', prefermentedFlour),
    ...present('mixMinutes', mixMinutes),
    ...present('endCelsius', mixing?.endCelsius),
    ...present('waterCelsius', water?.celsius),
    ...costOfDough(totals),
    ...present('allergens', label === undefined ? undefined : [...label.allergens.words].sort()),
    ingredients: totals.overall
      .filter(({ role }) => role !== 'part' && role !== 'salt' && role !== 'water')
      .map(({ name, fraction }) => ({ name, ...present('fraction', fraction) })),
  };
}

function costOfDough({
  cost,
  doughGrams,
  enclosedGrams = 0,
}: FormulaTotals<Message>): Pick<FormulaFigures, 'costPerKilogram' | 'currency' | 'costIsAtLeast'> {
  const amount = cost?.batch ?? cost?.atLeast;
  if (amount === undefined || cost?.currency === undefined) return {};
  const grams = (doughGrams ?? 0) + enclosedGrams;
  if (doughGrams === undefined || !(grams > 0)) return {};
  return {
    costPerKilogram: (amount / grams) * 1000,
    currency: cost.currency,
    ...(cost.batch === undefined ? { costIsAtLeast: true } : {}),
  };
}

/** The trials of a formula as a history shows them: by what was measured when the mixing ended. */
export function trialPoints(trials: readonly TrialFacts[]): TrialPoint[] {
  return trials.map(({ title, readings, endCelsius }) => {
    const end = readings.find(({ isEnd }) => isEnd);
    const date = title.slice(0, 10);
    return {
      title,
      ...(daysOf(date) === undefined ? {} : { date }),
      ...present('measuredCelsius', endCelsius),
      ...present('predictedCelsius', end?.predictedCelsius),
    };
  });
}

function present<K extends string, V>(key: K, value: V | undefined): { [P in K]?: V } {
  return (value === undefined ? {} : { [key]: value }) as { [P in K]?: V };
}
