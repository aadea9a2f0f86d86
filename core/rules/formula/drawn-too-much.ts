import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { type Message, message } from '../../words/message.ts';
import { replaceFix } from '../engine/fixes.ts';
import { formulaOf, type Rule, type RuleContext, type RuleFix } from '../engine/rule.ts';
import { amountPlace, namesOf, numberOf, ownProblems, relatedTo } from '../engine/rule-places.ts';

export const drawnTooMuch: Rule = {
  code: 'drawn-too-much',
  level: 'error',
  title: 'What is drawn brings more than the formula has',
  explanation:
    'A part with `draws` is taken out of the formula’s lines. This one brings more of an ingredient than its line has, so less ' +
    'than nothing would be left to weigh. Draw less, make the part with less of it, or raise the formula’s line.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  60%\n\npreferment poolish:\n  draws 70% of flour\n  bread flour  100%\n  water  100%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  60%\n\npreferment poolish:\n  draws 30% of flour\n  bread flour  100%\n  water  100%\n',
  *check(context) {
    // A part that draws what is not there has no size to be judged by, and that is shown on its own line.
    const unsized = new Set(
      ownProblems(context.analysis, 'drawn-not-in-formula', 'drawn-not-in-part').map((one) => one.sectionId),
    );
    for (const problem of ownProblems(context.analysis, 'negative-remainder')) {
      if (problem.related?.some((one) => unsized.has(one.sectionId))) continue;
      const { line, span } = amountPlace(context, problem.lineId!);
      const brought = numberOf(problem.values.broughtFraction);
      const has = numberOf(problem.values.formulaFraction);
      const over = numberOf(problem.values.overGrams);
      const grams = context.analysis?.solved?.assumedScale === true ? undefined : over;
      const who = { names: namesOf(problem.values.parts), name: String(problem.values.name) };
      const fix = drawLess(context, numberOf(problem.values.fittingShare));
      yield {
        line,
        span,
        message: tooMuch(who, brought, has, grams),
        related: relatedTo(context.block, problem.related, message('drawn-too-much.brings')),
        fixes: fix === undefined ? [] : [fix],
      };
    }
  },
};

function tooMuch(
  who: { readonly names: readonly string[]; readonly name: string },
  fraction: number | undefined,
  usualFraction: number | undefined,
  grams: number | undefined,
): Message {
  if (fraction === undefined || usualFraction === undefined)
    return grams === undefined
      ? message('drawn-too-much.unsized', who)
      : message('drawn-too-much.grams', { ...who, grams });
  const shares = { ...who, fraction, usualFraction };
  return grams === undefined
    ? message('drawn-too-much.shares', shares)
    : message('drawn-too-much.shares-grams', { ...shares, grams });
}

/** Where one line draws, drawing this share of it fits. */
function drawLess(context: RuleContext, fittingShare: number | undefined): RuleFix | undefined {
  const { sections } = formulaOf(context).resolved.model;
  const [only, ...others] = sections.flatMap((section) => section.said.get('draws') ?? []);
  if (only === undefined || others.length > 0) return undefined;
  const { value } = only.statement;
  if (fittingShare === undefined || value?.form !== 'draws' || value.all) return undefined;
  const token = elementAt(context.block.lines, only.line).tokens.find(
    (one) => one.quantity?.kind === 'fraction',
  );
  const fitting = Math.floor(value.fraction * fittingShare * 1000) / 10;
  if (token === undefined || !(fitting > 0)) return undefined;
  const written = `${trimmed(fitting, 1)}%`;
  const title = message('fix.draw', { meant: written, name: value.name.text });
  return replaceFix(title, only.line, token, written, true);
}
