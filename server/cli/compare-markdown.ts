import type { Change, ComparedBlock, ComparisonPage } from '../../core/index.ts';

/** What changed as Markdown, for the text of a review: causes first, a table for each formula. */
export function comparisonMarkdown(page: ComparisonPage): string {
  const { formulas, definitions, following, verdict } = page;
  if (formulas.length === 0 && definitions.length === 0) return `${verdict}\n`;
  const blockIn = (one: ComparedBlock) => block(one, page.heads);
  const summary =
    following === undefined
      ? []
      : [
          [
            `**${following.title}**`,
            '',
            ...following.rows.map(({ what, formulas: names }) => `- ${cell(what)}: ${cell(names)}`),
          ].join('\n'),
        ];
  const blocks = [...definitions.map(blockIn), ...summary, ...formulas.map(blockIn)];
  return `${blocks.join('\n\n')}\n`;
}

function block(
  { name, placeWords, remarks, groups }: ComparedBlock,
  { what, before, after, by }: ComparisonPage['heads'],
): string {
  const rows = groups.flatMap(({ title, changes }) => changes.map((change) => row(title, change)));
  const heads = ['', what, before, after, by].map((head) => (head === '' ? '|' : ` ${head} |`)).join('');
  return [
    `### ${cell(name)}`,
    '',
    [placeWords, ...remarks.map(({ text }) => text)].map(cell).join(' · '),
    ...(rows.length === 0 ? [] : ['', `| ${heads}`, '| --- | --- | --- | --- | --- |', ...rows]),
  ].join('\n');
}

function row(title: string, { name, before, after, by }: Change): string {
  const told = (value: Change['after']): string =>
    value === undefined
      ? '–'
      : value.beside === undefined
        ? cell(value.text)
        : `${cell(value.text)} (${cell(value.beside)})`;
  return `| ${cell(title)} | ${cell(name)} | ${told(before)} | ${told(after)} | ${cell(by ?? '')} |`;
}

/** Words of a file as they are, none of them taken for a mark of Markdown or of HTML. */
function cell(text: string): string {
  return text.replace(/[\\`*_{}[\]<>#|~&]/g, (sign) => `\\${sign}`).replace(/[\r\n]+/g, ' ');
}
