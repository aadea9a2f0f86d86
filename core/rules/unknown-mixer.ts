import { mixers } from '../catalogue/mixers.ts';
import { findMixer } from '../model/mixer.ts';
import type { Scope } from '../model/scope.ts';
import type { Block, Name } from '../syntax/tree.ts';
import { nearestWord } from '../text/nearest.ts';
import { replaceFix, sectionBehindFix } from './fixes.ts';
import type { Rule, RuleFinding } from './rule.ts';

export const unknownMixer: Rule = {
  code: 'unknown-mixer',
  level: 'warning',
  mendsSlips: true,
  title: 'Nobody has said what this mixer is',
  explanation:
    'Warming and development come from the mixer. Without it neither can be told. Write its name as its section does, name a ' +
    'kind of mixer (`spiral`, `planetary`, `fork`, `twin arm`, `horizontal`), or define it.',
  bad: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\nmix in the old one:\n  load flour, water\n  speed 1 for 9 min\n  speed 2 for 3 min\n',
  good: 'formula Quay Tin:\n  bread flour  100%\n  water  65%\n\nmix in spiral:\n  load flour, water\n  speed 1 for 9 min\n  speed 2 for 3 min\n',
  *check({ analysis, block, scope }) {
    for (const problem of analysis?.resolved.problems ?? []) {
      if (problem.kind === 'unknown-mixer') yield findingOf(block, problem.line, problem.name, scope);
    }
    for (const [line, { statement }] of block.lines.entries()) {
      if (statement.kind !== 'property' || !namesMixer.has(statement.property)) continue;
      const { value } = statement;
      const name = value?.form === 'name' || value?.form === 'mixedIn' ? value.name : undefined;
      if (name !== undefined && findMixer(name, scope).kind === 'unknown')
        yield findingOf(block, line, name, scope);
    }
  },
};

const namesMixer: ReadonlySet<string> = new Set(['default mixer', 'mixer', 'mixed']);

function findingOf(block: Block, line: number, name: Name, scope: Scope): RuleFinding {
  const seen = [...scope.names('mixer').map((one) => one.name.text), ...mixers.map((one) => one.name)];
  const byFolded = new Map(seen.map((one) => [one.toLowerCase(), one]));
  const meant = nearestWord(name.text.toLowerCase(), byFolded.keys());
  const written = meant === undefined ? undefined : byFolded.get(meant)!;
  const define = sectionBehindFix(
    `Define “${name.text}” as a mixer`,
    block,
    `mixer ${name.text}:\n  kind spiral`,
  );
  return {
    line,
    span: { start: name.start, end: name.end },
    message:
      `No mixer is called “${name.text}”, so neither warming nor development can be told.` +
      (written === undefined
        ? ' Define it, or name a kind: spiral, planetary, fork.'
        : ` Is it “${written}”?`),
    fixes:
      written === undefined ? [define] : [replaceFix(`Write ${written}`, line, name, written, true), define],
  };
}
