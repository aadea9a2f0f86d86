import { parseFile } from '../syntax/file.ts';
import { printLines } from '../syntax/print.ts';
import type { Rule } from './rule.ts';

const levels = { error: 'error', warning: 'warning', info: 'information', hint: 'hint' } as const;

/** The documentation page of a rule, Markdown. */
export function pageOf(rule: Rule): string {
  return `${[
    `# ${rule.code}`,
    `**${rule.title}.** Default level: ${levels[rule.level]}.`,
    rule.explanation,
    '## It speaks of',
    fenced(rule.bad),
    '## It is silent on',
    fenced(rule.good),
    '[All rules](README.md)',
  ].join('\n\n')}\n`;
}

/** The table of all rules, Markdown. */
export function indexOf(rules: readonly Rule[]): string {
  const sorted = [...rules].sort((one, other) => (one.code < other.code ? -1 : 1));
  const rows = sorted.map(
    (rule) => `| [${rule.code}](${rule.code}.md) | ${levels[rule.level]} | ${rule.title} |`,
  );
  const text =
    'What the findings say, by their code. A finding is silenced on one line by `# accept CODE: reason` (not an error in how a line is written), ' +
    'and everywhere by the setting `doughwright.rules`, on the command line by `check --rule CODE=off`.';
  return `# Rules\n\n${text}\n\n| code | level | what it finds |\n| --- | --- | --- |\n${rows.join('\n')}\n`;
}

function fenced(notation: string): string {
  const lines = printLines(parseFile(notation.trimEnd()).lines).map((line) =>
    line.length > 200 ? `${line.slice(0, 60)} …` : line,
  );
  return `\`\`\`dough\n${lines.join('\n')}\n\`\`\``;
}
