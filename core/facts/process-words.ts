import type { Block, StepStatement } from '../syntax/tree.ts';
import { type Message, message } from '../words/message.ts';

interface TimedStep {
  readonly line: number;
  readonly step: StepStatement;
  /** Of all steps before it that have a time, in seconds. */
  readonly startSeconds: number;
}

/** When a step begins and ends by the times that are written in its process; undefined where none is. */
export function stepTimes(block: Block, line: number): Message | undefined {
  const section = block.subs.find(({ headerLine, endLine }) => headerLine < line && line < endLine);
  if (section === undefined) return undefined;
  const steps = timedSteps(block, section.headerLine, section.endLine);
  const one = steps.find((timed) => timed.line === line);
  if (one === undefined) return undefined;
  const { startSeconds: seconds, step } = one;
  const lasts = step.seconds ?? 0;
  const otherSeconds = seconds + lasts;
  if (seconds === 0) return lasts === 0 ? undefined : message('step-time.first', { seconds: otherSeconds });
  const time =
    lasts === 0
      ? message('step-time.begins', { seconds })
      : message('step-time.later', { seconds, otherSeconds });
  return allowing(time, untimed(steps.filter((timed) => timed.line < line)));
}

/** How long a process takes by the times that are written in it; undefined where none is. */
export function processTimes(block: Block, headerLine: number): Message | undefined {
  const section = block.subs.find((one) => one.headerLine === headerLine);
  if (section === undefined) return undefined;
  const steps = timedSteps(block, headerLine, section.endLine);
  const last = steps.at(-1);
  const seconds = (last?.startSeconds ?? 0) + (last?.step.seconds ?? 0);
  return seconds === 0 ? undefined : allowing(message('step-time.whole', { seconds }), untimed(steps));
}

function allowing(time: Message, names: readonly string[]): Message {
  if (names.length === 0) return time;
  return message('paragraph.of', { parts: [time, message('step-time.allow', { names })] });
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

function untimed(steps: readonly TimedStep[]): string[] {
  const names = steps.flatMap(({ step }) =>
    step.seconds === undefined && step.known !== 'enclose' ? [step.words.text] : [],
  );
  return [...new Set(names)];
}
