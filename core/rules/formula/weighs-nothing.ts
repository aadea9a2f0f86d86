import { lineOfId } from '../../model/formula-model.ts';
import { message } from '../../words/message.ts';
import { removeLineFix } from '../engine/fixes.ts';
import type { Rule } from '../engine/rule.ts';
import { amountPlace } from '../engine/rule-places.ts';

export const weighsNothing: Rule = {
  code: 'weighs-nothing',
  level: 'info',
  title: 'An ingredient of which nothing is weighed',
  explanation:
    'The line says 0: it changes nothing, and on the sheet it is a row to be passed over. Write how much, take the line out, or ' +
    'write `# accept weighs-nothing: …` where it stands for a trial to come.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  0%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n',
  *check(context) {
    const { analysis, block } = context;
    // Flour of nothing is told by its own rule: every percentage hangs on it.
    if (analysis === undefined || analysis.problems.some((problem) => problem.kind === 'no-flour')) return;
    for (const { lines } of analysis.resolved.input.sections) {
      for (const { id, name, amount } of lines) {
        if (!analysis.resolved.statements.has(id)) continue;
        const isNothing =
          ((amount.kind === 'fraction' || amount.kind === 'toHydration') && amount.fraction === 0) ||
          ((amount.kind === 'grams' || amount.kind === 'perPiece') && amount.grams === 0);
        if (!isNothing) continue;
        const { line, span } = amountPlace(context, id);
        yield {
          line,
          span,
          message: message('weighs-nothing.none', { name }),
          fixes: [removeLineFix(message('fix.take-this-line-out'), block, lineOfId(id))],
        };
      }
    }
  },
};
