import { message } from '../../words/message.ts';
import type { Action } from './action.ts';
import { sectionAt } from './action-places.ts';
import { editsKeeping } from './after.ts';
import { exactMass } from './exact-figures.ts';
import { LineChanges } from './line-changes.ts';
import { writeAmount } from './rewriting.ts';

export const weighMeasures: Action = {
  id: 'weigh-measures',
  kind: 'rewrite',
  variants: 'whole',
  name: 'Cups, spoons and pieces to grams',
  explanation:
    'Every volume and number of pieces in the formula becomes a mass, by the density and the weight of a piece that the ingredient’s ' +
    'section states, else those of the catalogue (common practice: a level measure, spooned, not packed). A cup is the bakery’s ' +
    '`cup`, else 250 ml. Lines whose density or piece weight is not known stay as they are and keep their finding.',
  example:
    'formula Quay Tin:\n  bread flour        4 cups\n  ‸water              350 ml\n  egg                2 pieces\n  salt               2 tsp\n',
  *offers(context) {
    if (sectionAt(context) === undefined) return;
    const analysis = context.analysis();
    if (analysis?.solved === undefined) return;
    const { model, input } = analysis.resolved;
    const measured = model.sections.flatMap((section) => {
      const read = input.sections.find(({ id }) => id === section.id)?.lines ?? [];
      return section.lines.flatMap((line) => {
        const { amount } = line.statement;
        const known = read.find(({ id }) => id === line.id)?.amount;
        if (amount.kind !== 'volume' && amount.kind !== 'count') return [];
        if (known?.kind !== 'grams' && known?.kind !== 'perPiece') return [];
        return [{ line, grams: known.grams, aPiece: known.kind === 'perPiece' }];
      });
    });
    if (measured.length === 0) return;
    const name = model.name.text;
    const count = measured.length;
    yield {
      title:
        count === 1
          ? message('weigh-measures.line', { name })
          : message('weigh-measures.lines', { name, count }),
      edits: () => {
        const changes = new LineChanges(context);
        for (const { line, grams, aPiece } of measured)
          writeAmount(changes, line, `${exactMass(grams)}${aPiece ? ' a piece' : ''}`);
        return editsKeeping(context, changes);
      },
    };
  },
};
