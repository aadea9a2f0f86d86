import type { Analysis } from '../../analysis/analysis.ts';
import { message } from '../../words/message.ts';
import { paragraph } from '../engine/paragraph.ts';
import type { Rule } from '../engine/rule.ts';
import { numberOf, ownProblems, placeOf } from '../engine/rule-places.ts';

export const addedByPart: Rule = {
  code: 'added-by-part',
  level: 'hint',
  title: 'A drawing part has an ingredient that the formula’s lines lack',
  explanation:
    'What a part draws comes out of the formula’s lines. An ingredient of its own, its yeast say, has no line there and comes on ' +
    'top of the totals. That is usual, and the hint only says that it is counted; of a flour it is a warning, for the formula’s ' +
    'flours are 100% without it.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n\npreferment poolish:\n  draws 20% of flour\n  bread flour  100%\n  water  100%\n  instant yeast  0.1%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n  instant yeast  0.4%\n\npreferment poolish:\n  draws 20% of flour\n  bread flour  100%\n  water  100%\n  instant yeast  0.1%\n',
  *check({ analysis, block }) {
    // What the part was to draw, and cannot, is told already.
    const undrawn = new Set(
      ownProblems(analysis, 'drawn-not-in-formula').map(({ values }) => String(values.name).toLowerCase()),
    );
    for (const problem of ownProblems(analysis, 'added-by-part')) {
      if (undrawn.has(String(problem.values.name).toLowerCase())) continue;
      const grams = numberOf(problem.values.grams);
      const [name, part] = [String(problem.values.name), String(problem.values.part)];
      const said =
        grams === undefined || analysis?.solved?.assumedScale === true
          ? message('added-by-part.on-top', { name, part })
          : message('added-by-part.on-top-grams', { name, part, grams });
      const place = placeOf(block, problem);
      if (!isFlour(analysis, problem.lineId)) yield { ...place, message: said };
      else
        yield {
          ...place,
          level: 'warning',
          message: paragraph(said, message('added-by-part.flour', { name })),
        };
    }
  },
};

function isFlour(analysis: Analysis | undefined, lineId: string | undefined): boolean {
  return (analysis?.solved?.sections ?? []).some((section) =>
    section.lines.some((line) => line.id === lineId && line.role === 'flour'),
  );
}
