import { mixers } from '../../catalogue/mixers.ts';
import { findMixer, withoutArticle } from '../../model/found-mixer.ts';
import type { Scope } from '../../model/scope.ts';
import type { Block, Name } from '../../syntax/tree.ts';
import { nearestWord } from '../../text/nearest.ts';
import { shortName } from '../../text/short-name.ts';
import { message } from '../../words/message.ts';
import { sectionBehindFix, writeFix } from '../engine/fixes.ts';
import type { Rule, RuleFinding } from '../engine/rule.ts';

export const unknownMixer: Rule = {
  code: 'unknown-mixer',
  level: 'warning',
  mendsSlips: true,
  title: 'A mixer that is not defined',
  explanation:
    'Warming and development come from the mixer. Without it neither can be computed. Write its name as its section does, name a ' +
    'kind of mixer (`spiral`, `planetary`, `fork`, `twin arm`, `horizontal`), or define it.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\nmix in the old one:\n  load flour, water\n  speed 1 for 4 min\n  speed 2 for 3 min\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\nmix in spiral:\n  load flour, water\n  speed 1 for 4 min\n  speed 2 for 3 min\n',
  *check({ analysis, block, scope }) {
    for (const problem of analysis?.resolved.problems ?? []) {
      if (problem.kind === 'unknown-mixer') yield findingOf(block, problem.line, problem.name, scope);
    }
    for (const [line, { statement }] of block.lines.entries()) {
      if (statement.kind !== 'property' || !namesMixer.has(statement.property)) continue;
      const { value } = statement;
      const name =
        value?.form === 'testedDough'
          ? value.mixer
          : value?.form === 'name' || value?.form === 'mixedIn'
            ? value.name
            : undefined;
      if (name !== undefined && findMixer(name, scope).kind === 'unknown')
        yield findingOf(block, line, name, scope);
    }
  },
};

const namesMixer: ReadonlySet<string> = new Set(['default mixer', 'mixer', 'mixed', 'dough']);

function findingOf(block: Block, line: number, name: Name, scope: Scope): RuleFinding {
  const seen = [...scope.names('mixer').map((one) => one.name.text), ...mixers.map((one) => one.name)];
  const byFolded = new Map(seen.map((one) => [one.toLowerCase(), one]));
  const own = name.text.toLowerCase();
  const meant = nearestWord(own, byFolded.keys()) ?? nearestWord(withoutArticle(own), byFolded.keys());
  const written = meant === undefined ? undefined : byFolded.get(meant)!;
  const define = sectionBehindFix(
    message('fix.define-mixer', { name: shortName(name.text) }),
    block,
    `mixer ${name.text}:\n  kind spiral`,
  );
  return {
    line,
    span: { start: name.start, end: name.end },
    message:
      written === undefined
        ? message('unknown-mixer.none', { name: name.text })
        : message('unknown-mixer.meant', { name: name.text, otherName: written }),
    fixes: written === undefined ? [define] : [writeFix(line, name, written, true), define],
  };
}
