import { shortName } from '../../text/short-name.ts';
import { message } from '../../words/message.ts';
import type { Action } from './action.ts';
import { analysisAfter } from './after.ts';
import { flourAt, otherFlours, waterForFeel } from './flour-change.ts';
import { LineEdits, rename } from './ingredient-lines.ts';
import { LineChanges } from './line-changes.ts';

export const sameFeel: Action = {
  id: 'same-feel',
  kind: 'rewrite',
  variants: true,
  name: 'Change one flour for another, with the water for the same feel',
  explanation:
    'As the change of a flour, for those that take up more or less water, and the dough’s line of water with it: by the difference of the ' +
    'two absorptions times the share of that flour. The title gives the new amount of water, and behind ± how far it may be off where an ' +
    'absorption is estimated from the protein (the standard error of that estimate, our own fit). Hands have the last word.',
  example: 'formula Quay Tin:\n  ‸bread flour        100%\n  water              65%\n',
  *offers(context) {
    const there = flourAt(context);
    if (there === undefined) return;
    const { whole, flour } = there;
    for (const after of otherFlours(context, flour)) {
      const water = waterForFeel(whole, flour, after);
      if (water === undefined) continue;
      const { line, written, withinFraction = 0, ...edit } = water;
      const names = { name: shortName(there.name), otherName: shortName(after.name), written };
      yield {
        title:
          withinFraction > 0
            ? message('same-feel.change-within', { ...names, withinFraction })
            : message('same-feel.change', names),
        argument: after.key,
        edits: () => {
          const edits = new LineEdits();
          rename(edits, whole, flour.key, after.name);
          edits.add(line, edit);
          const changes = new LineChanges(context);
          if (!edits.writeOwn(whole, changes)) return undefined;
          const now = analysisAfter(context, changes);
          return now?.solved === undefined ? undefined : changes.edits();
        },
      };
    }
  },
};
