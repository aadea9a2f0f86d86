import { waterLever } from '../../analysis/water-axis.ts';
import { absorptionAt14, type FlourData } from '../../calc/flour/flour.ts';
import { lineOfId } from '../../model/formula-model.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import type { Action } from './action.ts';
import { lineAt, sectionAt, solvedLines } from './action-places.ts';
import { analysisAfter, wholeFormula } from './after.ts';
import { leastUptake, otherFlours, uptake } from './change-flour.ts';
import { LineEdits, rename } from './ingredient-lines.ts';
import { LineChanges } from './line-changes.ts';

/** Standard error of an absorption that is estimated from protein and starch damage: that of the fit (`fittedAbsorption`). */
const estimateWithin = 0.0103;

export const sameFeel: Action = {
  id: 'same-feel',
  kind: 'rewrite',
  name: 'Change one flour for another, with the water for the same feel',
  explanation:
    'As the change of a flour, for those that take up more or less water, and the dough’s line of water with it: by the difference of the ' +
    'two absorptions times the share of that flour. The title gives the new amount of water, and behind ± how far it may be off where an ' +
    'absorption is estimated from the protein (the standard error of that estimate, our own fit). Hands have the last word.',
  example: 'formula Quay Tin:\n  ‸bread flour        100%\n  water              65%\n',
  *offers(context) {
    const line = lineAt(context);
    const section = sectionAt(context);
    if (line === undefined || section === undefined) return;
    const solved = solvedLines(context, section).get(line.id);
    const whole = solved?.isFlour === true ? wholeFormula(context) : undefined;
    const before = whole?.analysis.resolved.ingredients.get(solved?.key ?? '');
    const lever = whole === undefined ? undefined : waterLever(whole.analysis);
    const own = whole?.solved.hydration;
    if (whole === undefined || before?.flour === undefined || lever === undefined || own === undefined)
      return;
    const share = whole.solved.overall.find(({ key }) => key === before.key)?.fraction ?? 0;
    for (const after of otherFlours(context, before)) {
      const more = uptake(before, after);
      if (more === undefined || after.flour === undefined || Math.abs(more) < leastUptake) continue;
      const amount = lever.amountFor(own + more * share);
      if (!(amount > 0) || !Number.isFinite(amount)) continue;
      const waterLine = lineOfId(lever.line.id);
      const { statement } = elementAt(context.block.lines, waterLine);
      if (statement.kind !== 'ingredient') continue;
      const inGrams = lever.line.amount.kind === 'grams';
      const written = inGrams ? `${trimmed(amount, 0)} g` : `${trimmed(amount * 100, 1)}%`;
      const isHydration = statement.amount.kind === 'hydration';
      const { start, end } = statement.amount;
      const said = context.block.lines[waterLine]!.text.slice(start, end);
      const insert = isHydration ? said.replace(/\d+(?:[.,]\d+)?\s*%/, written) : written;
      const within = Math.hypot(errorOf(before.flour), errorOf(after.flour)) * share;
      const names = { name: line.statement.name.text, otherName: after.name, written };
      yield {
        title:
          within > 0 && !inGrams
            ? message('same-feel.change-within', { ...names, withinFraction: within })
            : message('same-feel.change', names),
        argument: after.key,
        edits: () => {
          const edits = new LineEdits();
          rename(edits, whole, before.key, after.name);
          edits.add(waterLine, { start, end, insert });
          const changes = new LineChanges(context);
          if (!edits.writeOwn(whole, changes)) return undefined;
          const now = analysisAfter(context, changes);
          return now?.solved === undefined ? undefined : changes.edits();
        },
      };
    }
  },
};

/** How far an absorption may be off, as a fraction of the flour: nothing where a file states it. */
function errorOf(flour: FlourData): number {
  if (flour.absorption !== undefined) return 0;
  return absorptionAt14(flour).known ? estimateWithin : 0;
}
