import type { Saying } from '../words/in-marks.ts';
import type { Speaker } from '../words/speaker.ts';
import type { FormulaTotals } from './totals.ts';
import type { TotalsCost, TotalsLabel } from './totals-product.ts';

/** Totals in the words of a speaker. */
export function wordedTotals(totals: FormulaTotals<Saying>, speaker: Speaker): FormulaTotals {
  const say = inWords(speaker);
  const { findings, heat, mixing, label, cost, ...figures } = totals;
  return {
    ...figures,
    ...(heat === undefined
      ? {}
      : { heat: { ...heat, bill: heat.bill.map((line) => ({ ...line, label: say(line.label) })) } }),
    ...(mixing === undefined ? {} : { mixing: { ...mixing, outlook: mixing.outlook.map(say) } }),
    ...(label === undefined ? {} : { label: wordedLabel(label, speaker) }),
    ...(cost === undefined ? {} : { cost: wordedCost(cost, speaker) }),
    findings: findings.map((one) => ({ ...one, message: say(one.message) })),
  };
}

/** The draft of a label in the words of a speaker. */
export function wordedLabel(label: TotalsLabel<Saying>, speaker: Speaker): TotalsLabel {
  const say = inWords(speaker);
  const { notes, nutritionUnknown, ...facts } = label;
  return {
    ...facts,
    ...(nutritionUnknown === undefined ? {} : { nutritionUnknown: say(nutritionUnknown) }),
    notes: notes.map(say),
  };
}

/** The cost of a formula in the words of a speaker. */
export function wordedCost(cost: TotalsCost<Saying>, speaker: Speaker): TotalsCost {
  const say = inWords(speaker);
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

/** A message in words; a name stays what it is. */
function inWords(speaker: Speaker): (said: Saying) => string {
  return (said) => (typeof said === 'string' ? said : speaker.say(said));
}
