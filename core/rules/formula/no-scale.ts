import type { Analysis } from '../../analysis/analysis.ts';
import type { SectionInput } from '../../calc/formula/formula-input.ts';
import { wholeOf } from '../../model/variant.ts';
import { type Block, linesOf } from '../../syntax/tree.ts';
import { elementAt } from '../../text/element.ts';
import { type Message, message } from '../../words/message.ts';
import type { Rule, RuleFinding } from '../engine/rule.ts';
import { amountPlace, ownProblems, placeOf, relatedTo } from '../engine/rule-places.ts';

export const noScale: Rule = {
  code: 'no-scale',
  level: 'error',
  title: 'Nothing fixes how much is made',
  explanation:
    'Percent beside weights need one thing that fixes how much flour there is: a yield, or a flour in weight. A part needs a line ' +
    'that takes it, a `draws`, or weights of its own. A variant that leaves out the one flour in weight of its base is worked out for 1 kg of flour, which is told as a warning.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  20 g\n',
  good: 'formula Quay Tin:\n  bread flour  1 kg\n  water  65%\n  salt  20 g\n',
  *check(context) {
    const { analysis, block } = context;
    if (analysis === undefined || hangsOnAnother(analysis)) return;
    yield* lostByVariant(analysis, block);
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

/** A variant that leaves out the weight which sizes its base: what it makes is then another amount. */
function* lostByVariant(analysis: Analysis, block: Block): Iterable<RuleFinding> {
  const whole = wholeOf(block);
  const { base, name } = whole?.own.top?.header ?? {};
  if (whole?.base.top === undefined || base === undefined || name === undefined) return;
  if (analysis.solved?.assumedScale !== true) return;
  const isWeighed = linesOf(whole.base.top).some((line) => {
    const { statement } = elementAt(whole.base.lines, line);
    return statement.kind === 'ingredient' && statement.amount.kind === 'mass';
  });
  if (!isWeighed) return;
  const said = message('no-scale.variant', { name: name.text, otherName: base.text });
  yield { line: 0, span: { start: name.start, end: name.end }, level: 'warning', message: said, fixes: [] };
}

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
