import type { Analysis } from '../analysis/analysis.ts';
import type { FinalMixLine, SolvedLine, SolvedSection } from '../calc/formula/formula-result.ts';
import type { Ingredient } from '../model/found-ingredient.ts';

/** What was computed of one ingredient line of a formula. */
export interface LineFacts {
  readonly section: SolvedSection;
  readonly line: SolvedLine;
  readonly ingredient?: Ingredient;
  /** What is left of the line for the final mix, for lines of the dough. */
  readonly final?: FinalMixLine;
}

/** The facts of the line with an id, `undefined` when nothing is solved there. */
export function factsOf(analysis: Analysis, lineId: string): LineFacts | undefined {
  const { solved, resolved } = analysis;
  if (solved === undefined) return undefined;
  for (const section of solved.sections) {
    const line = section.lines.find((one) => one.id === lineId);
    if (line === undefined) continue;
    const ingredient = line.part ? undefined : resolved.ingredients.get(line.key);
    const final = solved.finalMix.lines.find((one) => one.lineId === lineId);
    return {
      section,
      line,
      ...(ingredient === undefined ? {} : { ingredient }),
      ...(final === undefined ? {} : { final }),
    };
  }
  return undefined;
}

/** The solved section of a header, counted in its block. */
export function sectionOf(analysis: Analysis, sectionId: string): SolvedSection | undefined {
  return analysis.solved?.sections.find((section) => section.id === sectionId);
}
