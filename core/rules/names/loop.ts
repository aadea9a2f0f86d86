import { lineOfId } from '../../model/formula-model.ts';
import { baseProblem } from '../../model/variant.ts';
import type { Name } from '../../syntax/tree.ts';
import { message } from '../../words/message.ts';
import type { Rule, RuleContext, RuleFinding } from '../engine/rule.ts';
import { namesOf, ownProblems, placeOf, relatedTo } from '../engine/rule-places.ts';

export const loop: Rule = {
  code: 'loop',
  level: 'error',
  title: 'Something is an ingredient of itself',
  explanation:
    'A part is made of itself, by way of other parts or formulas, so it can never be weighed. A ripe starter of its own kind is written ' +
    'as `ripe culture 20%` in the preferment, not as a line with its own name.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  62%\n  levain  30%\n\npreferment levain:\n  bread flour  100%\n  water  80%\n  levain  20%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  62%\n  levain  30%\n\npreferment levain:\n  bread flour  100%\n  water  80%\n  ripe culture 20%\n',
  *check(context) {
    const { analysis, block, scope } = context;
    const base = baseProblem(block, scope);
    if (base?.kind === 'base-loop') {
      const { start, end } = base.name;
      const said =
        base.names.length === 2
          ? message('loop.variant-of-itself', { name: base.name.text })
          : message('loop.variant', { names: base.names });
      yield { line: base.line, span: { start, end }, message: said };
    }
    for (const problem of ownProblems(analysis, 'loop')) {
      yield {
        ...placeOf(block, problem),
        message: message('loop.part', { names: namesOf(problem.values.loop) }),
        related: relatedTo(block, problem.related, message('loop.in-circle')),
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
    message: message('loop.formula', { name: name.text }),
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
