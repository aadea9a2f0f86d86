import { lineOfId } from '../model/formula-model.ts';
import type { Name } from '../syntax/tree.ts';
import { ownProblems, placeOf, relatedTo } from './places.ts';
import type { Rule, RuleContext, RuleFinding } from './rule.ts';

export const loop: Rule = {
  code: 'loop',
  level: 'error',
  title: 'Something is an ingredient of itself',
  explanation:
    'A part is made of itself, by way of other parts or formulas, so it can never be weighed. Culture of yesterday’s is written ' +
    'as `ripe culture 20%` in the preferment, not as a line with its own name.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  62%\n  levain  30%\n\npreferment levain:\n  bread flour  100%\n  water  80%\n  levain  20%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  62%\n  levain  30%\n\npreferment levain:\n  bread flour  100%\n  water  80%\n  ripe culture 20%\n',
  *check(context) {
    const { analysis, block } = context;
    for (const problem of ownProblems(analysis, 'loop')) {
      yield {
        ...placeOf(block, problem),
        message: `This goes round in a circle: ${problem.values.loop}. Take this line out; for culture of its own write “ripe culture 20%”.`,
        related: relatedTo(block, problem.related, 'part of the circle'),
      };
    }
    yield* ofFormulas(context);
  },
};

/** Formulas that are ingredients of each other: told on the line of each that leads round. */
function* ofFormulas({ analysis }: RuleContext): Iterable<RuleFinding> {
  if (analysis === undefined) return;
  const { problems, input, statements, model } = analysis.resolved;
  const around = (name: Name, line: number): RuleFinding => ({
    line,
    span: { start: name.start, end: name.end },
    message: `“${name.text}” is made with this formula itself, so neither can be weighed. Take one of the two out.`,
  });
  for (const problem of problems) {
    if (problem.kind === 'loop-of-formulas') yield around(problem.name, problem.line);
  }
  const leadsBack = (id: string, seen: Set<string>): boolean => {
    if (seen.has(id)) return false;
    seen.add(id);
    return input.sections
      .filter((section) => section.id.startsWith(id))
      .flatMap((section) => section.lines)
      .some((line) => (line.part ? leadsBack(line.key, seen) : line.key === `?${model.name.folded}`));
  };
  for (const line of input.sections
    .filter((section) => !section.id.startsWith('F'))
    .flatMap((section) => section.lines)) {
    const statement = statements.get(line.id);
    if (statement === undefined || !line.key.startsWith('F') || !line.part) continue;
    if (leadsBack(line.key, new Set())) yield around(statement.name, lineOfId(line.id));
  }
}
