import type { SolvedLine } from '../../calc/formula/formula-result.ts';
import { formulaOf, type LineModel, type SectionModel } from '../../model/formula-model.ts';
import type { Finding } from '../../rules/engine/finding.ts';
import type { ActionContext, TextRange } from './action.ts';

/** The section of a formula, dough or part, that holds ingredient lines and in which the cursor stands. */
export function sectionAt({ block, line }: ActionContext): SectionModel | undefined {
  return formulaOf(block)?.sections.find((one) => line >= one.headerLine && line < one.endLine);
}

/** The ingredient line at the cursor. */
export function lineAt(context: ActionContext): LineModel | undefined {
  return sectionAt(context)?.lines.find((one) => one.line === context.line);
}

/** The ingredient lines that a selection touches, in one section. */
export function selectedLines(context: ActionContext, section: SectionModel): LineModel[] {
  return section.lines.filter(({ line }) => line >= context.line && line <= context.lastLine);
}

/** The solved lines of a section, by id. */
export function solvedLines(context: ActionContext, section: SectionModel): ReadonlyMap<string, SolvedLine> {
  const solved = context.analysis()?.solved?.sections.find((one) => one.id === section.id);
  return new Map((solved?.lines ?? []).map((line) => [line.id, line]));
}

/** The findings that the range touches. */
export function touchedFindings({ findings, range }: ActionContext): readonly Finding[] {
  return findings().filter(({ place }) => touches(place, range));
}

/** Whether a place of one line and a range have a column in common, ends included. */
export function touches(place: Finding['place'], range: TextRange): boolean {
  if (place.line < range.line || place.line > range.endLine) return false;
  if (place.line === range.line && place.end < range.start) return false;
  return place.line < range.endLine || place.start <= range.end;
}
