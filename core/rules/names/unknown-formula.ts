import { nearestWord } from '../../text/nearest.ts';
import { message } from '../../words/message.ts';
import { writeFix } from '../engine/fixes.ts';
import type { Rule } from '../engine/rule.ts';

export const unknownFormula: Rule = {
  code: 'unknown-formula',
  level: 'warning',
  mendsSlips: true,
  title: 'A plan asks for a formula that is not there',
  explanation:
    'What is to be made cannot be counted. Write the name as the header of the formula does, or write the formula.',
  bad: 'formula Quay Tin:\n  yield 10 pieces of 900 g\n  bread flour  100%\n  water  65%\n\nplan Friday:\n  ready 2026-05-15 06:00\n  Quai Tin  20 pieces\n',
  good: 'formula Quay Tin:\n  yield 10 pieces of 900 g\n  bread flour  100%\n  water  65%\n\nplan Friday:\n  ready 2026-05-15 06:00\n  Quay Tin  20 pieces\n',
  *check({ block, scope }) {
    if (block.top?.kind !== 'plan') return;
    for (const [line, { statement }] of block.lines.entries()) {
      if (statement.kind !== 'planned' || statement.name.folded === '') continue;
      const { name } = statement;
      const found = scope.find('formula', name.folded)[0];
      if (found !== undefined && found.length === 1) continue;
      const span = { start: name.start, end: name.end };
      if (found !== undefined) {
        yield {
          line,
          span,
          message: message('unknown-formula.several', { name: name.text, count: found.length }),
          related: found.map((definition) => ({ definition, message: message('several-definitions.one') })),
        };
        continue;
      }
      const seen = new Map(scope.names('formula').map((one) => [one.name.folded, one.name.text]));
      const meant = nearestWord(name.folded, seen.keys());
      const written = meant === undefined ? undefined : seen.get(meant)!;
      yield {
        line,
        span,
        message:
          written === undefined
            ? message('unknown-formula.none', { name: name.text })
            : message('unknown-formula.meant', { name: name.text, otherName: written }),
        fixes: written === undefined ? [] : [writeFix(line, name, written, true)],
      };
    }
  },
};
