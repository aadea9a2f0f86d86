import type { Ingredient } from '../../model/found-ingredient.ts';
import { shortName } from '../../text/short-name.ts';
import { type Message, message } from '../../words/message.ts';
import type { Action } from './action.ts';
import { editsKeeping, isNear } from './after.ts';
import { flourAt, leastUptake, otherFlours, uptake } from './flour-change.ts';
import { LineEdits, rename } from './ingredient-lines.ts';
import { LineChanges } from './line-changes.ts';

export const changeFlour: Action = {
  id: 'change-flour',
  kind: 'rewrite',
  variants: true,
  name: 'Change one flour for another',
  explanation:
    'Offered on a flour, for those that your own files define, nearest first, then for those of the catalogue of the same grain. It ' +
    'changes every line of the flour in the formula, what is drawn of it and what is loaded, and keeps all weights: hydration and ' +
    'effective hydration stay. The title gives how much more or less water the new flour takes up, in percent of its own weight by its ' +
    'farinograph absorption or the estimate of it, and left to you.',
  example: 'formula Quay Tin:\n  ‸bread flour        100%\n  water              65%\n',
  *offers(context) {
    const there = flourAt(context);
    if (there === undefined) return;
    const { whole, flour: before } = there;
    for (const after of otherFlours(context, before)) {
      yield {
        title: titleOf(there.name, before, after),
        argument: after.key,
        edits: () => {
          const edits = new LineEdits();
          rename(edits, whole, before.key, after.name);
          const changes = new LineChanges(context);
          if (!edits.writeOwn(whole, changes)) return undefined;
          return editsKeeping(context, changes, (was, is) => {
            const rows = new Map(is.overall.map((row) => [row.key, row.fraction]));
            return (
              isNear(was.effectiveHydration, is.effectiveHydration, 1) &&
              isNear(was.hydration, is.hydration, 1) &&
              was.overall.every((row) =>
                isNear(row.fraction, rows.get(row.key === before.key ? after.key : row.key), 1),
              )
            );
          });
        },
      };
    }
  },
};

/** The change, and how much more or less water the new flour takes up, of its own weight. */
function titleOf(from: string, before: Ingredient, after: Ingredient): Message {
  const [name, otherName] = [shortName(from), shortName(after.name)];
  const more = uptake(before, after);
  if (more === undefined || Math.abs(more) < leastUptake)
    return message('change-flour.change', { name, otherName });
  const apartFraction = Math.abs(more);
  return message(more > 0 ? 'change-flour.takes-more' : 'change-flour.takes-less', {
    name,
    otherName,
    apartFraction,
  });
}
