import { catalogueNames } from '../catalogue/catalogue.ts';
import { findIngredient } from '../model/ingredient.ts';
import { sectionAt } from '../model/mentions.ts';
import type { Scope } from '../model/scope.ts';
import { misspelledProperty } from '../syntax/misspelled.ts';
import type { Block, Name } from '../syntax/tree.ts';
import { nearestWord } from '../text/nearest.ts';
import { replaceFix, sectionBehindFix } from './fixes.ts';
import type { Rule, RuleFinding, RuleFix } from './rule.ts';

export const unknownIngredient: Rule = {
  code: 'unknown-ingredient',
  level: 'warning',
  mendsSlips: true,
  title: 'Nobody has said what this ingredient is',
  explanation:
    'The ingredient is weighed, but counts neither as flour nor as water: what it brings to the dough is not known. ' +
    'Write the name as its section does, choose one of the catalogue, or define it.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  nonesuch  3%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  linseed  3%\n',
  *check({ analysis, scope, block }) {
    for (const problem of analysis?.resolved.problems ?? []) {
      if (problem.kind !== 'unknown-ingredient' || problem.name.folded === '') continue;
      const { name, line } = problem;
      const known = analysis!.resolved.model.sections.flatMap((section) =>
        section.name === undefined ? [] : [section.name.text],
      );
      const found = findingOf(block, line, name, scope, known);
      const define = sectionBehindFix(
        `Define “${name.text}” as an ingredient`,
        block,
        `ingredient ${name.text}:\n  water 0%`,
      );
      yield { ...found, fixes: [...found.fixes, define] };
    }
    if (block.top?.kind !== 'ingredient' && block.top?.kind !== 'flour') return;
    for (const [line, { statement }] of block.lines.entries()) {
      if (statement.kind !== 'property' || statement.value?.form !== 'name' || statement.property !== 'like')
        continue;
      const { name } = statement.value;
      if (findIngredient(name, scope).kind === 'unknown') yield findingOf(block, line, name, scope, []);
    }
  },
};

function findingOf(
  block: Block,
  line: number,
  name: Name,
  scope: Scope,
  parts: readonly string[],
): RuleFinding & { fixes: RuleFix[] } {
  const seen = [...parts, ...scope.names('ingredient').map((one) => one.name.text), ...catalogueNames()];
  const byFolded = new Map(seen.map((one) => [one.toLowerCase(), one]));
  const meant = nearestWord(name.text.toLowerCase(), byFolded.keys());
  const written = meant === undefined ? undefined : byFolded.get(meant)!;
  const isLike = block.lines[line]!.statement.kind === 'property';
  const section = sectionAt(block, line)?.kind;
  const property =
    written !== undefined || isLike || section === undefined || section === 'unknown'
      ? undefined
      : misspelledProperty(block.lines[line]!.text, section);
  const guess = written ?? property?.meant;
  const what = isLike
    ? 'is not known: nothing starts from it'
    : 'is not known: it is weighed, but counts as neither flour nor water';
  return {
    line,
    span: { start: name.start, end: name.end },
    message:
      `“${name.text}” ${what}.` +
      (guess === undefined ? ' Define it, or write a name that is known.' : ` Is it “${guess}”?`),
    fixes:
      guess === undefined ? [] : [replaceFix(`Write ${guess}`, line, property?.span ?? name, guess, true)],
  };
}
