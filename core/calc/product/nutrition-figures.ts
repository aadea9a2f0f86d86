import type { LabelRegime } from './allergens.ts';

/** What a nutrition table tells: sodium in milligrams, energy in kJ and kcal, the others in grams. */
export type Nutrient =
  | 'kilojoules'
  | 'kilocalories'
  | 'fat'
  | 'saturates'
  | 'carbohydrate'
  | 'sugars'
  | 'fibre'
  | 'protein'
  | 'salt'
  | 'sodium';

type Printed = Nutrient | 'cholesterol';

/** A figure as a label prints it: rounded, with so many places. */
export interface PrintedFigure {
  readonly amount: number;
  readonly places: number;
  /** The label says that there is less than this. */
  readonly isBelow?: true;
}

/**
 * What a label prints of a nutrient: grams, sodium and cholesterol in milligrams, energy in kJ or kcal. A negative amount or
 * one that is not a number is refused with `undefined`.
 */
export function printedFigure(
  nutrient: Printed,
  amount: number,
  regime: LabelRegime,
): PrintedFigure | undefined {
  if (!Number.isFinite(amount) || amount < -1e-9) return undefined;
  const plain = Math.max(0, amount);
  return regime === 'EU' ? euFigure(nutrient, plain) : usFigure(nutrient, plain);
}

/** As `printedFigure`, as it is written with a decimal point and without its unit: `0.31`, `< 0.5`; `less than 1 g` has it. */
export function labelFigure(nutrient: Printed, amount: number, regime: LabelRegime): string | undefined {
  const figure = printedFigure(nutrient, amount, regime);
  if (figure === undefined) return undefined;
  const text = figure.amount.toFixed(figure.places);
  if (!figure.isBelow) return text;
  return regime === 'EU' ? `< ${text}` : `less than ${text} ${nutrient === 'cholesterol' ? 'mg' : 'g'}`;
}

const nothing: PrintedFigure = { amount: 0, places: 0 };
const below = (amount: number, places: number): PrintedFigure => ({ amount, places, isBelow: true });

// Guidance document of the European Commission on tolerances, December 2012, table 4: from memory.
function euFigure(nutrient: Printed, amount: number): PrintedFigure {
  switch (nutrient) {
    case 'kilojoules':
    case 'kilocalories':
    case 'sodium':
    case 'cholesterol':
      return nearest(amount, 1);
    case 'saturates':
      if (amount <= 0.1) return amount === 0 ? nothing : below(0.1, 1);
      return nearest(amount, amount < 10 ? 0.1 : 1);
    case 'salt':
      if (amount <= 0.0125) return amount === 0 ? nothing : below(0.01, 2);
      return nearest(amount, amount < 1 ? 0.01 : 0.1);
    default:
      if (amount <= 0.5) return amount === 0 ? nothing : below(0.5, 1);
      return nearest(amount, amount < 10 ? 0.1 : 1);
  }
}

// 21 CFR 101.9(c) and FDA, Food Labeling Guide, Appendix H.
function usFigure(nutrient: Printed, amount: number): PrintedFigure {
  switch (nutrient) {
    case 'kilojoules':
      return nearest(amount, 1);
    case 'kilocalories':
      if (amount < 5) return nothing;
      return nearest(amount, amount <= 50 ? 5 : 10);
    case 'fat':
    case 'saturates':
      if (amount < 0.5) return nothing;
      return nearest(amount, amount < 5 ? 0.5 : 1);
    case 'cholesterol':
      if (amount < 2) return nothing;
      return amount <= 5 ? below(5, 0) : nearest(amount, 5);
    case 'sodium':
      if (amount < 5) return nothing;
      return nearest(amount, amount <= 140 ? 5 : 10);
    case 'salt':
      return nearest(amount, 0.01);
    default:
      if (amount < 0.5) return nothing;
      return amount < 1 ? below(1, 0) : nearest(amount, 1);
  }
}

/** Half goes up, with a hair of patience for what binary fractions lose. */
function nearest(amount: number, step: number): PrintedFigure {
  const rounded = Math.floor(amount / step + 0.5 + 1e-9) * step;
  const places = step >= 1 || (step === 0.5 && Number.isInteger(rounded)) ? 0 : step >= 0.1 ? 1 : 2;
  return { amount: rounded, places };
}
