import type { Analysis } from '../analysis/analysis.ts';
import { asLongAt, type Fermenting, fermentationOf } from '../analysis/fermentation-course.ts';
import {
  referenceBulkMinutes,
  referenceCelsius,
  referenceMinutes,
} from '../calc/fermentation/fermentation.ts';

/** The rising of a dough from the end of mixing to the oven as plain data, for a timeline or a chart. */
export interface FermentationTimeline {
  readonly steps: readonly FermentationStep[];
  /** What the whole is worth, as many times what fills a bulk; usual is 1 to 3. */
  readonly bulks: number;
  /** A rise may be so many times as much or as little. */
  readonly band: number;
  /** The rate is by a rise that a trial of the formula wrote down. */
  readonly isObserved: boolean;
}

/** One stretch of it. Minutes from the end of mixing, °C, growth as a fraction (1 is doubled). */
export interface FermentationStep {
  readonly line: number;
  readonly words: string;
  readonly startMinutes: number;
  readonly endMinutes: number;
  readonly startCelsius: number;
  readonly endCelsius: number;
  readonly aroundCelsius: number;
  /** How long the same dough would take for as much at 27 °C. */
  readonly minutesAt27?: number;
  /** Growth at its end since the dough was last divided or shaped. */
  readonly rise: { readonly low: number; readonly expected: number; readonly high: number };
  readonly points: readonly { readonly minutes: number; readonly celsius: number; readonly rise: number }[];
}

/** The timeline of a formula’s dough; undefined where nothing raises it or no step has a time. */
export function fermentationTimeline(analysis: Analysis): FermentationTimeline | undefined {
  const fermentation = fermentationOf(analysis);
  if (!fermentation.known || fermentation.value.steps.length === 0) return undefined;
  const { steps, bulks, band, isObserved } = fermentation.value;
  return { steps: steps.map((step) => stepOf(step, band)), bulks, band, isObserved };
}

const pieces = 12;

function stepOf(step: Fermenting, band: number): FermentationStep {
  const { line, words, startMinutes, minutes, startCelsius, endCelsius, aroundCelsius, rise } = step;
  const at27 = asLongAt(step, referenceCelsius);
  return {
    line,
    words,
    startMinutes,
    endMinutes: startMinutes + minutes,
    startCelsius,
    endCelsius,
    aroundCelsius,
    ...(at27 === undefined ? {} : { minutesAt27: at27 }),
    rise: { low: rise / band, expected: rise, high: rise * band },
    points: Array.from({ length: pieces + 1 }, (_, piece) => {
      const here = (minutes * piece) / pieces;
      return {
        minutes: startMinutes + here,
        celsius: step.celsiusAt(here),
        rise: step.riseBefore + referenceMinutes(step.leavening, here, step.celsiusAt) / referenceBulkMinutes,
      };
    }),
  };
}
