import type { Analysis } from '../analysis/analysis.ts';
import { amountPlace, ownProblems, placeOf, relatedTo } from './places.ts';
import type { Rule } from './rule.ts';

export const noScale: Rule = {
  code: 'no-scale',
  level: 'error',
  title: 'Nothing says how much is made',
  explanation:
    'Percent beside weights need one thing that fixes how much flour there is: a yield, or a flour in weight. A part needs a line ' +
    'that takes it, a `draws`, or weights of its own.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  20 g\n',
  good: 'formula Quay Tin:\n  bread flour  1 kg\n  water  65%\n  salt  20 g\n',
  *check(context) {
    const { analysis, block } = context;
    if (analysis === undefined || hangsOnAnother(analysis)) return;
    for (const problem of ownProblems(analysis, 'under-determined')) {
      const isDough = problem.sectionId === analysis.resolved.input.sections[0]!.id;
      const message = isDough
        ? 'Some lines are in weight and the flour is in percent: nothing says how much flour there is. Write a yield, or the flour in weight.'
        : `Nothing says how much of “${problem.values.name}” is made. Draw it, name it in a line of the formula, or write its flour in weight.`;
      yield {
        ...placeOf(block, problem),
        message,
        related: relatedTo(block, problem.related, 'a line in weight'),
      };
    }
    for (const section of analysis.solved?.sections ?? []) {
      for (const line of section.lines) {
        // `remaining` of a part that is all in percent takes whatever is made, and nothing says how much that is.
        const isRemaining = analysis.resolved.statements.get(line.id)?.amount.kind === 'remaining';
        const made = analysis.solved!.sections.find((one) => one.id === line.key)?.totalGrams;
        if (!line.part || !isRemaining || made === undefined || made > 1e-9) continue;
        const { line: number, span } = amountPlace(context, line.id);
        const message = `“remaining” takes what is made of “${line.name}”, and nothing says how much that is. Write its percentage here, or its flour in weight.`;
        yield { line: number, span, message };
      }
    }
  },
};

/** A line that cannot be read, or something that does not add up, may well be what leaves the size open: it is told first. */
function hangsOnAnother(analysis: Analysis): boolean {
  const isOpen = analysis.resolved.input.sections.some((section) =>
    section.lines.some((line) => line.amount.kind === 'unknown'),
  );
  const quiet = new Set(['under-determined', 'unused-part', 'added-by-part']);
  return isOpen || analysis.problems.some((problem) => !quiet.has(problem.kind));
}
