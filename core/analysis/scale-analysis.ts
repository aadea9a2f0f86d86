import type { FormulaInput, YieldInput } from '../calc/formula/formula-input.ts';
import { analyseResolved } from './analyse.ts';
import type { Analysis } from './analysis.ts';

/** A formula made so many times as large: the same percentages, every weight in the file and the yield grown by one factor. */
export function scaledBy(analysis: Analysis, factor: number): Analysis {
  const { input } = analysis.resolved;
  const sections = scaledSections(input, factor);
  const { yield: made, ...rest } = input;
  const scaled: FormulaInput = { ...rest, sections };
  const wanted = made === undefined ? assumedYield(analysis, factor) : scaledYield(made, factor);
  return analyseResolved({
    ...analysis.resolved,
    input: wanted === undefined ? scaled : { ...scaled, yield: wanted },
  });
}

/** The sections with every weight in the file grown by a factor. */
export function scaledSections(input: FormulaInput, factor: number): FormulaInput['sections'] {
  return input.sections.map((section) => ({
    ...section,
    lines: section.lines.map((line) =>
      line.amount.kind === 'grams'
        ? { ...line, amount: { ...line.amount, grams: line.amount.grams * factor } }
        : line,
    ),
    ...(section.keepBackGrams === undefined ? {} : { keepBackGrams: section.keepBackGrams * factor }),
  }));
}

function scaledYield(made: YieldInput, factor: number): YieldInput {
  return made.kind === 'pieces'
    ? { ...made, count: made.count * factor }
    : { ...made, grams: made.grams * factor };
}

/** A formula without any weight is told for 1 kg of flour, and grows from there. */
function assumedYield({ solved }: Analysis, factor: number): YieldInput | undefined {
  if (solved?.assumedScale !== true || solved.flourGrams === undefined) return undefined;
  return { kind: 'flour', grams: solved.flourGrams * factor };
}
