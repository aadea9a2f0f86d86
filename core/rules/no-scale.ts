import type { Analysis } from '../analysis/analysis.ts';
import type { SectionInput } from '../calc/formula-input.ts';
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
      if (problem.lineId !== undefined) {
        const { line, span } = amountPlace(context, problem.lineId);
        const message = `“remaining” takes what is made of “${problem.values.name}”, and nothing says how much that is. Write its percentage here, or its flour in weight.`;
        yield { line, span, message };
        continue;
      }
      const section = analysis.resolved.input.sections.find((one) => one.id === problem.sectionId);
      const message =
        section?.kind === 'dough'
          ? 'Some lines are in weight and the flour is in percent: nothing says how much flour there is. Write a yield, or the flour in weight.'
          : `Nothing says how much of “${problem.values.name}” is made. ${cureOf(section)}`;
      yield {
        ...placeOf(block, problem),
        message,
        related: relatedTo(block, problem.related, 'a line in weight'),
      };
    }
  },
};

function cureOf(section: SectionInput | undefined): string {
  if (section?.enclosed)
    return 'Name it in a line of the formula, as in “butter block 25%”, or write its lines in weight.';
  switch (section?.kind) {
    case 'filling':
    case 'topping':
    case 'bath':
      return `Name it in a line of the formula with its weight a piece, as in “${section.name} 25 g a piece”, or write its lines in weight.`;
    default:
      return 'Draw it, name it in a line of the formula, or write its flour in weight.';
  }
}

/** A line that cannot be read, or something that does not add up, may well be what leaves the size open: it is told first. */
function hangsOnAnother(analysis: Analysis): boolean {
  const isOpen = analysis.resolved.input.sections.some((section) =>
    section.lines.some((line) => line.amount.kind === 'unknown'),
  );
  const quiet = new Set(['under-determined', 'unused-part', 'added-by-part']);
  return isOpen || analysis.problems.some((problem) => !quiet.has(problem.kind));
}
