import { trialsOf } from '../../analysis/trials.ts';
import { findSpeed } from '../../calc/mixing/mixer.ts';
import type { Mixer } from '../../model/found-mixer.ts';
import type { Said } from '../../model/properties.ts';
import type { Block } from '../../syntax/tree.ts';
import { writtenDuration } from '../../text/figures.ts';
import type { Span } from '../../text/span.ts';
import { message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import type { Rule, RuleFinding } from '../engine/rule.ts';
import { wordsOf } from '../engine/rule-words.ts';

export const noSuchSpeed: Rule = {
  code: 'no-such-speed',
  level: 'warning',
  title: 'The mixer has no such speed',
  explanation:
    'How fast the hook turns at this speed is not known, so neither warming nor development can be computed. Write the speed in the mixer’s section ' +
    '(`speed 3 180 rpm`), or use one it has. By hand there are no speeds: write `knead`, `fold` or `stir`. These are work by hand also where a mixer is named: there its `speed` is written.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\nmix in spiral:\n  load flour, water\n  speed 4 for 5 min\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\nmix in spiral:\n  load flour, water\n  speed 1 for 4 min\n  speed 2 for 4 min\n',
  *check({ analysis, block, scope, experiment }) {
    for (const { mixer, line, run } of experiment?.doughs ?? []) {
      const written = run.map((part) => ({ line, span: { start: part.start, end: part.end }, work: part }));
      if (mixer !== undefined) yield* speedsOf(mixer, written);
    }
    if (analysis === undefined) return;
    for (const { mixer, phases } of analysis.resolved.mixes)
      if (mixer !== undefined) yield* speedsOf(mixer, workOf(block, phases));
    for (const { mix, model } of trialsOf(analysis, scope))
      if (mix.known) yield* speedsOf(mix.value.mixer, workOf(block, model.phases));
  },
};

/** A stretch of work and where it is written. */
interface WrittenWork {
  readonly line: number;
  readonly span: Span;
  readonly work: {
    readonly kind: string;
    readonly seconds: number;
    /** Of the speed that runs. */
    readonly number?: number;
  };
}

/** The lines of a programme that take time. */
function workOf(block: Block, phases: readonly Said[]): WrittenWork[] {
  return phases.flatMap(({ line, statement: { property, value } }): WrittenWork[] => {
    const span = wordsOf(block, line);
    if (value?.form === 'mixSpeed')
      return [{ line, span, work: { kind: 'speed', seconds: value.seconds, number: value.number } }];
    return value?.form === 'duration'
      ? [{ line, span, work: { kind: property, seconds: value.seconds } }]
      : [];
  });
}

function* speedsOf(mixer: Mixer, written: readonly WrittenWork[]): Iterable<RuleFinding> {
  const { data, name, definition } = mixer;
  if (data.kind !== 'hand') yield* standing(name, written);
  for (const { line, span, work } of written) {
    const { number } = work;
    if (number === undefined) continue;
    if (data.kind === 'hand') {
      const kneaded = `knead ${writtenDuration(work.seconds)}`;
      const said = message('no-such-speed.hand', { choices: ['knead', 'fold', 'stir'] });
      yield { line, span, message: said, fixes: [writeFix(line, span, kneaded, true)] };
      continue;
    }
    if (findSpeed(data, number).known) continue;
    const has = data.speeds.map((speed) => String(speed.number)).sort();
    const facts = { name, number, example: `speed ${number} 180 rpm` };
    yield {
      line,
      span,
      message:
        has.length === 0
          ? message('no-such-speed.none', facts)
          : message('no-such-speed.others', { ...facts, choices: has }),
      related: definition === undefined ? [] : [{ definition, message: message('no-such-speed.section') }],
    };
  }
}

/** A programme in a machine in which hands do all the work: the machine would stand still. */
function* standing(name: string, written: readonly WrittenWork[]): Iterable<RuleFinding> {
  if (written.some(({ work }) => work.number !== undefined)) return;
  for (const { line, span, work } of written) {
    if (work.kind !== 'knead' && work.kind !== 'stir') continue;
    const meant = `speed 1 for ${writtenDuration(work.seconds)}`;
    const said = message('no-such-speed.stands', { written: work.kind, name, meant });
    yield { line, span, message: said, fixes: [writeFix(line, span, meant, false)] };
  }
}
