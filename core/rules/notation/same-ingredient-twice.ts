import { lineOfId } from '../../model/formula-model.ts';
import { message } from '../../words/message.ts';
import type { Rule } from '../engine/rule.ts';
import { ownProblems, placeOf } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';

export const sameIngredientTwice: Rule = {
  code: 'same-ingredient-twice',
  level: 'info',
  title: 'An ingredient stands twice in one section',
  explanation:
    'Both lines count: they add up. Merged files make such lines, and so does a quick addition. Write one line, or accept it.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  60%\n  salt  2%\n  water  5%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n',
  *check({ analysis, block }) {
    // Two that are to be worked out in one way have a rule of their own.
    const others = new Set(
      ownProblems(analysis, 'two-balances', 'two-hydrations', 'two-remaining').map(({ lineId }) => lineId),
    );
    if (analysis === undefined) return;
    const { input, statements } = analysis.resolved;
    for (const section of input.sections) {
      if (section.id.startsWith('F')) continue;
      const first = new Map<string, string>();
      for (const line of section.lines) {
        const before = first.get(line.key);
        if (before === undefined) {
          first.set(line.key, line.id);
          continue;
        }
        if (others.has(line.id)) continue;
        const statement = statements.get(line.id);
        const number = lineOfId(line.id);
        yield {
          line: number,
          span:
            statement === undefined
              ? wordsOf(block, number)
              : { start: statement.name.start, end: statement.name.end },
          message: message('same-ingredient-twice.adds-up', { name: line.name }),
          related: [
            {
              ...placeOf(block, { sectionId: section.id, lineId: before }),
              message: message('same-ingredient-twice.other'),
            },
          ],
        };
      }
    }
  },
};
