import type { Analysis } from '../../analysis/analysis.ts';
import { costTotals } from '../../facts/cost-of.ts';
import { labelTotals } from '../../facts/label-of.ts';
import {
  allergenWords,
  ingredientStretches,
  labelCaution,
  nutritionWords,
  standardWords,
} from '../../facts/label-words.ts';
import type { TotalsLabel } from '../../facts/totals-product.ts';
import { wordedCost, wordedLabel } from '../../facts/worded-totals.ts';
import type { Message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { SheetCost, SheetLabel } from './view-product.ts';

/** The cost of the batch in words; undefined where no ingredient has a price. */
export function sheetCost(analysis: Analysis, speaker: Speaker): SheetCost | undefined {
  const totals = costTotals(analysis);
  if (totals === undefined) return undefined;
  const cost = wordedCost(totals, speaker);
  const { currency } = cost;
  return {
    text: cost.text,
    rows: cost.lines.map(({ name, amount, reason }) => ({
      name,
      value: amount === undefined || currency === undefined ? '–' : speaker.money(amount, currency),
      ...(reason === undefined ? {} : { missing: reason }),
    })),
  };
}

/** The draft of the label in words; undefined where nothing is weighed yet. */
export function sheetLabel(analysis: Analysis, speaker: Speaker): SheetLabel | undefined {
  const label = labelWords(labelTotals(analysis), speaker);
  if (label === undefined || !analysis.resolved.bakery.bothLabels) return label;
  const other = labelWords(labelTotals(analysis, label.regime === 'EU' ? 'US' : 'EU'), speaker);
  return other === undefined ? label : { ...label, other };
}

function labelWords(totals: TotalsLabel<Message> | undefined, speaker: Speaker): SheetLabel | undefined {
  if (totals === undefined) return undefined;
  const label = wordedLabel(totals, speaker);
  const { heads, rows, missing } = nutritionWords(label, speaker);
  return {
    regime: label.regime,
    ingredients: ingredientStretches(label.ingredients, label.regime, speaker).map(({ text, allergen }) => ({
      text,
      allergen,
    })),
    allergens: [...allergenWords(label, speaker), ...standardWords(label, speaker)],
    nutrition: { heads, rows },
    notes: [...missing, ...label.notes, labelCaution(speaker)],
  };
}
