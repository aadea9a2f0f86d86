import { trialsOf } from '../../analysis/trials.ts';
import { findSpeed } from '../../calc/mixing/mixer.ts';
import type { Mixer } from '../../model/found-mixer.ts';
import type { Said } from '../../model/properties.ts';
import type { Block } from '../../syntax/tree.ts';
import { writtenDuration } from '../../text/figures.ts';
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
  *check({ analysis, block, scope }) {
    if (analysis === undefined) return;
    for (const { mixer, phases } of analysis.resolved.mixes)
      if (mixer !== undefined) yield* speedsOf(block, mixer, phases);
    for (const { mix, model } of trialsOf(analysis, scope))
      if (mix.known) yield* speedsOf(block, mix.value.mixer, model.phases);
  },
};

function* speedsOf(block: Block, mixer: Mixer, phases: readonly Said[]): Iterable<RuleFinding> {
  const { data, name, definition } = mixer;
  if (data.kind !== 'hand') yield* standing(block, name, phases);
  for (const { line, statement } of phases) {
    if (statement.value?.form !== 'mixSpeed') continue;
    const span = wordsOf(block, line);
    if (data.kind === 'hand') {
      const written = `knead ${writtenDuration(statement.value.seconds)}`;
      const said = message('no-such-speed.hand', { choices: ['knead', 'fold', 'stir'] });
      yield { line, span, message: said, fixes: [writeFix(line, span, written, true)] };
      continue;
    }
    const { number } = statement.value;
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
function* standing(block: Block, name: string, phases: readonly Said[]): Iterable<RuleFinding> {
  if (phases.some(({ statement: { value } }) => value?.form === 'mixSpeed')) return;
  for (const { line, statement } of phases) {
    const { property, value } = statement;
    if ((property !== 'knead' && property !== 'stir') || value?.form !== 'duration') continue;
    const span = wordsOf(block, line);
    const written = `speed 1 for ${writtenDuration(value.seconds)}`;
    const said = message('no-such-speed.stands', { written: property, name, meant: written });
    yield { line, span, message: said, fixes: [writeFix(line, span, written, false)] };
  }
}
