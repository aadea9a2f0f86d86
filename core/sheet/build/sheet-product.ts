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
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { nodeIds } from './node-ids.ts';
import type { ColumnKey, Row, TableSection } from './sheet-document.ts';

/** The cost of the batch; undefined where no ingredient has a price. */
export function costSection(analysis: Analysis, speaker: Speaker): TableSection | undefined {
  const totals = costTotals(analysis);
  if (totals === undefined) return undefined;
  const { text, lines, currency } = wordedCost(totals, speaker);
  const idOf = nodeIds();
  return {
    kind: 'table',
    id: 'cost',
    name: 'cost',
    title: speaker.say(message('sheet.cost')),
    lead: [text],
    head: speaker.say(message('sheet.ingredient')),
    columns: [{ key: 'cost', title: speaker.say(message('sheet.cost')), figures: true }],
    rows: lines.map(({ name, amount, reason }): Row => {
      const value = amount === undefined || currency === undefined ? '–' : speaker.money(amount, currency);
      return { id: idOf('cost', name), name, cells: { cost: { text: reason ?? value } } };
    }),
  };
}

/** The drafts of the label: one, or both manners where both are wanted; none where nothing is weighed yet. */
export function labelSections(analysis: Analysis, speaker: Speaker): TableSection[] {
  const totals = labelTotals(analysis);
  if (totals === undefined) return [];
  const first = labelSection(totals, speaker);
  if (!analysis.resolved.bakery.bothLabels) return [first];
  const other = labelTotals(analysis, totals.regime === 'EU' ? 'US' : 'EU');
  return other === undefined ? [first] : [first, labelSection(other, speaker)];
}

function labelSection(totals: TotalsLabel<Message>, speaker: Speaker): TableSection {
  const label = wordedLabel(totals, speaker);
  const id = `label/${label.regime}`;
  const { heads, rows, missing } = nutritionWords(label, speaker);
  const idOf = nodeIds();
  const keyOf = (index: number): ColumnKey => `nutrition ${index + 1}`;
  const ingredients = ingredientStretches(label.ingredients, label.regime, speaker);
  return {
    kind: 'table',
    id,
    name: 'label',
    title: speaker.say(message('sheet.label', { code: label.regime })),
    lead: [
      ingredients.map(({ text, allergen }) => (allergen ? { text, strong: true } : { text })),
      ...allergenWords(label, speaker),
      ...standardWords(label, speaker),
    ],
    head: '',
    columns: heads.map((title, index) => ({ key: keyOf(index), title, figures: true })),
    rows: rows.map(({ name, cells }): Row => {
      const figures = cells.map((text, index) => [keyOf(index), { text }] as const);
      return { id: idOf(id, name), name, cells: Object.fromEntries(figures) };
    }),
    notes: [...missing, ...label.notes, labelCaution(speaker)],
  };
}
