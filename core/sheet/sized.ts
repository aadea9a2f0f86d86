import { type Analysis, analyseResolved } from '../analysis/analysis.ts';
import type { FormulaInput } from '../calc/formula-input.ts';
import { type ScaleTarget, scaleTo } from '../calc/scaling.ts';
import type { SizeRequest } from './view.ts';

/**
 * The formula at the size asked for: the same percentages, every weight in the file grown by one factor. Gives the
 * analysis back as it is where the file's own size is asked for or the size cannot be reached.
 */
export function sized(analysis: Analysis, size: SizeRequest): Analysis {
  const { solved, resolved } = analysis;
  const target = targetOf(size);
  if (target === undefined || solved === undefined) return analysis;
  const scaled = scaleTo(solved, target);
  if (!scaled.ok) return analysis;
  return analyseResolved({
    ...resolved,
    input: scaledInput(resolved.input, scaled.factor, solved.assumedScale, scaled.yield),
  });
}

function targetOf(size: SizeRequest): ScaleTarget | undefined {
  switch (size.by) {
    case 'file':
      return undefined;
    case 'pieces':
      return { kind: 'pieces', count: size.pieces };
    case 'dough':
      return { kind: 'dough', grams: size.grams };
    case 'flour':
      return { kind: 'flour', grams: size.grams };
  }
}

function scaledInput(
  input: FormulaInput,
  factor: number,
  assumed: boolean,
  made: NonNullable<FormulaInput['yield']>,
): FormulaInput {
  const sections = input.sections.map((section) => ({
    ...section,
    lines: section.lines.map((line) =>
      line.amount.kind === 'grams'
        ? { ...line, amount: { ...line.amount, grams: line.amount.grams * factor } }
        : line,
    ),
    ...(section.keepBackGrams === undefined ? {} : { keepBackGrams: section.keepBackGrams * factor }),
  }));
  // A formula whose flour is written in grams has its scale from there; a yield beside it would be a second one.
  const usesYield = assumed || input.yield !== undefined;
  const { yield: _before, ...rest } = input;
  return usesYield ? { ...rest, sections, yield: made } : { ...rest, sections };
}
