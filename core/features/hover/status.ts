import type { Analysis } from '../../analysis/analysis.ts';
import { makesSentence, shortFacts } from '../../facts/formula-words.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';

/** Hydration and weight of a formula in a few words, and in a sentence; undefined while they are not known. */
export function statusOf(
  analysis: Analysis,
  speaker: Speaker,
): { readonly formula: string; readonly text: string; readonly tooltip: string } | undefined {
  const { solved } = analysis;
  const facts = solved === undefined ? [] : shortFacts(solved);
  if (solved === undefined || facts.length === 0) return undefined;
  const formula = analysis.resolved.model.name.text;
  const { hydration, doughGrams, effectiveHydration } = solved;
  const short = [
    ...(hydration === undefined ? [] : [message('hint.share', { fraction: hydration })]),
    ...(doughGrams === undefined ? [] : [message('totals.dough', { doughGrams })]),
  ];
  const parts = [
    ...facts,
    ...(effectiveHydration === undefined
      ? []
      : [message('status.effective', { fraction: effectiveHydration })]),
  ];
  const makes = makesSentence(solved);
  const tooltip = [
    message('status.totals', { name: formula, parts }),
    ...(makes === undefined ? [] : [makes]),
  ];
  return {
    formula,
    text: speaker.say(message('totals.line', { parts: short })),
    tooltip: speaker.say(message('paragraph.of', { parts: tooltip })),
  };
}
