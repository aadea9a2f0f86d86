import { propertiesOf, type Said } from '../../model/properties.ts';
import type { Value } from '../../syntax/tree.ts';
import { message } from '../../words/message.ts';
import type { Rule, RuleFinding } from '../engine/rule.ts';
import { headerPlace } from '../engine/rule-places.ts';
import { wordsOf } from '../engine/rule-words.ts';

export const experimentLacks: Rule = {
  code: 'experiment-lacks',
  level: 'error',
  title: 'An experiment lacks a dough or a minute, or has one twice',
  explanation:
    'An experiment names its doughs, each once for a mixer and a way of working it, and the minutes after the start of mixing at which each is ' +
    'read: `dough Plain White, by hand, knead 30 min` and `read at 8 min, 16 min, 30 min`.',
  bad: 'formula Plain White:\n  yield 2 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nexperiment Wet and dry:\n  dough Plain White, by hand, knead 30 min\n  read at 0 min, 8 min\n',
  good: 'formula Plain White:\n  yield 2 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\nexperiment Wet and dry:\n  dough Plain White, by hand, knead 30 min\n  read at 8 min, 16 min\n',
  *check({ block }) {
    const { top } = block;
    if (top?.kind !== 'experiment') return;
    const said = propertiesOf(block, top);
    const header = headerPlace(block, top.headerLine);
    const doughs = said.get('dough') ?? [];
    if (doughs.length === 0) {
      yield {
        ...header,
        message: message('experiment-lacks.doughs', { example: 'dough Plain White, by hand, knead 30 min' }),
      };
      return;
    }
    yield* sameDoughs(doughs, (line) => wordsOf(block, line));
    const times = said.get('read at');
    const isHalfTyped = doughs.some(({ statement }) => statement.value === undefined);
    if (times === undefined && !isHalfTyped)
      yield {
        ...header,
        message: message('experiment-lacks.minutes', { example: 'read at 8 min, 16 min, 30 min' }),
      };
    yield* minutesOf(times ?? []);
  },
};

function* minutesOf(lines: readonly Said[]): Iterable<RuleFinding> {
  const seen = new Set<number>();
  for (const { line, statement } of lines) {
    if (statement.value?.form !== 'minutes') continue;
    for (const { start, end, seconds } of statement.value.times) {
      const span = { start, end };
      if (!(seconds > 0)) yield { line, span, message: message('experiment-lacks.before-start') };
      else if (seen.has(seconds))
        yield { line, span, level: 'warning', message: message('experiment-lacks.same-minute', { seconds }) };
      seen.add(seconds);
    }
  }
}

function* sameDoughs(
  lines: readonly Said[],
  wordsIn: (line: number) => { readonly start: number; readonly end: number },
): Iterable<RuleFinding> {
  const seen = new Map<string, number>();
  for (const { line, statement } of lines) {
    const { value } = statement;
    if (value?.form !== 'testedDough') continue;
    const key = keyOf(value);
    const first = seen.get(key);
    if (first === undefined) seen.set(key, line);
    else
      yield {
        line,
        span: { start: value.name.start, end: value.name.end },
        message: message('experiment-lacks.same-dough', { name: value.name.text }),
        related: [{ line: first, span: wordsIn(first), message: message('experiment-lacks.first') }],
      };
  }
}

function keyOf({ name, mixer, byHand, run }: Extract<Value, { form: 'testedDough' }>): string {
  const parts = run.map((part) => [part.kind, part.seconds, part.kind === 'speed' ? part.number : 0]);
  return JSON.stringify([name.folded, mixer?.folded, byHand, parts]);
}
