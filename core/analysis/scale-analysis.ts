import type { FormulaInput, YieldInput } from '../calc/formula/formula-input.ts';
import type { ResolvedFormula } from '../model/resolve.ts';
import type { ResolvedLoad, ResolvedMix } from '../model/resolve-mix.ts';
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
    mixes: scaledMixes(analysis.resolved, factor),
    input: wanted === undefined ? scaled : { ...scaled, yield: wanted },
  });
}

/** The mixes with every weight in their loads grown by a factor. */
export function scaledMixes({ mixes }: ResolvedFormula, factor: number): readonly ResolvedMix[] {
  return mixes.map((mix) => ({ ...mix, loads: mix.loads.map((one) => grown(one, factor)) }));
}

/** A load whose portion is a weight in the file puts as much more in. */
function grown(load: ResolvedLoad, factor: number): ResolvedLoad {
  const { item, keptBack } = load;
  const { portion } = item;
  return {
    ...load,
    item:
      portion?.kind !== 'weight' ? item : { ...item, portion: { ...portion, grams: portion.grams * factor } },
    ...(keptBack === undefined
      ? {}
      : {
          keptBack: new Map([...keptBack].map(([key, all]) => [key, all.map((one) => grown(one, factor))])),
        }),
  };
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
