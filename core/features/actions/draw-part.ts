import type { Content } from '../../calc/formula/contents.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { editsKeeping } from './after.ts';
import { exactPercent } from './exact-figures.ts';
import { LineChanges } from './line-changes.ts';
import { commentOf, ingredientLine, layoutOf } from './line-layout.ts';
import { type PartAt, partAt } from './part-forms.ts';
import { drawWords, flourOfLines, withContents, writeDraws, writeLines } from './rewriting.ts';

export const drawPart: Action = {
  id: 'draw-part',
  kind: 'rewrite',
  name: 'From added to drawn preferment',
  explanation:
    'The other way round: the lines of the formula become the overall formula, and the part `draws` its share out of them. What only ' +
    'the part has becomes a line of the formula too, yeast excepted, which stays the part’s own.',
  example:
    'formula Quay Tin:\n  yield 10 kg\n  bread flour        100%\n  water              60%\n  ‸poolish            50%\n\npreferment poolish:\n  bread flour        100%\n  water              100%\n',
  *offers(context) {
    const at = partAt(context);
    if (at?.use === undefined || at.solvedPart.drawn) return;
    yield {
      title: message('draw-part.write', { part: at.part.name!.text }),
      edits: () => editsOf(context, at),
    };
  },
};

function editsOf(context: ActionContext, at: PartAt) {
  const { analysis, part, dough, solvedDough, doughLines, contents, use } = at;
  const changes = new LineChanges(context);
  const { wanted, lacking } = withContents(solvedDough.lines, contents);
  const { ingredients } = analysis.resolved;
  const added = contents.flatMap((one) => {
    const ingredient = ingredients.get(one.key);
    const isOwn = ingredient?.role === 'yeast' || !lacking.includes(one.key) || !(one.grams > 0);
    return isOwn
      ? []
      : [{ ...one, role: ingredient?.role ?? 'other', isFlour: ingredient?.isFlour === true }];
  });
  const flour =
    flourOfLines(solvedDough.lines, wanted) +
    added.reduce((sum, one) => sum + (one.isFlour ? one.grams : 0), 0);
  if (!(flour > 0) || writeLines(changes, dough, doughLines, wanted, flour) === undefined) return undefined;
  const drawn = drawnOf(at, wanted, added, flour);
  if (drawn === undefined || writeDraws(changes, at, part.id, wanted, added) === undefined) return undefined;
  const comment = commentOf(use!.parsed);
  const layout = layoutOf(dough);
  const lines = added.map((one) => ingredientLine(one.name, exactPercent(one.grams / flour), layout));
  changes.replace(use!.line, ...lines);
  changes.addBelow(part.headerLine, `${layoutOf(part).indent}draws ${drawn}${comment}`);
  return editsKeeping(context, changes);
}

/** How the part says what it draws: of the flour, else of the ingredient it has most of besides water. */
function drawnOf(
  { analysis, contents, solvedDough }: PartAt,
  wanted: ReadonlyMap<string, number>,
  added: readonly (Content & { readonly isFlour: boolean })[],
  flour: number,
): string | undefined {
  const { ingredients } = analysis.resolved;
  const overall = (key: string): number =>
    solvedDough.lines.reduce(
      (sum, line) => sum + (!line.part && line.key === key ? (wanted.get(line.id) ?? line.grams ?? 0) : 0),
      added.reduce((sum, one) => sum + (one.key === key ? one.grams : 0), 0),
    );
  const [most] = contents
    .filter(({ key, grams }) => grams > 0 && ingredients.get(key)?.role !== 'water')
    .sort((one, other) => other.grams - one.grams);
  const flours = contents.filter(({ key }) => ingredients.get(key)?.isFlour === true);
  const own = flours.reduce((sum, { grams }) => sum + grams, 0);
  const [only] = flours;
  // All of one flour is told by its name: `draws all medium rye` stays true when the rest of the formula changes.
  if (own > 0 && !(flours.length === 1 && Math.abs(overall(only!.key) - only!.grams) <= 1e-9 * own))
    return drawWords(own / flour, 'flour');
  const one = own > 0 ? only : most;
  if (one === undefined || !(overall(one.key) > 0)) return undefined;
  return drawWords(one.grams / overall(one.key), one.name);
}
