import {
  type ExperimentAnalysis,
  type ExperimentDough,
  firstUnknown,
} from '../../analysis/experiment-analysis.ts';
import { findIngredient } from '../../model/found-ingredient.ts';
import { mostByHandGrams } from '../../model/found-mixer.ts';
import type { Scope } from '../../model/scope.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import { nearestWord } from '../../text/nearest.ts';
import type { Span } from '../../text/span.ts';
import { type Message, message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import type { Rule, RuleContext, RuleFinding } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';

export const cannotBeTested: Rule = {
  code: 'cannot-be-tested',
  level: 'warning',
  title: 'An experiment that cannot be run as it is planned',
  explanation:
    'A dough of the experiment cannot be predicted, is done before its last reading, does not fit the bowl, or takes more of an ingredient than is on hand. What is ' +
    'to be written stands in the finding: `dough Plain White, in spiral, speed 1 for 60 min` says how long it is worked, `batch 900 g` how much of ' +
    'each is mixed.',
  bad: 'formula Plain White:\n  yield 2 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nexperiment Wet and dry:\n  dough Plain White, by hand, knead 12 min\n  read at 8 min, 30 min\n',
  good: 'formula Plain White:\n  yield 2 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nexperiment Wet and dry:\n  dough Plain White, by hand, knead 30 min\n  read at 8 min, 30 min\n',
  *check(context) {
    const { experiment } = context;
    if (experiment === undefined) return;
    for (const dough of experiment.doughs) {
      yield* predictionOf(context, dough);
      yield* runOf(context, experiment, dough);
      for (const said of bowlMessages(dough)) yield { ...said, span: nameSpan(dough) };
    }
    yield* stockMessages(experiment, context.scope);
  },
};

const nameSpan = ({ name }: ExperimentDough) => ({ start: name.start, end: name.end });

/** Names that are not there have a finding of their own. */
function* predictionOf({ block }: RuleContext, dough: ExperimentDough): Iterable<RuleFinding> {
  const { line, programme, definition, mixer, run } = dough;
  if (definition === undefined) return;
  if (programme.known) {
    const unknownFrom = firstUnknown(dough);
    // A speed of this line that its mixer has not has a finding of its own.
    const isToldAlready = run.length > 0 && unknownFrom?.reason.code === 'mixing.no-rpm';
    if (unknownFrom === undefined || isToldAlready) return;
    const said = message('cannot-be-tested.at', { name: dough.formula, ...unknownFrom });
    yield { line, span: nameSpan(dough), message: said };
    return;
  }
  const { statement } = elementAt(block.lines, line);
  const value = statement.kind === 'property' ? statement.value : undefined;
  if (mixer === undefined && value?.form === 'testedDough' && value.mixer !== undefined) return;
  const said = message('cannot-be-tested.because', { name: dough.formula, reason: programme.reason });
  yield { line, span: nameSpan(dough), message: said };
}

function* runOf(
  { block }: RuleContext,
  { readMinutes }: ExperimentAnalysis,
  dough: ExperimentDough,
): Iterable<RuleFinding> {
  const { line, programme, mixer, run } = dough;
  if (!programme.known) return;
  const { programmeMinutes, input } = programme.value;
  const late = readMinutes.filter((minutes) => minutes > programmeMinutes + 1e-6);
  const last = late.at(-1);
  if (last === undefined) return;
  const worked = input.phases.findLast((phase) => phase.kind === 'speed' || phase.kind === 'knead');
  const minutes = `${trimmed(last, 1)} min`;
  const meant =
    mixer?.data.kind === 'hand'
      ? `knead ${minutes}`
      : `speed ${worked?.kind === 'speed' ? worked.number : 1} for ${minutes}`;
  const end = wordsOf(block, line).end;
  const title = message('cannot-be-tested.fix-run', { meant });
  yield {
    line,
    span: nameSpan(dough),
    // A dough that is done sooner than others are is read as long as it lasts.
    ...(late.length < readMinutes.length ? { level: 'info' as const } : {}),
    message: message('cannot-be-tested.past-the-run', {
      name: dough.formula,
      minutes: last,
      programmeMinutes,
      count: late.length,
    }),
    // What stands there already is the baker's to lengthen.
    fixes:
      run.length > 0
        ? []
        : [{ title, edits: [{ line, start: end, end, insert: `, ${meant}` }], preferred: true }],
  };
}

/** What is said of a dough that does not fit the bowl it is mixed in, on its line; nothing where it fits. */
export function bowlMessages(
  dough: ExperimentDough,
): readonly { readonly line: number; readonly message: Message }[] {
  const { line, mixer, doughGrams: grams } = dough;
  if (mixer === undefined || grams === undefined) return [];
  const facts = { name: dough.formula, grams, otherName: mixer.name };
  if (mixer.data.kind === 'hand' && grams > mostByHandGrams * (1 + 1e-6))
    return [
      {
        line,
        message: message('cannot-be-tested.hands', {
          name: dough.formula,
          grams,
          mostGrams: mostByHandGrams,
        }),
      },
    ];
  const { mostGrams, leastGrams } = mixer;
  if (mostGrams !== undefined && grams > mostGrams * (1 + 1e-6))
    return [{ line, message: message('cannot-be-tested.bowl', { ...facts, mostGrams }) }];
  if (leastGrams !== undefined && grams < leastGrams * (1 - 1e-6))
    return [{ line, message: message('cannot-be-tested.bowl-little', { ...facts, leastGrams }) }];
  return [];
}

/** What is said of one ingredient that is on hand. */
interface StockMessage extends Pick<RuleFinding, 'level' | 'fixes'> {
  readonly line: number;
  readonly span: Span;
  readonly message: Message;
}

/**
 * What is said of what is on hand, on its line: less than the doughs take, lines of one ingredient together, or an ingredient that no
 * dough takes.
 */
export function stockMessages(experiment: ExperimentAnalysis, scope: Scope): readonly StockMessage[] {
  const { onHand, takes, doughs, unread } = experiment;
  const stocks = new Map<string, { readonly first: (typeof onHand)[number]; readonly grams: number }>();
  for (const one of onHand) {
    const found = findIngredient(one.name, scope);
    const key = found.kind === 'found' ? found.ingredient.key : one.name.folded;
    const before = stocks.get(key);
    stocks.set(key, { first: before?.first ?? one, grams: (before?.grams ?? 0) + one.grams });
  }
  const isWhole = unread.length === 0 && doughs.every(({ doughGrams }) => doughGrams !== undefined);
  return [...stocks].flatMap(([key, { first, grams }]): StockMessage[] => {
    const { line, name } = first;
    const place = { line, span: { start: name.start, end: name.end } };
    const needed = takes.find((one) => one.key === key);
    if (needed !== undefined) {
      const facts = { name: needed.name, grams: needed.grams, otherGrams: grams };
      const isEnough = needed.grams <= grams * (1 + 1e-6);
      return isEnough ? [] : [{ ...place, message: message('cannot-be-tested.flour', facts) }];
    }
    if (!isWhole) return [];
    const near = nearestWord(
      name.folded,
      takes.map((one) => one.key),
    );
    const meant = takes.find((one) => one.key === near)?.name;
    if (meant === undefined || findIngredient(name, scope).kind === 'found')
      return [
        { ...place, level: 'info', message: message('cannot-be-tested.not-taken', { name: name.text }) },
      ];
    const said = message('cannot-be-tested.not-taken-near', { name: name.text, meant });
    return [{ ...place, message: said, fixes: [writeFix(line, place.span, meant, true)] }];
  });
}
