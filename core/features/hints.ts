import type { Analysis } from '../analysis/analysis.ts';
import { lineId } from '../model/formula-model.ts';
import type { Block } from '../syntax/tree.ts';
import { mass, percent } from '../text/figures.ts';
import { shortTotals } from './formula-words.ts';
import { phaseState } from './hover.ts';
import { factsOf, sectionOf } from './line-facts.ts';

/** A hint at the end of a line of a block. */
export interface LineHint {
  readonly line: number;
  readonly column: number;
  readonly label: string;
}

/** The live figures of a formula: what a line does not say itself, at its end, and the totals on the headers. */
export function hintsOf(block: Block, analysis: Analysis | undefined): readonly LineHint[] {
  if (analysis === undefined) return [];
  const hints: LineHint[] = [];
  const push = (line: number, label: string | undefined): void => {
    if (label === undefined || label === '') return;
    hints.push({ line, column: endOfWords(block, line), label });
  };
  const { model } = analysis.resolved;
  model.sections.forEach((section, index) => {
    if (index === 0) push(section.headerLine, shortTotals(analysis));
    else {
      const solved = sectionOf(analysis, section.id);
      const parts: string[] = [];
      if (solved?.hydration !== undefined && solved.inBowl)
        parts.push(`${percent(solved.hydration)} hydration`);
      if (solved?.totalGrams !== undefined) parts.push(mass(solved.totalGrams));
      push(section.headerLine, parts.join(' · '));
    }
    for (const line of section.lines) push(line.line, lineLabel(analysis, line.line));
  });
  analysis.mixes.forEach((mix, index) => {
    if (!mix.known) return;
    for (const phase of model.mixes[index]!.phases) {
      if (phase.statement.value?.form === 'load') continue;
      push(phase.line, phaseState(mix.value, phase.line));
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
