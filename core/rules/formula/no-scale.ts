import type { Analysis } from '../../analysis/analysis.ts';
import type { SectionInput } from '../../calc/formula/formula-input.ts';
import { type Message, message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { amountPlace, ownProblems, placeOf, relatedTo } from '../engine/rule-places.ts';

export const noScale: Rule = {
  code: 'no-scale',
  level: 'error',
  title: 'Nothing fixes how much is made',
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
        yield { line, span, message: message('no-scale.remaining', { part: String(problem.values.name) }) };
        continue;
      }
      const section = analysis.resolved.input.sections.find((one) => one.id === problem.sectionId);
      yield {
        ...placeOf(block, problem),
        message: openSize(section, String(problem.values.name)),
        related: relatedTo(block, problem.related, message('no-scale.in-weight')),
      };
    }
  },
};

function openSize(section: SectionInput | undefined, part: string): Message {
  if (section?.kind === 'dough') return message('no-scale.dough');
  if (section?.enclosed) return message('no-scale.enclosed', { part, example: `${part} 25%` });
  switch (section?.kind) {
    case 'filling':
    case 'topping':
    case 'bath':
      return message('no-scale.beside', { part, example: `${part} 25 g a piece` });
    default:
      return message('no-scale.part', { part });
  }
}

/** A line that cannot be read, or something that does not add up, may well be what leaves the size open: it is shown first. */
function hangsOnAnother(analysis: Analysis): boolean {
  const isOpen = analysis.resolved.input.sections.some((section) =>
    section.lines.some((line) => line.amount.kind === 'unknown'),
  );
  const quiet = new Set(['under-determined', 'unused-part', 'added-by-part']);
  return isOpen || analysis.problems.some((problem) => !quiet.has(problem.kind));
}
