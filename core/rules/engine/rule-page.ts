import { parseFile } from '../../syntax/file.ts';
import { printLines } from '../../syntax/print.ts';
import type { Language } from '../../words/language.ts';
import type { RulePage } from '../../words/rule-page-words.ts';
import type { Rule } from './rule.ts';

/** Where the same page stands in another language. */
export interface PageElsewhere {
  /** What the language is called in itself. */
  readonly language: string;
  /** From the folder of this page to that of the other, ending in a slash. */
  readonly folder: string;
}

type Worded = Pick<Language, 'rulePages' | 'rulePageWords'>;

/** The title and the explanation of a rule in a language, else in English. */
export function wordsOfRule(rule: Rule, { rulePages }: Pick<Language, 'rulePages'>): RulePage {
  const { title, explanation } = rulePages?.[rule.code] ?? rule;
  return { title, explanation };
}

/** A rule explained, with its examples, Markdown. */
export function explainedRule(rule: Rule, language: Worded, below = ''): string {
  const { title, explanation } = wordsOfRule(rule, language);
  const { levels, usualLevel, fires, silent } = language.rulePageWords;
  return `${[
    `# ${rule.code}`,
    ...(below === '' ? [] : [below]),
    `**${title}.** ${usualLevel}: ${levels[rule.level]}.`,
    explanation,
    `## ${fires}`,
    fenced(rule.bad),
    `## ${silent}`,
    fenced(rule.good),
  ].join('\n\n')}\n`;
}

/** The documentation page of a rule, Markdown. */
export function pageOf(rule: Rule, language: Worded, elsewhere: readonly PageElsewhere[]): string {
  const links = linksTo(`${rule.code}.md`, elsewhere);
  return `${explainedRule(rule, language, links)}\n[${language.rulePageWords.allRules}](README.md)\n`;
}

/** The table of all rules, Markdown. */
export function indexOf(
  rules: readonly Rule[],
  language: Worded,
  elsewhere: readonly PageElsewhere[],
): string {
  const { levels, list } = language.rulePageWords;
  const sorted = [...rules].sort((one, other) => (one.code < other.code ? -1 : 1));
  const rows = sorted.map(
    (rule) =>
      `| [${rule.code}](${rule.code}.md) | ${levels[rule.level]} | ${wordsOfRule(rule, language).title} |`,
  );
  return `${[
    `# ${list.title}`,
    linksTo('README.md', elsewhere),
    list.text,
    [`| ${list.columns.join(' | ')} |`, '| --- | --- | --- |', ...rows].join('\n'),
  ].join('\n\n')}\n`;
}

function linksTo(name: string, elsewhere: readonly PageElsewhere[]): string {
  return elsewhere.map(({ language, folder }) => `[${language}](${folder}${name})`).join(' · ');
}

function fenced(notation: string): string {
  const lines = printLines(parseFile(notation.trimEnd()).lines).map((line) =>
    line.length > 200 ? `${line.slice(0, 60)} …` : line,
  );
  return `\`\`\`dough\n${lines.join('\n')}\n\`\`\``;
}
