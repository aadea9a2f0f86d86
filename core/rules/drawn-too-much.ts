import { mass, percent, trimmed } from '../text/figures.ts';
import { replaceFix } from './fixes.ts';
import { amountPlace, numberOf, ownProblems, relatedTo } from './places.ts';
import type { Rule, RuleContext, RuleFix } from './rule.ts';

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
    // A part that draws what is not there has no size to be judged by, and that is told on its own line.
    const unsized = new Set(
      ownProblems(context.analysis, 'drawn-not-in-formula', 'drawn-not-in-part').map((one) => one.sectionId),
    );
    for (const problem of ownProblems(context.analysis, 'negative-remainder')) {
      if (problem.related?.some((one) => unsized.has(one.sectionId))) continue;
      const { line, span } = amountPlace(context, problem.lineId!);
      const { name, parts } = problem.values;
      const brought = numberOf(problem.values.broughtFraction);
      const has = numberOf(problem.values.formulaFraction);
      const over = numberOf(problem.values.overGrams);
      const figures =
        brought === undefined || has === undefined
          ? ''
          : `: ${percent(brought)} of the flour against ${percent(has)}`;
      const much =
        over === undefined || context.analysis?.solved?.assumedScale === true
          ? ''
          : `, ${mass(over)} too much`;
      const fix = drawLess(context, numberOf(problem.values.fittingShare));
      yield {
        line,
        span,
        message: `“${parts}” brings more “${name}” than the formula has${figures}${much}. Draw less, or raise this line.`,
        related: relatedTo(context.block, problem.related, 'brings it'),
        fixes: fix === undefined ? [] : [fix],
      };
    }
  },
};

/** Where one line draws, drawing this share of it fits. */
function drawLess({ analysis, block }: RuleContext, fittingShare: number | undefined): RuleFix | undefined {
  const draws = analysis!.resolved.model.sections.flatMap((section) => section.said.get('draws') ?? []);
  const only = draws[0];
  const value = only?.statement.value;
  if (fittingShare === undefined || draws.length !== 1 || value?.form !== 'draws' || value.all)
    return undefined;
  const token = block.lines[only!.line]!.tokens.find((one) => one.quantity?.kind === 'fraction');
  const fitting = Math.floor(value.fraction * fittingShare * 1000) / 10;
  if (token === undefined || !(fitting > 0)) return undefined;
  const written = `${trimmed(fitting, 1)}%`;
  return replaceFix(`Draw ${written} of ${value.name.text}`, only!.line, token, written, true);
}
