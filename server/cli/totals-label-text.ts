import {
  allergenWords,
  ingredientStretches,
  labelCaution,
  message,
  nutritionWords,
  padEndTo,
  padStartTo,
  type Speaker,
  standardWords,
  type TotalsCost,
  type TotalsLabel,
} from '../../core/index.ts';

/** The cost of a formula in lines: the whole first, then ingredient by ingredient and part by part. */
export function costLines(cost: TotalsCost, speaker: Speaker): string[] {
  const { say } = speaker;
  const { currency } = cost;
  if (currency === undefined) return [cost.text];
  const row = (name: string, amount: number | undefined): string =>
    `${padEndTo(name, nameWidth)}${(amount === undefined ? '–' : speaker.money(amount, currency)).padStart(20)}`;
  return [
    cost.text,
    ...cost.lines.map((line) => row(line.name, line.amount)),
    ...cost.parts.map((part) =>
      row(say(message('command-totals.cost-of-part', { part: part.name })), part.amount),
    ),
  ];
}

const nameWidth = 26;

/** The draft of a label in sections of lines; allergens stand in capitals. */
export function labelSections(label: TotalsLabel, speaker: Speaker): { title: string; lines: string[] }[] {
  const { say } = speaker;
  const { heads, rows, missing } = nutritionWords(label, speaker);
  const inColumns = (name: string, cells: readonly string[]): string =>
    [padEndTo(name, nameWidth), ...cells.map((cell) => padStartTo(cell, 20))].join('').trimEnd();
  const nutrition = [
    ...(rows.length === 0 ? [] : [inColumns('', heads)]),
    ...rows.map(({ name, cells }) => inColumns(name, cells)),
    ...missing,
  ];
  const ingredients = ingredientStretches(label.ingredients, label.regime, speaker)
    .map(({ text, allergen }) => (allergen ? text.toUpperCase() : text))
    .join('');
  return [
    { title: say(message('command-totals.label-nutrition', { code: label.regime })), lines: nutrition },
    {
      title: say(message('command-totals.label-ingredients')),
      lines: [ingredients, ...allergenWords(label, speaker), ...standardWords(label, speaker)],
    },
    {
      title: say(message('command-totals.label-to-check')),
      lines: [...label.notes, labelCaution(speaker)],
    },
  ];
}
