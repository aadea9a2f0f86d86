import { type AfterMixing, afterMixing, withFolds } from '../../analysis/after-mixing.ts';
import { trimmed } from '../../text/figures.ts';
import { message } from '../../words/message.ts';
import { replaceFix } from '../engine/fixes.ts';
import { paragraph } from '../engine/paragraph.ts';
import type { Rule, RuleContext, RuleFix } from '../engine/rule.ts';
import { headerPlace, quantityPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';
import { foldEdits } from './fold-edits.ts';
import {
  causesOf,
  doughMixes,
  isMostlyGluten,
  isWorkedEnough,
  phaseAt,
  type RunMix,
  timedPhases,
} from './mixes.ts';

/** A single stretch longer than this, in minutes, is no advice. */
const longestMinutes = 40;

export const underDeveloped: Rule = {
  code: 'under-developed',
  level: 'warning',
  title: 'The programme ends before the dough is developed',
  explanation:
    'By the flour, the water and the mixer the dough needs more work than the programme gives. Folds and bulk are counted: a fold as 15 % of the work of an improved mix, three hours of ' +
    'bulk as 10 % and each hour beyond as 12 % (common practice): a night finishes a dough that is only stirred together. Shown when all of it together is below 80 % of what is wished: an improved mix, or as `develop short` or `develop intensive` in the mix section says. The time is common practice, ±20 % until the ' +
    'mixer is calibrated; while enough work lies inside that band the finding is information only. Dough with a quarter of rye and more is only informed of, and above 40% there is no such finding: it is mixed until even.',
  bad:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n  fresh yeast  1%\n\nmix in spiral:\n  load flour, water, salt, fresh yeast\n' +
    '  speed 1 for 3 min\n\nprocess:\n  bulk 1 h at 25 °C\n  divide\n',
  good:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n  fresh yeast  1%\n\nmix in spiral:\n  load flour, water, salt, fresh yeast\n' +
    '  speed 1 for 3 min\n\nprocess:\n  bulk 3 h at 25 °C, fold at 45 min, fold at 90 min\n  divide\n',
  *check(context) {
    for (const run of doughMixes(context.analysis)) {
      const { outcome } = run.mix;
      const { developmentBand, development, wishedAfter, wishedDevelopment } = outcome;
      if (!wishedAfter.known || !development.known || !developmentBand.known || !(outcome.workedMinutes > 0))
        continue;
      const after = afterMixing(run.analysis.resolved.model);
      if (isWorkedEnough(development.value, after, outcome)) continue;
      const { low, expected, high } = wishedAfter.value;
      const end = outcome.programmeMinutes;
      const isSure = !isWorkedEnough(developmentBand.value.high, after, outcome) && isMostlyGluten(run);
      const line = phaseAt(run, end)?.line;
      const place =
        line === undefined
          ? headerPlace(context.block, run.model.headerLine)
          : { line, span: wordsOf(context.block, line) };
      const work = {
        fraction: development.value / wishedDevelopment,
        degree: message(`degree.${run.mix.wish ?? 'improved'}`),
        laterFraction: after.development / wishedDevelopment,
      };
      const isAlone = after.development < 0.01;
      const said = isAlone
        ? message(isSure ? 'under-developed.is' : 'under-developed.may-be', work)
        : message(isSure ? 'under-developed.is-later' : 'under-developed.may-be-later', work);
      const missing = { lowMinutes: Math.max(0, low - end), highMinutes: high - end };
      yield {
        ...place,
        message: paragraph(said, message('under-developed.needs', missing)),
        ...(isSure ? {} : { level: 'info' as const }),
        related: causesOf(context, run),
        fixes: [...foldFix(context, run, after), ...mixOnFix(context, run, expected)],
      };
    }
  },
};

function foldFix(context: RuleContext, { mix }: RunMix, after: AfterMixing): RuleFix[] {
  const edits = foldEdits(context);
  const { development } = mix.outcome;
  if (edits.length === 0 || !development.known) return [];
  if (!isWorkedEnough(development.value, withFolds(after, 2), mix.outcome)) return [];
  return [{ title: message('under-developed.fix-fold'), edits, preferred: true }];
}

/** Mixes on at the last speed, to the half minute. */
function mixOnFix({ block }: RuleContext, run: RunMix, minute: number): RuleFix[] {
  const phases = timedPhases(run);
  const last = phases[phases.length - 1];
  const span = last === undefined ? undefined : quantityPlace(block, last.line, 'duration');
  if (last === undefined || !last.works || span === undefined || minute - last.startMinutes > longestMinutes)
    return [];
  const written = `${trimmed(Math.ceil((minute - last.startMinutes) * 2) / 2, 1)} min`;
  return [replaceFix(message('under-developed.fix-mix-on', { meant: written }), last.line, span, written)];
}
