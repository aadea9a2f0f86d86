import type { Message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import type { FormulaTotals, TotalsHeat } from './totals.ts';
import type { TotalsCost, TotalsLabel } from './totals-product.ts';

/** Totals in the words of a speaker. */
export function wordedTotals(totals: FormulaTotals<Message>, speaker: Speaker): FormulaTotals {
  const { say } = speaker;
  const { findings, heat, mixing, label, cost, ...figures } = totals;
  return {
    ...figures,
    ...(heat === undefined ? {} : { heat: wordedHeat(heat, speaker) }),
    ...(mixing === undefined ? {} : { mixing: { ...mixing, outlook: mixing.outlook.map(say) } }),
    ...(label === undefined ? {} : { label: wordedLabel(label, speaker) }),
    ...(cost === undefined ? {} : { cost: wordedCost(cost, speaker) }),
    findings: findings.map((one) => ({ ...one, message: say(one.message) })),
  };
}

/** Heat with the names of its sources in words; a portion has its own. */
function wordedHeat(heat: TotalsHeat<Message>, { say }: Speaker): TotalsHeat {
  const bill = heat.bill.map(({ label, ...line }) => ({
    ...line,
    label: typeof label === 'string' ? label : say(label),
  }));
  return { ...heat, bill };
}

/** The draft of a label in the words of a speaker. */
export function wordedLabel(label: TotalsLabel<Message>, speaker: Speaker): TotalsLabel {
  const { say } = speaker;
  const { notes, nutritionUnknown, ...facts } = label;
  return {
    ...facts,
    ...(nutritionUnknown === undefined ? {} : { nutritionUnknown: say(nutritionUnknown) }),
    notes: notes.map(say),
  };
}

/** The cost of a formula in the words of a speaker. */
export function wordedCost(cost: TotalsCost<Message>, speaker: Speaker): TotalsCost {
  const { say } = speaker;
  const { text, lines, unknown, ...facts } = cost;
  return {
    text: say(text),
    ...facts,
    lines: lines.map(({ reason, ...line }) =>
      reason === undefined ? line : { ...line, reason: say(reason) },
    ),
    ...(unknown === undefined ? {} : { unknown: say(unknown) }),
  };
}
