import type { Analysis } from '../analysis/analysis.ts';
import { lineId } from '../model/formula-model.ts';
import type { Block } from '../syntax/tree.ts';
import { mass, percent } from '../text/figures.ts';
import type { Speaker } from '../words/speaker.ts';
import type { Hint, HintKind } from './answers.ts';
import { shortTotals } from './formula-words.ts';
import { phaseState } from './hover.ts';
import { factsOf, sectionOf } from './line-facts.ts';

/** The live figures of a formula, with lines counted in its block: what a line does not say itself, at its end, and the totals on the headers. */
export function hintsOf(block: Block, analysis: Analysis | undefined, speaker: Speaker): readonly Hint[] {
  if (analysis === undefined) return [];
  const hints: Hint[] = [];
  const push = (kind: HintKind, line: number, label: string | undefined): void => {
    if (label === undefined || label === '') return;
    hints.push({ line, column: endOfWords(block, line), label, kind });
  };
  const { model } = analysis.resolved;
  model.sections.forEach((section, index) => {
    if (index === 0) push('totals', section.headerLine, shortTotals(analysis));
    else {
      const solved = sectionOf(analysis, section.id);
      const parts: string[] = [];
      if (solved?.hydration !== undefined && solved.inBowl)
        parts.push(`${percent(solved.hydration)} hydration`);
      if (solved?.totalGrams !== undefined) parts.push(mass(solved.totalGrams));
      push('part', section.headerLine, parts.join(' · '));
    }
    for (const line of section.lines) push('amount', line.line, lineLabel(analysis, line.line));
  });
  analysis.mixes.forEach((mix, index) => {
    if (!mix.known) return;
    for (const phase of model.mixes[index]!.phases) {
      if (phase.statement.value?.form === 'load') continue;
      const state = phaseState(mix.value, phase.line);
      if (state !== undefined) push('mixing', phase.line, speaker.say(state));
    }
  });
  return hints;
}

function lineLabel(analysis: Analysis, line: number): string | undefined {
  const facts = factsOf(analysis, lineId(line));
  const statement = analysis.resolved.statements.get(lineId(line));
  if (facts === undefined || statement === undefined) return undefined;
  const { fraction, grams } = facts.line;
  const asPercent = fraction === undefined ? undefined : percent(fraction);
  const asMass = grams === undefined ? undefined : mass(grams);
  if (statement.amount.kind === 'fraction') return asMass;
  if (statement.amount.kind === 'mass') return asPercent;
  return [asPercent, asMass].filter((part) => part !== undefined).join(' · ');
}

function endOfWords(block: Block, line: number): number {
  const tokens = block.lines[line]!.tokens.filter(
    (token) => token.kind !== 'blank' && token.kind !== 'comment',
  );
  return tokens[tokens.length - 1]?.end ?? 0;
}
