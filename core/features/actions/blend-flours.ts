import { flourMixOf } from '../../analysis/flour-of-mix.ts';
import { blendOf, type FlourShare } from '../../analysis/named-blend.ts';
import type { BlendTarget } from '../../calc/flour/blend.ts';
import { doughOf } from '../../calc/formula/formula-input.ts';
import type { LineModel } from '../../model/formula-model.ts';
import { elementAt, entryOf } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { type Message, message } from '../../words/message.ts';
import type { Action, ActionContext } from './action.ts';
import { lineAt, sectionAt, solvedLines } from './action-places.ts';
import { editsKeeping, isNear, wholeFormula } from './after.ts';
import { LineChanges } from './line-changes.ts';

/** Proteins are offered in steps of half a percent, this many on each side of what there is. */
const stepFraction = 0.005;
const stepsEachSide = 2;

export const blendTheFlours: Action = {
  id: 'blend-flours',
  kind: 'rewrite',
  variants: 'whole',
  name: 'Blend the flours to a protein',
  explanation:
    'Offered on a flour of the dough that has two flours or more in percent, for proteins at 14% moisture in steps of half a percent ' +
    'around what the mix has: the cheapest shares that reach it where every flour has a price, else those that change least. The title ' +
    'gives the shares in the order of the lines, and what a kilogram of the mix costs. Shares are written to a hundredth of a percent, and `balance` stays on its line. Other proteins, and a limit for ash, are for ' +
    '`doughwright blend`. Water is left to you: the hover of the header shows what the mix takes up.',
  example:
    'formula Quay Tin:\n  ‸very strong flour  50%\n  cake flour         50%\n  water              65%\n',
  *offers(context) {
    const asked = floursAt(context);
    const whole = asked === undefined ? undefined : wholeFormula(context);
    if (asked === undefined || whole === undefined) return;
    const now = flourMixOf(whole.analysis)?.proteinAt14;
    if (now?.known !== true) return;
    const isPriced = asked.flours.every(({ ingredient }) => ingredient.price !== undefined);
    const goal: BlendTarget['goal'] = isPriced ? 'cheapest' : 'nearest';
    const middle = Math.round(now.value / stepFraction);
    for (let step = middle - stepsEachSide; step <= middle + stepsEachSide; step++) {
      const proteinAt14 = step * stepFraction;
      const blend = blendOf(asked.flours, { proteinAt14, goal });
      if (!blend.known) continue;
      const { shares, pricePerKilogram } = blend.value.blend;
      const written = inHundredths(shares);
      // Nothing can be left for the balance only by taking its line out, which is more than a blend.
      if (
        asked.lines.some(
          ({ statement }, index) => statement.amount.kind === 'balance' && written[index] === 0,
        )
      )
        continue;
      if (written.every((share, index) => isNear(share, elementAt(asked.flours, index).share, 1e5))) continue;
      const { currency } = blend.value;
      const price =
        currency === undefined || pricePerKilogram === undefined
          ? undefined
          : { amount: pricePerKilogram, currency };
      yield {
        title: titleOf(proteinAt14, written, goal, price),
        argument: trimmed(proteinAt14 * 100, 1),
        edits: () => {
          const changes = new LineChanges(context);
          for (const [index, line] of asked.lines.entries()) {
            const { amount } = line.statement;
            if (amount.kind === 'balance') continue;
            const insert = `${trimmed(elementAt(written, index) * 100, 2)}%`;
            changes.edit(line.line, { start: amount.start, end: amount.end, insert });
          }
          return editsKeeping(
            context,
            changes,
            (was, is) => was.assumedScale === is.assumedScale && is.flourGrams !== undefined,
          );
        },
      };
    }
  },
};

/** What is aimed at, by what it is chosen, and the shares in the order of the lines. */
function titleOf(
  fraction: number,
  shares: readonly number[],
  goal: BlendTarget['goal'],
  price: { readonly amount: number; readonly currency: string } | undefined,
): Message {
  const blend = {
    fraction,
    facts: shares.map((share) => message('blend-flours.share', { fraction: share })),
  };
  if (goal !== 'cheapest') return message('blend-flours.nearest', blend);
  return price === undefined
    ? message('blend-flours.cheapest', blend)
    : message('blend-flours.cheapest-at', { ...blend, ...price });
}

interface Asked {
  readonly lines: readonly LineModel[];
  readonly flours: readonly FlourShare[];
}

/** The flours of the dough, where all are in percent or the balance and the cursor stands on one of them. */
function floursAt(context: ActionContext): Asked | undefined {
  const line = lineAt(context);
  const section = sectionAt(context);
  const analysis = context.analysis();
  if (line === undefined || section === undefined || analysis === undefined) return undefined;
  if (section.id !== doughOf(analysis.resolved.input).id) return undefined;
  const solved = solvedLines(context, section);
  if (solved.get(line.id)?.isFlour !== true) return undefined;
  const lines = section.lines.filter((one) => solved.get(one.id)?.isFlour === true);
  if (lines.length < 2) return undefined;
  const flours: FlourShare[] = [];
  for (const { id, statement } of lines) {
    const { key, fraction } = entryOf(solved, id);
    const ingredient = analysis.resolved.ingredients.get(key);
    const isPercent = statement.amount.kind === 'fraction' || statement.amount.kind === 'balance';
    if (!isPercent || ingredient?.flour === undefined || fraction === undefined) return undefined;
    flours.push({ name: statement.name.text, ingredient, share: fraction });
  }
  const sum = flours.reduce((total, { share }) => total + share!, 0);
  return Math.abs(sum - 1) < 1e-6 ? { lines, flours } : undefined;
}

/** Shares in whole hundredths of a percent that still make all of it. */
function inHundredths(shares: readonly number[]): number[] {
  const floors = shares.map((share) => Math.floor(share * 10_000 + 1e-9));
  let left = 10_000 - floors.reduce((sum, floor) => sum + floor, 0);
  const order = shares
    .map((share, index) => ({ index, remainder: share * 10_000 - elementAt(floors, index) }))
    .sort((one, other) => other.remainder - one.remainder);
  for (const { index } of order) {
    if (left <= 0) break;
    floors[index]!++;
    left--;
  }
  return floors.map((floor) => floor / 10_000);
}
