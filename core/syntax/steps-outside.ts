import type { IToken } from 'chevrotain';
import { firstOf, lastOf } from '../text/element.ts';
import { message } from '../words/message.ts';
import { knownStep } from './known-step.ts';
import { insertFix, problem } from './problem.ts';
import { findPropertyOf } from './property.ts';
import { readStep } from './step.ts';
import type { Surroundings } from './surroundings.ts';
import { endOf } from './tokens.ts';
import type { LineRead, SectionKind } from './tree.ts';
import { holdsIngredients } from './vocabulary.ts';

/** Whether bakers write steps right below what such a section holds, with no line between that begins a process. */
function mayHoldSteps({ context }: Surroundings): boolean {
  return context === 'mix' || (context !== 'none' && context !== 'unknown' && holdsIngredients(context));
}

/** A step below other steps that stand where no process has begun: `rest 20 min` after `bulk 1 h` is no rest of the mixer. */
export function readFurtherStep(
  line: string,
  tokens: readonly IToken[],
  around: Surroundings,
): LineRead | undefined {
  if (around.stepsBegun !== true || !mayHoldSteps(around)) return undefined;
  return knownStep(tokens, around.context !== 'mix') === undefined ? undefined : readStep(line, tokens);
}

/**
 * Reads what its section cannot as a step: the first of them as one that begins a process, with one finding that writes the line
 * `process:` above it, and those below without a word. `read` is what the section makes of it.
 */
export function unlessStep(
  line: string,
  tokens: readonly IToken[],
  around: Surroundings,
  read: LineRead,
): LineRead {
  if (read.problems.length === 0 || !mayHoldSteps(around) || !isUnread(read)) return read;
  // `bake loss 100%` is a property with a slip.
  if (findPropertyOf(tokens, around.context as SectionKind) !== undefined) return read;
  if (around.stepsBegun !== true && !beginsProcess(tokens, around)) return read;
  const step = readStep(line, tokens);
  if (step.statement.kind !== 'step') return read;
  const { seconds, celsius, foldSeconds } = step.statement;
  const hasFigure = tokens.some(({ image }) => /\d/.test(image));
  if (hasFigure && seconds === undefined && celsius === undefined && foldSeconds.length === 0) return read;
  if (around.stepsBegun === true) return step;
  const span = { start: firstOf(tokens).startOffset, end: endOf(lastOf(tokens)) };
  const said = message('unknown-property.step', { written: line.slice(span.start, span.end) });
  const written = `${around.afterBlank ? '' : '\n'}process:\n`;
  const fix = insertFix(message('fix.write', { meant: 'process:' }), 0, written, true);
  return {
    statement: { ...step.statement, begins: true },
    problems: [problem('unknown-property', said, span, fix)],
  };
}

/** Whether a section makes nothing of a line: no property, and no ingredient with its amount. */
function isUnread({ statement }: LineRead): boolean {
  return (
    statement.kind === 'unreadable' ||
    (statement.kind === 'ingredient' && statement.amount.kind === 'unknown')
  );
}

function beginsProcess(tokens: readonly IToken[], { context }: Surroundings): boolean {
  return isStepAlone(tokens, context !== 'mix');
}

/** Whether a line begins with a step that is of a process alone: rests and folds are of a mix as well. */
export function isStepAlone(tokens: readonly IToken[], isSure = true): boolean {
  const known = knownStep(tokens, isSure);
  return known !== undefined && known.step !== 'rest' && known.step !== 'fold';
}
