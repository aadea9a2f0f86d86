import { columnsOf, padEndTo, padStartTo } from '../../text/text-width.ts';
import { asCsv } from '../build/csv-records.ts';
import { element, htmlPage, type Markup, markup } from './markup.ts';

/** A page of tables, the one form from which text, Markdown, CSV and HTML are written. */
export interface Page {
  /** BCP 47. */
  readonly language: string;
  readonly title: string;
  readonly facts: readonly (readonly [label: string, value: string])[];
  /** A drawing of ours above the tables, which say the same; SVG for a column from about 300 px and from about 560 px. */
  readonly drawing?: { readonly description: string; readonly narrow: string; readonly wide: string };
  /** Sentences before the first table. */
  readonly lead?: readonly string[];
  readonly tables: readonly Table[];
  /** What stands over the names of the tables, where they are one. */
  readonly tableHead: string;
  readonly notes: readonly string[];
}

export interface Table {
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
  /** Sentences right below it. */
  readonly notes?: readonly string[];
  /** The same as figures for a spreadsheet, one unit a column and no words beside them; without it CSV has the rows as they are read. */
  readonly figures?: { readonly columns: readonly string[]; readonly rows: readonly (readonly string[])[] };
  /** Begins a sheet of paper of its own. */
  readonly ownPage?: true;
}

export interface Column {
  readonly name: string;
  /** Figures stand under each other at their ends. */
  readonly figures?: true;
  /** Nothing stands in it: it is there to be written in. */
  readonly blank?: true;
}

export function pageAsText({ title, facts, lead = [], tables, notes }: Page): string {
  const widest = Math.max(0, ...facts.map(([label]) => columnsOf(label)));
  const indented = (sentences: readonly string[]): string =>
    sentences.map((sentence) => `  ${sentence}`).join('\n');
  const blocks = [
    [title, ...facts.map(([label, value]) => `  ${padEndTo(label, widest)}  ${value}`)].join('\n'),
    indented(lead),
    ...tables.filter(isTold).map(tableAsText),
    indented(notes),
  ];
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

export function pageAsMarkdown({ title, facts, lead = [], tables, notes }: Page): string {
  const cell = (text: string): string => text.replace(/[\\|`*_<>[\]&~#]/g, '\\$&').replace(/[\r\n]+/g, ' ');
  const row = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;
  const list = (sentences: readonly string[]): string =>
    sentences.map((sentence) => `- ${cell(sentence)}`).join('\n');
  const blocks = [
    `# ${cell(title)}`,
    facts.map(([label, value]) => `- ${cell(label)}: ${cell(value)}`).join('\n'),
    lead.map(cell).join('\n\n'),
  ];
  for (const table of tables.filter(isTold)) {
    const rule = `| ${table.columns.map(({ figures }) => (figures ? '---:' : '---')).join(' | ')} |`;
    const head = row(table.columns.map(({ name }) => name));
    blocks.push(`## ${cell(table.title)}`);
    if (table.rows.length > 0) blocks.push([head, rule, ...table.rows.map(row)].join('\n'));
    blocks.push(list(table.notes ?? []));
  }
  blocks.push(list(notes));
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

function isTold({ rows, notes = [] }: Table): boolean {
  return rows.length > 0 || notes.length > 0;
}

/** One table below another, as RFC 4180 has it; each row begins with the name of its table. */
export function pageAsCsv({ tables, tableHead }: Page): string {
  return asCsv(
    tables.flatMap(({ title, columns, rows, figures }) => {
      const told = figures ?? { columns: columns.map(({ name }) => name), rows };
      return told.rows.length === 0
        ? []
        : [[tableHead, ...told.columns], ...told.rows.map((row) => [title, ...row])];
    }),
  );
}

/** A page that prints as it stands: no script, nothing fetched. */
export function pageAsHtml({ language, title, facts, drawing, tables, notes }: Page): string {
  return htmlPage(language, title, style, [
    element('h1', {}, title),
    element(
      'dl',
      {},
      ...facts.flatMap(([label, value]) => [element('dt', {}, label), element('dd', {}, value)]),
    ),
    drawing === undefined ? undefined : element('div', { class: 'drawn' }, markup(drawing.wide)),
    ...tables.filter(isTold).flatMap(tableAsHtml),
    notes.length === 0 ? undefined : element('ul', {}, ...notes.map((note) => element('li', {}, note))),
  ]);
}

/** A table of so few rows is not cut in two on paper. */
const uncutRows = 14;

function tableAsHtml({ title, columns, rows, notes = [], ownPage }: Table): Markup[] {
  const side = (index: number) => ({
    class: columns[index]?.figures ? 'figures' : columns[index]?.blank ? 'blank' : undefined,
  });
  const heads = columns.map(({ name }, index) => element('th', { scope: 'col', ...side(index) }, name));
  const lines = rows.map((row) =>
    element('tr', {}, ...row.map((value, index) => element('td', side(index), value))),
  );
  const told = notes.length === 0 ? [] : [element('ul', {}, ...notes.map((note) => element('li', {}, note)))];
  if (rows.length === 0) return [element('h2', {}, title), ...told];
  const classes = [ownPage ? 'own-page' : '', rows.length <= uncutRows ? 'uncut' : '']
    .filter((one) => one !== '')
    .join(' ');
  const table = element(
    'table',
    { class: classes === '' ? undefined : classes },
    element('caption', {}, title),
    element('thead', {}, element('tr', {}, ...heads)),
    element('tbody', {}, ...lines),
  );
  return [table, ...told];
}

const style = [
  'body{font:16px/1.4 system-ui,sans-serif;margin:2rem auto;max-width:60rem;padding:0 1rem;color:#111;background:#fff}',
  'h1{font-size:1.5rem}h2{font-size:1rem}dl{display:grid;grid-template-columns:max-content 1fr;gap:.2rem 1.5rem}dd{margin:0}',
  'table{border-collapse:collapse;width:100%;margin:1.5rem 0;break-inside:auto}tr{break-inside:avoid}',
  'caption{text-align:left;font-weight:600;padding-bottom:.4rem}',
  'th,td{text-align:left;padding:.3rem .8rem .3rem 0;border-bottom:1px solid #999;vertical-align:top}',
  '.blank{min-width:8rem}td.blank{height:2rem;border-left:1px solid #999}',
  '.figures{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}th.figures{white-space:normal}',
  '.drawn svg{width:100%;max-width:60rem;height:auto}',
  '@media print{body{margin:0;max-width:none}table{margin:1rem 0}.uncut{break-inside:avoid}.own-page{break-before:page}',
  // The drawing leaves room for what stands above it, or it would go to a sheet of its own.
  '.drawn{break-inside:avoid}.drawn svg{max-height:15cm}h2,caption,thead{break-after:avoid}}',
].join('');

function tableAsText({ title, columns, rows, notes = [] }: Table): string {
  const written = rows.map((row) =>
    columns.map(({ blank }, index) => (blank === true ? '________' : (row[index] ?? ''))),
  );
  const all = rows.length === 0 ? [] : [columns.map(({ name }) => name), ...written];
  const widths = columns.map((_, index) => Math.max(...all.map((row) => columnsOf(row[index] ?? ''))));
  const line = (row: readonly string[]): string =>
    `    ${columns
      .map(({ figures }, index) => {
        const cell = row[index] ?? '';
        const wide = widths[index] ?? 0;
        return figures ? padStartTo(cell, wide) : padEndTo(cell, wide);
      })
      .join('  ')}`.trimEnd();
  return [`  ${title}`, ...all.map(line), ...notes.map((note) => `    ${note}`)].join('\n');
}
