import type { PlanAnalysis } from '../analysis/plan-analysis.ts';
import type { BatchPlan } from '../calc/plan/plan.ts';
import { elementAt } from '../text/element.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import { escapeMarkdown } from './formula-words.ts';
import { timeMessage } from './time-words.ts';

/** What a plan comes to, for the hover of its header. */
export function planMarkdown(plan: PlanAnalysis, speaker: Speaker): string[] {
  const { doughs, parts } = plan.day;
  const batches = doughs.flatMap((dough) => dough.batches);
  const said: Message[] = [message('line.title', { name: escapeMarkdown(plan.name) })];
  if (batches.length > 0) {
    const firstMix = Math.min(...batches.map((batch) => batch.startMinutes));
    const firstPart = parts[0];
    said.push(message('planned.batches', { count: batches.length, when: timeMessage(firstMix, plan.dated) }));
    if (firstPart !== undefined && firstPart.startMinutes < firstMix) {
      const when = timeMessage(firstPart.startMinutes, plan.dated);
      said.push(message('planned.first-work', { part: escapeMarkdown(firstPart.name), when }));
    }
    const late = doughs.filter((dough) => dough.lateMinutes > 0.5);
    for (const { dough, lateMinutes } of late) {
      const seconds = Math.ceil(lateMinutes) * 60;
      said.push(message('planned.late', { name: escapeMarkdown(dough.name), seconds }));
    }
    if (late.length === 0) said.push(message('planned.in-time'));
  }
  return said.map(speaker.say);
}

/** When the batches of one line of a plan are made, for its hover; `undefined` where the line is not planned. */
export function planLineMarkdown(plan: PlanAnalysis, line: number, speaker: Speaker): string[] | undefined {
  const problem = plan.problems.find((one) => one.line === line);
  if (problem !== undefined) {
    return [speaker.say(message('planned.left-out', { reason: problem.reason }))];
  }
  const index = plan.formulas.findIndex((formula) => formula.lines.includes(line));
  const dough = plan.day.doughs[index];
  if (dough === undefined) return undefined;
  const name = escapeMarkdown(dough.dough.name);
  const heading = message(
    elementAt(plan.formulas, index).lines.length > 1 ? 'planned.together' : 'line.title',
    {
      name,
    },
  );
  const rows = dough.batches.map((batch) => batchMessage(batch, plan.dated));
  const parts = plan.day.parts
    .filter((part) => part.doughs.includes(dough.dough.name))
    .map(({ name: part, grams, startMinutes }) => {
      const when = timeMessage(startMinutes, plan.dated);
      return message('planned.part', { part: escapeMarkdown(part), grams, when });
    });
  const list = (all: readonly Message[]): string[] =>
    all.length === 0 ? [] : [all.map((one) => `- ${speaker.say(one)}`).join('\n')];
  return [speaker.say(heading), ...list(rows), ...list(parts)];
}

function batchMessage(batch: BatchPlan, dated: boolean): Message {
  const { pieces, doughGrams: grams } = batch;
  const figures =
    pieces === undefined
      ? message('hint.weight', { grams })
      : message('planned.pieces', { count: pieces, grams });
  const oven = message('planned.oven', { when: timeMessage(batch.ovenStartMinutes, dated) });
  const parts = [
    message('planned.mix', { when: timeMessage(batch.startMinutes, dated) }),
    ...(batch.ovenMinutes > 0 ? [oven] : []),
    message('planned.ready', { when: timeMessage(batch.endMinutes, dated) }),
  ];
  return message('planned.batch', { figures, parts });
}
