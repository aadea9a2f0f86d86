import type { ExperimentAnalysis, ExperimentDough } from '../../analysis/experiment-analysis.ts';
import { findIngredient } from '../../model/found-ingredient.ts';
import type { Scope } from '../../model/scope.ts';
import { elementAt } from '../../text/element.ts';
import { trimmed } from '../../text/figures.ts';
import type { Span } from '../../text/span.ts';
import { type Message, message } from '../../words/message.ts';
import type { Rule, RuleContext, RuleFinding } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';

export const cannotBeTested: Rule = {
  code: 'cannot-be-tested',
  level: 'warning',
  title: 'An experiment that cannot be run as it is planned',
  explanation:
    'A dough of the experiment cannot be predicted, is done before its last reading, does not fit the bowl, or takes more flour than is on hand. What is ' +
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
    yield* flourMessages(experiment, context.scope);
  },
};

const nameSpan = ({ name }: ExperimentDough) => ({ start: name.start, end: name.end });

/** Names that are not there have a finding of their own. */
function* predictionOf({ block }: RuleContext, dough: ExperimentDough): Iterable<RuleFinding> {
  const { line, programme, definition, mixer } = dough;
  if (programme.known || definition === undefined) return;
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
  const { mostGrams, leastGrams } = mixer;
  if (mostGrams !== undefined && grams > mostGrams * (1 + 1e-6))
    return [{ line, message: message('cannot-be-tested.bowl', { ...facts, mostGrams }) }];
  if (leastGrams !== undefined && grams < leastGrams * (1 - 1e-6))
    return [{ line, message: message('cannot-be-tested.bowl-little', { ...facts, leastGrams }) }];
  return [];
}

/** What is said of each flour of which less is on hand than the doughs take. */
export function flourMessages(
  { onHand, flours }: ExperimentAnalysis,
  scope: Scope,
): readonly { readonly line: number; readonly span: Span; readonly message: Message }[] {
  return onHand.flatMap(({ line, name, grams }) => {
    const found = findIngredient(name, scope);
    const needed = flours.find(({ key }) => found.kind === 'found' && key === found.ingredient.key);
    if (needed === undefined || needed.grams <= grams * (1 + 1e-6)) return [];
    const facts = { name: needed.name, grams: needed.grams, otherGrams: grams };
    const span = { start: name.start, end: name.end };
    return [{ line, span, message: message('cannot-be-tested.flour', facts) }];
  });
}
