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

/**
 * A nutrient as it is written on a label, without its unit: grams, sodium and cholesterol in milligrams, energy in kJ or
 * kcal. A negative amount or one that is not a number is refused with `undefined`.
 */
export function labelFigure(nutrient: Printed, amount: number, regime: LabelRegime): string | undefined {
  if (!Number.isFinite(amount) || amount < -1e-9) return undefined;
  const plain = Math.max(0, amount);
  return regime === 'EU' ? euFigure(nutrient, plain) : usFigure(nutrient, plain);
}

// Guidance document of the European Commission on tolerances, December 2012, table 4: from memory.
function euFigure(nutrient: Printed, amount: number): string {
  switch (nutrient) {
    case 'kilojoules':
    case 'kilocalories':
    case 'sodium':
    case 'cholesterol':
      return nearest(amount, 1);
    case 'saturates':
      if (amount <= 0.1) return amount === 0 ? '0' : '< 0.1';
      return nearest(amount, amount < 10 ? 0.1 : 1);
    case 'salt':
      if (amount <= 0.0125) return amount === 0 ? '0' : '< 0.01';
      return nearest(amount, amount < 1 ? 0.01 : 0.1);
    default:
      if (amount <= 0.5) return amount === 0 ? '0' : '< 0.5';
      return nearest(amount, amount < 10 ? 0.1 : 1);
  }
}

// 21 CFR 101.9(c) and FDA, Food Labeling Guide, Appendix H.
function usFigure(nutrient: Printed, amount: number): string {
  switch (nutrient) {
    case 'kilojoules':
      return nearest(amount, 1);
    case 'kilocalories':
      if (amount < 5) return '0';
      return nearest(amount, amount <= 50 ? 5 : 10);
    case 'fat':
    case 'saturates':
      if (amount < 0.5) return '0';
      return nearest(amount, amount < 5 ? 0.5 : 1);
    case 'cholesterol':
      if (amount < 2) return '0';
      return amount <= 5 ? 'less than 5 mg' : nearest(amount, 5);
    case 'sodium':
      if (amount < 5) return '0';
      return nearest(amount, amount <= 140 ? 5 : 10);
    case 'salt':
      return nearest(amount, 0.01);
    default:
      if (amount < 0.5) return '0';
      return amount < 1 ? 'less than 1 g' : nearest(amount, 1);
  }
}

/** Half goes up, with a hair of patience for what binary fractions lose. */
function nearest(amount: number, step: number): string {
  const places = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
  const text = (Math.floor(amount / step + 0.5 + 1e-9) * step).toFixed(places);
  return step === 0.5 ? text.replace(/\.0$/, '') : text;
}
