import type { Block, StepStatement } from '../syntax/tree.ts';
import { duration } from '../text/figures.ts';

interface TimedStep {
  readonly line: number;
  readonly step: StepStatement;
  /** Of all steps before it that have a time, in seconds. */
  readonly startSeconds: number;
}

/** When a step begins and ends by the times that are written in its process; empty where none is. */
export function stepTimes(block: Block, line: number): string[] {
  const section = block.subs.find(({ headerLine, endLine }) => headerLine < line && line < endLine);
  if (section === undefined) return [];
  const steps = timedSteps(block, section.headerLine, section.endLine);
  const one = steps.find((timed) => timed.line === line);
  if (one === undefined) return [];
  const { startSeconds, step } = one;
  const start = startSeconds === 0 ? 'with the process' : `${duration(startSeconds)} into the process`;
  const end =
    step.seconds === undefined || step.seconds === 0
      ? ''
      : `, ends after ${duration(startSeconds + step.seconds)}`;
  const before = untimed(steps.filter((timed) => timed.line < line));
  const allow = startSeconds === 0 || before === '' ? '' : ` Allow for what has no time: ${before}.`;
  if (startSeconds === 0 && end === '') return [];
  return [`Begins ${start}${end}.${allow}`];
}

/** How long a process takes by the times that are written in it; empty where none is. */
export function processTimes(block: Block, headerLine: number): string[] {
  const section = block.subs.find((one) => one.headerLine === headerLine);
  if (section === undefined) return [];
  const steps = timedSteps(block, headerLine, section.endLine);
  const last = steps.at(-1);
  const seconds = (last?.startSeconds ?? 0) + (last?.step.seconds ?? 0);
  if (seconds === 0) return [];
  const without = untimed(steps);
  return [
    `**${duration(seconds)}** by the times that are written.${without === '' ? '' : ` Allow for what has none: ${without}.`}`,
  ];
}

function timedSteps(block: Block, headerLine: number, endLine: number): TimedStep[] {
  const steps: TimedStep[] = [];
  let startSeconds = 0;
  for (let line = headerLine + 1; line < endLine; line++) {
    const statement = block.lines[line]?.statement;
    if (statement?.kind !== 'step') continue;
    steps.push({ line, step: statement, startSeconds });
    startSeconds += statement.seconds ?? 0;
  }
  return steps;
}

function untimed(steps: readonly TimedStep[]): string {
  const names = steps.flatMap(({ step }) =>
    step.seconds === undefined && step.known !== 'enclose' ? [step.words.text] : [],
  );
  return [...new Set(names)].join(', ');
}
