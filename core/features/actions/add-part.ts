import { elementAt, lastOf } from '../../text/element.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { editsKeeping } from './after.ts';
import { exactPercent } from './exact-figures.ts';
import { LineChanges } from './line-changes.ts';
import { commentOf, ingredientLine, layoutOf } from './line-layout.ts';
import { type PartAt, partAt } from './part-forms.ts';
import { flourOfLines, withContents, writeDraws, writeLines } from './rewriting.ts';

export const addPart: Action = {
  id: 'add-part',
  kind: 'rewrite',
  variants: 'whole',
  name: 'From drawn to added preferment',
  explanation:
    'A part that `draws` is taken out of the lines of the formula, which are the overall formula. This writes the lines as what is ' +
    'weighed into the final mix, in percent of the flour there, and the part as a line among them. The overall formula stays.',
  example:
    'formula Quay Tin:\n  yield 10 kg\n  bread flour        100%\n  water              65%\n\npreferment poolish:\n  ‸draws 20% of flour\n  bread flour        100%\n  water              100%\n',
  *offers(context) {
    const at = partAt(context);
    if (at === undefined || !at.solvedPart.drawn) return;
    yield {
      title: message('add-part.write', { part: at.part.name!.text }),
      edits: () => editsOf(context, at),
    };
  },
};

function editsOf(context: ActionContext, at: PartAt) {
  const { part, solvedPart, dough, solvedDough, doughLines, contents } = at;
  const changes = new LineChanges(context);
  const less = contents.map(({ key, grams }) => ({ key, grams: -grams }));
  const { wanted } = withContents(solvedDough.lines, less);
  const flour = flourOfLines(solvedDough.lines, wanted);
  if (!(flour > 1e-9) || writeLines(changes, dough, doughLines, wanted, flour) === undefined)
    return undefined;
  if (writeDraws(changes, at, part.id, wanted) === undefined) return undefined;
  const draws = part.said.get('draws') ?? [];
  const comments = draws.map(({ line }) => commentOf(elementAt(context.block.lines, line))).join('');
  for (const { line } of draws) changes.remove(line);
  const amount = exactPercent(solvedPart.usedGrams! / flour);
  const layout = layoutOf(dough);
  const name = elementAt(context.block.lines, part.headerLine).text.slice(part.name!.start, part.name!.end);
  changes.addBelow(lastOf(dough.lines).line, ingredientLine(name, amount, layout) + comments);
  return editsKeeping(context, changes);
}
