import type { Analysis } from '../../analysis/analysis.ts';
import { shortTotals } from '../../facts/formula-words.ts';
import { factsOf, sectionOf } from '../../facts/line-facts.ts';
import { lineId } from '../../model/formula-model.ts';
import type { Block } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { Hint, HintKind } from '../answers.ts';
import { phaseState } from './phase-words.ts';

/** The live figures of a formula, with lines counted in its block: what a line does not say itself, at its end, and the totals on the headers. */
export function hintsOf(block: Block, analysis: Analysis | undefined, speaker: Speaker): readonly Hint[] {
  if (analysis === undefined) return [];
  const hints: Hint[] = [];
  const push = (kind: HintKind, line: number, said: Message | undefined): void => {
    // What a variant takes of its base stands there.
    if (said !== undefined && line < block.lines.length)
      hints.push({ line, column: endOfWords(block, line), label: speaker.say(said), kind });
  };
  const { model } = analysis.resolved;
  model.sections.forEach((section, index) => {
    if (index === 0) push('totals', section.headerLine, shortTotals(analysis));
    else {
      const solved = sectionOf(analysis, section.id);
      const parts: Message[] = [];
      if (solved?.hydration !== undefined && solved.inBowl)
        parts.push(message('totals.hydration', { fraction: solved.hydration }));
      if (solved?.totalGrams !== undefined) parts.push(message('hint.weight', { grams: solved.totalGrams }));
      if (parts.length > 0) push('part', section.headerLine, message('totals.line', { parts }));
    }
    for (const line of section.lines) push('amount', line.line, lineLabel(analysis, line.line));
  });
  analysis.mixes.forEach((mix, index) => {
    if (!mix.known) return;
    for (const phase of elementAt(model.mixes, index).phases) {
      if (phase.statement.value?.form === 'load') continue;
      push('mixing', phase.line, phaseState(mix.value, phase.line));
    }
  });
  return hints;
}

function lineLabel(analysis: Analysis, line: number): Message | undefined {
  const facts = factsOf(analysis, lineId(line));
  const statement = analysis.resolved.statements.get(lineId(line));
  if (facts === undefined || statement === undefined) return undefined;
  const { fraction, grams } = facts.line;
  const share = fraction === undefined ? undefined : message('hint.share', { fraction });
  const weight = grams === undefined ? undefined : message('hint.weight', { grams });
  if (statement.amount.kind === 'fraction') return weight;
  if (statement.amount.kind === 'mass') return share;
  const parts = [share, weight].filter((part) => part !== undefined);
  return parts.length === 0 ? undefined : message('totals.line', { parts });
}

function endOfWords(block: Block, line: number): number {
  const tokens = elementAt(block.lines, line).tokens.filter(
    (token) => token.kind !== 'blank' && token.kind !== 'comment',
  );
  return tokens[tokens.length - 1]?.end ?? 0;
}
