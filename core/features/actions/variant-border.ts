import { analyseText } from '../../analysis/analyse.ts';
import type { Analysis } from '../../analysis/analysis.ts';
import { doughMixOf } from '../../analysis/trial-programme.ts';
import { type WholeBlock, wholeBlock, wholeOf } from '../../model/variant.ts';
import { addedToVariant, type ChangedLines } from '../../rules/engine/variant-edits.ts';
import { parseLine } from '../../syntax/line.ts';
import { linesOf } from '../../syntax/tree.ts';
import type { FileEdit } from '../../text/edits.ts';
import type { ActionContext } from './action.ts';
import { isSameOverall } from './after.ts';
import { LineChanges } from './line-changes.ts';

/**
 * A variant as an action sees it that knows of none: the formula with all that it takes of its base, whose own lines come first and keep
 * their numbers. What such an action writes becomes lines and sections of the variant, and the base stays as it is.
 *
 * @returns `undefined` where the base cannot be found
 */
export function madeWhole(context: ActionContext): ActionContext | undefined {
  const whole = wholeOf(wholeBlock(context.block, context.scope));
  if (whole === undefined) return undefined;
  const ending = context.source.endings.find((one) => one !== '') ?? '\n';
  return {
    ...context,
    block: whole,
    source: { ...context.source, lines: whole.lines, endings: whole.lines.map(() => ending) },
    firstLine: 0,
    variant: {
      order: orderOf(whole),
      alone: (text) => standingAlone(whole, text),
      edits: (changed, text) => ownEdits(context, whole, changed, text),
    },
  };
}

/** What the base brings to the dough stands first: below the variant's own last line a section may be written. */
function orderOf({ top, subs, own }: WholeBlock): readonly number[] {
  const ofDough = linesOf(top);
  const isOwn = (line: number): boolean => line < own.lines.length;
  return [
    ...[top.headerLine, ...ofDough.filter((line) => !isOwn(line)), ...ofDough.filter(isOwn), -1],
    ...subs.flatMap((section) => [section.headerLine, ...linesOf(section), -1]),
  ];
}

/** The text of a variant made whole as a formula that has no base. */
function standingAlone({ own }: WholeBlock, text: string): string {
  const [header = '', ...lines] = text.split('\n');
  const { base } = own.top?.header ?? {};
  const like = base === undefined ? -1 : header.slice(0, base.start).search(/\s+like\s+"?$/iu);
  const left = lines.filter((line) => {
    const { statement } = parseLine(line, { context: 'formula', afterBlank: false });
    return statement.kind !== 'property' || statement.property !== 'without';
  });
  return [like < 0 ? header : `${header.slice(0, like)}:`, ...left].join('\n');
}

/** The changes written into the variant, where it then comes to what they make of the whole; `undefined` where it would not. */
function ownEdits(
  context: ActionContext,
  whole: WholeBlock,
  changed: ChangedLines,
  text: string,
): readonly FileEdit[] | undefined {
  const added = addedToVariant(whole, changed);
  if (added === undefined) return undefined;
  const changes = new LineChanges(context);
  for (const [line, texts] of changed) if (line < whole.own.lines.length) changes.replace(line, ...texts);
  for (const { below, lines } of added) changes.addBelow(below, ...lines);
  const after = analyseText(changes.textOfLines(context.block.lines.length), context.scope)?.analysis;
  const meant = analyseText(standingAlone(whole, text), context.scope)?.analysis;
  return after !== undefined && meant !== undefined && isSameFormula(after, meant)
    ? changes.edits()
    : undefined;
}

function isSameFormula(one: Analysis, other: Analysis): boolean {
  if (one.solved === undefined || other.solved === undefined) return false;
  return isSameOverall(one.solved, other.solved) && programmeOf(one) === programmeOf(other);
}

/** What is run and on what, as far as two of them are to be told apart. */
function programmeOf({ resolved }: Analysis): string {
  const mix = doughMixOf(resolved);
  const phases = mix?.phases.map(({ statement: { property, value } }) => {
    if (value?.form === 'mixSpeed') return [property, value.number, value.seconds];
    return value?.form === 'duration' ? [property, value.seconds] : [property];
  });
  return JSON.stringify([mix?.mixer?.name, phases]);
}
