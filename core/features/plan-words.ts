import type { PlanAnalysis } from '../analysis/plan.ts';
import { timeWords } from '../text/dates.ts';
import { duration, mass } from '../text/figures.ts';
import { inMarks } from '../words/in-marks.ts';
import { escapeMarkdown } from './formula-words.ts';

/** What a plan comes to, for the hover of its header. */
export function planMarkdown(plan: PlanAnalysis): string[] {
  const { doughs, parts } = plan.day;
  const batches = doughs.flatMap((dough) => dough.batches);
  const said = [`**${escapeMarkdown(plan.name)}**`];
  if (batches.length === 0) return said;
  const when = (minutes: number): string => timeWords(minutes, plan.dated);
  const firstMix = Math.min(...batches.map((batch) => batch.startMinutes));
  const firstPart = parts[0];
  said.push(
    `${batches.length} ${batches.length === 1 ? 'batch' : 'batches'} of dough, the first mixed ${when(firstMix)}.`,
  );
  if (firstPart !== undefined && firstPart.startMinutes < firstMix)
    said.push(`The first work is ${escapeMarkdown(firstPart.name)}, ${when(firstPart.startMinutes)}.`);
  const late = doughs.filter((dough) => dough.lateMinutes > 0.5);
  for (const { dough, lateMinutes } of late)
    said.push(`${escapeMarkdown(dough.name)} is ${duration(Math.ceil(lateMinutes) * 60)} late.`);
  if (late.length === 0) said.push('All is ready in time.');
  return said;
}

/** When the batches of one line of a plan are made, for its hover; `undefined` where the line is not planned. */
export function planLineMarkdown(plan: PlanAnalysis, line: number): string[] | undefined {
  const problem = plan.problems.find((one) => one.line === line);
  if (problem !== undefined) return [`Not in the plan: ${inMarks(problem.reason)}.`];
  const index = plan.formulas.findIndex((formula) => formula.lines.includes(line));
  const dough = plan.day.doughs[index];
  if (dough === undefined) return undefined;
  const when = (minutes: number): string => timeWords(minutes, plan.dated);
  const together = plan.formulas[index]!.lines.length > 1 ? ', with the other lines of it' : '';
  const rows = dough.batches.map((batch) => {
    const size =
      batch.pieces === undefined
        ? mass(batch.doughGrams)
        : `${batch.pieces} pieces, ${mass(batch.doughGrams)}`;
    const oven = batch.ovenMinutes > 0 ? `, oven ${when(batch.ovenStartMinutes)}` : '';
    return `- ${size}: mix ${when(batch.startMinutes)}${oven}, ready ${when(batch.endMinutes)}`;
  });
  const parts = plan.day.parts
    .filter((part) => part.doughs.includes(dough.dough.name))
    .map((part) => `- ${escapeMarkdown(part.name)}: make ${mass(part.grams)} ${when(part.startMinutes)}`);
  const heading = `**${escapeMarkdown(dough.dough.name)}**${together}`;
  return [heading, rows.join('\n'), ...(parts.length === 0 ? [] : [parts.join('\n')])];
}
