import { message } from '../../words/message.ts';
import { canBeJudged, heaviestPlace, tenthFix } from '../engine/ranges.ts';
import type { Rule } from '../engine/rule.ts';

/** Of all flour; common practice, no source. Sweet doughs go lower. What is off by the rounding of a weight is not beyond. */
const rounding = 0.005;
const least = 0.01;
const leastSweet = 0.004;
const most = 0.03;
const usual = { lowFraction: 0.015, highFraction: 0.025 };
const sweetFrom = 0.08;

export const saltRange: Rule = {
  code: 'salt-range',
  level: 'warning',
  title: 'Salt out of the usual range',
  explanation:
    'Bread has 1.5 to 2.5% salt on flour, sweet dough down to 1% (common practice). Shown from more than 3% and less than 1%, for sweet ' +
    'doughs less than 0.4%: most often a slip of the decimal point.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  20%\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n  salt  2%\n',
  *check(context) {
    const { analysis } = context;
    if (analysis?.solved?.saltFraction === undefined || !canBeJudged(analysis)) return;
    const { saltFraction: fraction, fractionByRole, overall } = analysis.solved;
    if (fraction <= 0) return;
    const isSweet = (fractionByRole.sugar ?? 0) >= sweetFrom;
    // Salted butter, cheese or olives bring salt too: it makes no low finding where they do.
    const inOthers = overall.reduce((sum, line) => {
      if (line.role === 'salt' || line.isFlour) return sum;
      return (
        sum +
        (line.fraction ?? 0) * (analysis.resolved.ingredients.get(line.key)?.composition.saltFraction ?? 0)
      );
    }, 0);
    const isLow = fraction + inOthers < (isSweet ? leastSweet : least) * (1 - rounding);
    if (fraction <= most * (1 + rounding) && !isLow) return;
    const { line, span, solved } = heaviestPlace(context, 'salt');
    yield {
      line,
      span,
      message: message(isLow ? 'salt-range.little' : 'salt-range.much', { fraction, ...usual }),
      fixes: isLow ? [] : tenthFix(context, solved, 0.01, 0.03),
    };
  },
};
