import { type Analysis, solutionOf } from '../../analysis/analysis.ts';
import { type Fermentation, fermentationOf } from '../../analysis/fermentation-course.ts';
import { referenceBulkMinutes, referenceCelsius } from '../../calc/fermentation/fermentation.ts';
import { asFreshYeast } from '../../calc/fermentation/yeast.ts';
import { formsGlutenNetwork } from '../../calc/flour/flour.ts';
import type { ParsedLine } from '../../syntax/tree.ts';
import { message } from '../../words/message.ts';
import { paragraph } from '../engine/paragraph.ts';
import type { Rule } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';

/**
 * What doughs ferment from mixing to the oven, as many times what fills a bulk: lean ones, and rich ones, which are raised against
 * their fat and sugar with more yeast and more time. Common practice, no source.
 */
const leanBulks = 1.7;
const richBulks = 3;
/** Fat, sugar and egg together, of all flour, from which a dough is rich; our own choice. */
const richFraction = 0.2;
/** Only beyond this factor is anything said: the figure is good to half as much again, and so is what is usual. */
const beyond = 2.5;

export const fermentationTime: Rule = {
  code: 'fermentation-time',
  level: 'info',
  title: 'The dough ferments far longer or shorter than is usual',
  explanation:
    'From yeast or levain, salt, sugar and the dough’s own temperature through every step, the time to the oven is counted as time at 27 °C of ' +
    'a dough with 2 % fresh yeast and 2 % salt, which fills its bulk in 60 to 75 minutes (common practice) and takes some 1.7 times that to the ' +
    'oven, a rich one up to three times. Only beyond a factor of two and a half is anything said, and never of doughs mostly of rye. Dough that goes into the cold before it is ' +
    'divided may lie there flat and cool fast, or stand as one lump: only what is too long either way is shown. A `rise` in a trial of the formula replaces the rate by what was seen.',
  bad:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n  fresh yeast  0.2%\n\nprocess:\n  bulk 1 h at 25 °C\n  divide\n  proof 45 min at 27 °C\n' +
    '  bake 35 min at 230 °C\n',
  good:
    'formula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n  fresh yeast  2%\n\nprocess:\n  bulk 1 h at 25 °C\n  divide\n  proof 45 min at 27 °C\n' +
    '  bake 35 min at 230 °C\n',
  *check({ analysis, block }) {
    if (analysis === undefined || analysis.resolved.model.processes.length === 0) return;
    const fermentation = fermentationOf(analysis);
    if (!fermentation.known || !fermentation.value.isWhole || isMostlyWithoutNetwork(analysis)) return;
    const { steps, leavening, isObserved } = fermentation.value;
    const longest = steps.reduce(
      (one, other) => (one === undefined || other.minutes > one.minutes ? other : one),
      steps[0],
    );
    if (longest === undefined) return;
    const found =
      tooLong(analysis, fermentation.value) ??
      (block.lines.some(lacksItsTime) ? undefined : tooShort(analysis, fermentation.value));
    if (found === undefined) return;
    const { bulks, usualBulks } = found;
    const ratio = bulks / usualBulks;
    const [seconds, usualSeconds] = [secondsOf(bulks), secondsOf(usualBulks)];
    const yeast = leavening.freshYeastFraction / ratio;
    const help =
      leavening.levainFraction > 0 || !(yeast < mostYeast && yeast > leastYeast)
        ? message(ratio > 1 ? 'fermentation-time.shorten' : 'fermentation-time.lengthen')
        : message('fermentation-time.yeast', { fraction: yeast });
    const facts = { seconds, usualSeconds, celsius: referenceCelsius, fraction: referenceYeast };
    const said = message(isObserved ? 'fermentation-time.off-observed' : 'fermentation-time.off', facts);
    yield {
      line: longest.line,
      span: wordsOf(block, longest.line),
      message: paragraph(said, help),
    };
  },
};

/** Whether a line says something of a step that could not be read, `24 h at 4 °C`, and no time came of it. */
const lacksItsTime = ({ statement, problems }: ParsedLine): boolean =>
  problems.length > 0 &&
  (statement.kind === 'unreadable' || (statement.kind === 'step' && statement.seconds === undefined));

/** Fresh yeast of the dough that a time is compared with, of flour. */
const referenceYeast = 0.02;

/** How long that dough takes for so many bulks, to five minutes and never nothing. */
function secondsOf(bulks: number): number {
  return 300 * Math.max(1, Math.round((bulks * referenceBulkMinutes) / 5));
}

/** A fermentation that is off, and what is usual; each as many times what fills a bulk. */
interface Off {
  readonly bulks: number;
  readonly usualBulks: number;
}

/** Too long even where the dough lies flat in the cold, and for a dough as rich as it is. */
function tooLong(analysis: Analysis, { bulks, bulksLaidFlat }: Fermentation): Off | undefined {
  if (bulks <= leanBulks * beyond) return undefined;
  const { fat = 0, sugar = 0, egg = 0 } = solutionOf(analysis).fractionByRole;
  const richness = Math.min(1, (fat + sugar + egg) / richFraction);
  const usualBulks = leanBulks + (richBulks - leanBulks) * richness;
  return bulksLaidFlat > usualBulks * beyond ? { bulks: bulksLaidFlat, usualBulks } : undefined;
}

/**
 * Too short even for a lean dough that stays as warm as one lump, and whose preferments have bred as much yeast again as was
 * weighed into them (common practice, no source).
 */
function tooShort(analysis: Analysis, { bulks }: Fermentation): Off | undefined {
  if (bulks >= leanBulks / beyond) return undefined;
  const fresh = (lines: readonly { readonly key: string; readonly grams?: number }[]): number =>
    lines.reduce((sum, { key, grams = 0 }) => {
      const one = analysis.resolved.ingredients.get(key);
      return one?.role === 'yeast' ? sum + grams * asFreshYeast(one.name, one.composition.water) : sum;
    }, 0);
  const { overall, sections } = solutionOf(analysis);
  const inAll = fresh(overall);
  const bred = sections.reduce(
    (sum, { kind, lines }) => (kind === 'preferment' ? sum + fresh(lines) : sum),
    0,
  );
  const most = inAll > 0 ? bulks * (1 + Math.min(1, bred / inAll)) : bulks;
  return most < leanBulks / beyond ? { bulks, usualBulks: leanBulks } : undefined;
}

/** Dough of rye and the like is ripe after far less growth, and nobody measures it by doubling. */
function isMostlyWithoutNetwork({ solved, resolved }: Analysis): boolean {
  const without = (solved?.overall ?? []).reduce((sum, line) => {
    const grain = resolved.ingredients.get(line.key)?.flour?.grain;
    return grain === undefined || formsGlutenNetwork(grain) ? sum : sum + (line.fraction ?? 0);
  }, 0);
  return without > 0.4;
}

/** Yeast that is still advice, as fresh yeast, of flour. */
const mostYeast = 0.06;
const leastYeast = 0.0005;
