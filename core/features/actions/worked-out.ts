import type { LineModel } from '../../model/formula-model.ts';
import { message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { lineAt, sectionAt, solvedLines } from './action-places.ts';
import { editsKeeping, wholeFormula } from './after.ts';
import { exactPercent } from './exact-figures.ts';
import { LineChanges } from './line-changes.ts';
import { writeAmount } from './rewriting.ts';

export const giveBalance: Action = {
  id: 'give-balance',
  kind: 'rewrite',
  variants: 'whole',
  name: 'Give this flour the balance',
  explanation:
    'The flour at the cursor becomes `balance`: whatever is left of 100 % flour. The line that had the balance gets the percent it ' +
    'came to.',
  example:
    'formula Quay Tin:\n  ‸bread flour        80%\n  medium rye         20%\n  water              65%\n',
  *offers(context) {
    const line = lineAt(context);
    const section = sectionAt(context);
    if (line === undefined || section === undefined || line.statement.amount.kind !== 'fraction') return;
    const solved = solvedLines(context, section);
    if (solved.get(line.id)?.isFlour !== true) return;
    const flours = [...solved.values()].filter((one) => one.isFlour);
    const flour = flours.reduce((sum, one) => sum + (one.fraction ?? 0), 0);
    // Where the flours make more or less than 100 %, the balance would be another weight.
    if (flours.length < 2 || Math.abs(flour - 1) > 1e-9) return;
    const before = section.lines.find(({ statement }) => statement.amount.kind === 'balance');
    const name = line.statement.name.text;
    yield {
      title:
        before === undefined
          ? message('give-balance.give', { name })
          : message('give-balance.swap', { name, otherName: before.statement.name.text }),
      edits: () => {
        const changes = new LineChanges(context);
        writeAmount(changes, line, 'balance');
        const share = before === undefined ? undefined : solved.get(before.id)?.fraction;
        if (before !== undefined && share === undefined) return undefined;
        if (before !== undefined) writeAmount(changes, before, exactPercent(share!));
        return editsKeeping(context, changes);
      },
    };
  },
};

export const writeOut: Action = {
  id: 'write-out',
  kind: 'rewrite',
  variants: 'whole',
  name: 'Write out what is worked out',
  explanation: '`balance` and `to N% hydration` become the percent they come to.',
  example: 'formula Quay Tin:\n  bread flour        100%\n  ‸water              to 65% hydration\n',
  *offers(context) {
    const line = lineAt(context);
    const { kind } = line?.statement.amount ?? {};
    if (line === undefined || (kind !== 'balance' && kind !== 'hydration')) return;
    const fraction = fractionOf(context, line);
    if (fraction === undefined) return;
    yield {
      title: message('write-out.write', { name: line.statement.name.text, fraction }),
      edits: () => {
        const changes = new LineChanges(context);
        writeAmount(changes, line, exactPercent(fraction));
        return editsKeeping(context, changes);
      },
    };
  },
};

export const stateHydration: Action = {
  id: 'state-hydration',
  kind: 'rewrite',
  variants: 'whole',
  name: 'State the hydration',
  explanation:
    'The water at the cursor becomes `to N% hydration`, or `to N% effective hydration` with the water inside milk, eggs and the ' +
    'like, so that it follows when flour, preferments or milk change. It weighs the same now.',
  example:
    'formula Quay Tin:\n  bread flour        100%\n  ‸water              65%\n  whole milk         10%\n',
  *offers(context) {
    const line = lineAt(context);
    const section = sectionAt(context);
    if (line === undefined || section === undefined) return;
    const { amount, name } = line.statement;
    const whole = wholeFormula(context);
    if (whole === undefined || !['fraction', 'mass', 'hydration', 'volume'].includes(amount.kind)) return;
    if (solvedLines(context, section).get(line.id)?.role !== 'water') return;
    const solved =
      section.kind === 'formula' ? whole.solved : whole.solved.sections.find(({ id }) => id === section.id);
    const same = Math.abs((solved?.hydration ?? 0) - (solved?.effectiveHydration ?? 0)) < 1e-9;
    for (const effective of [false, true]) {
      const fraction = effective ? solved?.effectiveHydration : solved?.hydration;
      if (fraction === undefined || (effective && same)) continue;
      if (amount.kind === 'hydration' && amount.effective === effective) continue;
      const words = effective ? 'effective hydration' : 'hydration';
      yield {
        title: message(effective ? 'state-hydration.effective' : 'state-hydration.plain', {
          name: name.text,
          fraction,
        }),
        argument: words,
        edits: () => {
          const changes = new LineChanges(context);
          writeAmount(changes, line, `to ${exactPercent(fraction)} ${words}`);
          return editsKeeping(context, changes);
        },
      };
    }
  },
};

function fractionOf(context: ActionContext, { id }: LineModel): number | undefined {
  const section = sectionAt(context);
  return section === undefined ? undefined : solvedLines(context, section).get(id)?.fraction;
}
