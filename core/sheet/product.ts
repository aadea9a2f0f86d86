import type { Analysis } from '../analysis/analysis.ts';
import { costTotals } from '../features/cost-of.ts';
import { costSentence, money } from '../features/cost-words.ts';
import { labelTotals } from '../features/label-of.ts';
import {
  allergenWords,
  ingredientStretches,
  labelCaution,
  nutritionWords,
  standardWords,
} from '../features/label-words.ts';
import type { TotalsLabel } from '../features/totals-product.ts';
import type { SheetCost, SheetLabel } from './view-product.ts';

/** The cost of the batch in words; undefined where no ingredient has a price. */
export function sheetCost(analysis: Analysis): SheetCost | undefined {
  const cost = costTotals(analysis);
  if (cost === undefined) return undefined;
  const { currency } = cost;
  return {
    text: costSentence(cost),
    rows: cost.lines.map(({ name, amount, reason }) => ({
      name,
      value: amount === undefined || currency === undefined ? '–' : money(amount, currency),
      ...(reason === undefined ? {} : { missing: reason }),
    })),
  };
}

/** The draft of the label in words; undefined where nothing is weighed yet. */
export function sheetLabel(analysis: Analysis): SheetLabel | undefined {
  const label = labelWords(labelTotals(analysis));
  if (label === undefined || !analysis.resolved.bakery.bothLabels) return label;
  const other = labelWords(labelTotals(analysis, label.regime === 'EU' ? 'US' : 'EU'));
  return other === undefined ? label : { ...label, other };
}

function labelWords(label: TotalsLabel | undefined): SheetLabel | undefined {
  if (label === undefined) return undefined;
  const { heads, rows, missing } = nutritionWords(label);
  return {
    regime: label.regime,
    ingredients: ingredientStretches(label.ingredients).map(({ text, allergen }) => ({ text, allergen })),
    allergens: [...allergenWords(label), ...standardWords(label)],
    nutrition: { heads, rows },
    notes: [...missing, ...label.notes, labelCaution],
  };
}
