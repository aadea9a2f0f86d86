import { type Content, contentsOf } from '../../calc/formula/contents.ts';
import { doughOf } from '../../calc/formula/formula-input.ts';
import type { SolvedLine, SolvedSection } from '../../calc/formula/formula-result.ts';
import type { LineModel, SectionModel } from '../../model/formula-model.ts';
import type { ActionContext } from './action.ts';
import { lineAt, sectionAt } from './action-places.ts';
import { type WholeFormula, wholeFormula } from './after.ts';

/** A part of the formula at the cursor, with all that is worked out of it. */
export interface PartAt extends WholeFormula {
  readonly part: SectionModel;
  readonly solvedPart: SolvedSection;
  readonly dough: SectionModel;
  readonly solvedDough: SolvedSection;
  readonly doughLines: ReadonlyMap<string, SolvedLine>;
  /** The line of the dough that takes it, where one does. */
  readonly use: LineModel | undefined;
  /** What goes into this batch of it. */
  readonly contents: readonly Content[];
}

/**
 * The part in whose section the cursor stands, or that the line at the cursor names, where it goes into the dough: by
 * drawing, or by one line of the dough and no other.
 */
export function partAt(context: ActionContext): PartAt | undefined {
  const section = sectionAt(context);
  if (section === undefined) return undefined;
  const named = lineAt(context)?.statement.name.folded;
  const whole = wholeFormula(context);
  if (whole === undefined) return undefined;
  const { sections } = whole.analysis.resolved.model;
  const [dough] = sections;
  const part =
    section === dough
      ? sections.slice(1).find(({ name }) => name?.folded === named && named !== undefined)
      : section;
  if (part?.name === undefined || dough === undefined) return undefined;
  const solvedDough = doughOf(whole.solved);
  const solvedPart = whole.solved.sections.find(({ id }) => id === part.id);
  if (solvedPart === undefined || !solvedPart.inBowl) return undefined;
  const users = whole.solved.sections.flatMap((one) =>
    one.lines.filter((line) => line.part && line.key === part.id),
  );
  const use = dough.lines.find(({ id }) => users.some((line) => line.id === id));
  const goesInOnce = solvedPart.drawn ? users.length === 0 : users.length === 1 && use !== undefined;
  const contents = contentsOf(whole.solved, solvedPart);
  if (!goesInOnce || contents === undefined || !(solvedPart.usedGrams! > 0)) return undefined;
  return {
    ...whole,
    part,
    solvedPart,
    dough,
    solvedDough,
    doughLines: new Map(solvedDough.lines.map((line) => [line.id, line])),
    use,
    contents,
  };
}
