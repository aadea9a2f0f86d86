import { trialsOf } from '../analysis/trials.ts';
import { findSpeed } from '../calc/mixer.ts';
import type { Mixer } from '../model/mixer.ts';
import type { Said } from '../model/properties.ts';
import type { Block } from '../syntax/tree.ts';
import { duration } from '../text/figures.ts';
import { replaceFix } from './fixes.ts';
import type { Rule, RuleFinding } from './rule.ts';
import { listed, wordsOf } from './words.ts';

export const noSuchSpeed: Rule = {
  code: 'no-such-speed',
  level: 'warning',
  title: 'The mixer has no such speed',
  explanation:
    'How fast the hook turns at this speed is not known, so neither warming nor development can be told. Write the speed in the mixer’s section ' +
    '(`speed 3 180 rpm`), or use one it has. By hand there are no speeds: write `knead`, `fold` or `stir`.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\nmix in spiral:\n  load flour, water\n  speed 4 for 5 min\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\nmix in spiral:\n  load flour, water\n  speed 1 for 9 min\n  speed 2 for 4 min\n',
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
  for (const { line, statement } of phases) {
    if (statement.value?.form !== 'mixSpeed') continue;
    const span = wordsOf(block, line);
    if (data.kind === 'hand') {
      const written = `knead ${duration(statement.value.seconds)}`;
      const message = 'Hands have no speeds. Write what they do: knead, fold or stir.';
      yield { line, span, message, fixes: [replaceFix(`Write ${written}`, line, span, written, true)] };
      continue;
    }
    const { number } = statement.value;
    if (findSpeed(data, number).known) continue;
    const has = data.speeds.map((speed) => String(speed.number)).sort();
    const speeds = has.length === 0 ? 'Its section states none' : `It has ${listed(has)}`;
    yield {
      line,
      span,
      message: `“${name}” has no speed ${number}, so the warming and the development cannot be told. ${speeds}; a new one is written there as: speed ${number} 180 rpm`,
      related: definition === undefined ? [] : [{ definition, message: 'its section' }],
    };
  }
}
