/** A page of tables, the one form from which text, Markdown, CSV and HTML are written. */
export interface Page {
  readonly title: string;
  readonly facts: readonly (readonly [label: string, value: string])[];
  readonly tables: readonly Table[];
  readonly notes: readonly string[];
}

export interface Table {
  readonly title: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly string[])[];
}

export interface Column {
  readonly name: string;
  /** Figures stand under each other at their ends. */
  readonly figures?: true;
}

export function pageAsText({ title, facts, tables, notes }: Page): string {
  const widest = Math.max(0, ...facts.map(([label]) => label.length));
  const blocks = [
    [title, ...facts.map(([label, value]) => `  ${label.padEnd(widest)}  ${value}`)].join('\n'),
    ...tables.filter(({ rows }) => rows.length > 0).map(tableAsText),
    ...(notes.length === 0 ? [] : [notes.map((note) => `  ${note}`).join('\n')]),
  ];
  return `${blocks.join('\n\n')}\n`;
}

export function pageAsMarkdown({ title, facts, tables, notes }: Page): string {
  const cell = (text: string): string => text.replace(/[\\|`*_<>[\]]/g, '\\$&');
  const row = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;
  const blocks = [
    `# ${cell(title)}`,
    facts.map(([label, value]) => `- ${cell(label)}: ${cell(value)}`).join('\n'),
  ];
  for (const table of tables) {
    if (table.rows.length === 0) continue;
    const rule = `| ${table.columns.map(({ figures }) => (figures ? '---:' : '---')).join(' | ')} |`;
    const head = row(table.columns.map(({ name }) => name));
    blocks.push(`## ${cell(table.title)}`, [head, rule, ...table.rows.map(row)].join('\n'));
  }
  if (notes.length > 0) blocks.push(notes.map((note) => `- ${cell(note)}`).join('\n'));
  return `${blocks.filter((block) => block !== '').join('\n\n')}\n`;
}

/** One table below another, as RFC 4180 has it; each row begins with the name of its table. */
export function pageAsCsv({ tables }: Page): string {
  const field = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
  const lines = tables.flatMap(({ title, columns, rows }) =>
    rows.length === 0
      ? []
      : [['table', ...columns.map(({ name }) => name)], ...rows.map((row) => [title, ...row])],
  );
  return lines.map((line) => `${line.map(field).join(',')}\r\n`).join('');
}

/** A page that prints as it stands: no script, nothing fetched. */
export function pageAsHtml({ title, facts, tables, notes }: Page): string {
  const text = (raw: string): string =>
    raw.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
  const table = ({ title: caption, columns, rows }: Table): string => {
    const cells = (tag: 'th' | 'td', values: readonly string[]): string =>
      values
        .map((value, index) => {
          const scope = tag === 'th' ? ' scope="col"' : '';
          return `<${tag}${scope}${columns[index]?.figures ? ' class="figures"' : ''}>${text(value)}</${tag}>`;
        })
        .join('');
    const head = cells(
      'th',
      columns.map(({ name }) => name),
    );
    const body = rows.map((row) => `<tr>${cells('td', row)}</tr>`).join('\n');
    return `<table>\n<caption>${text(caption)}</caption>\n<thead><tr>${head}</tr></thead>\n<tbody>\n${body}\n</tbody>\n</table>`;
  };
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${text(title)}</title>`,
    `<style>${style}</style>`,
    '</head>',
    '<body>',
    `<h1>${text(title)}</h1>`,
    `<dl>${facts.map(([label, value]) => `<dt>${text(label)}</dt><dd>${text(value)}</dd>`).join('')}</dl>`,
    ...tables.filter(({ rows }) => rows.length > 0).map(table),
    ...(notes.length === 0 ? [] : [`<ul>${notes.map((note) => `<li>${text(note)}</li>`).join('')}</ul>`]),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

const style = [
  'body{font:16px/1.4 system-ui,sans-serif;margin:2rem auto;max-width:60rem;padding:0 1rem;color:#111;background:#fff}',
  'h1{font-size:1.5rem}dl{display:grid;grid-template-columns:max-content 1fr;gap:.2rem 1.5rem}dd{margin:0}',
  'table{border-collapse:collapse;width:100%;margin:1.5rem 0;break-inside:auto}tr{break-inside:avoid}',
  'caption{text-align:left;font-weight:600;padding-bottom:.4rem}',
  'th,td{text-align:left;padding:.3rem .8rem .3rem 0;border-bottom:1px solid #999;vertical-align:top}',
  '.figures{text-align:right;font-variant-numeric:tabular-nums}',
  '@media print{body{margin:0;max-width:none}}',
].join('');

function tableAsText({ title, columns, rows }: Table): string {
  const all = [columns.map(({ name }) => name), ...rows];
  const widths = columns.map((_, index) => Math.max(...all.map((row) => (row[index] ?? '').length)));
  const line = (row: readonly string[]): string =>
    `    ${columns
      .map(({ figures }, index) => {
        const cell = row[index] ?? '';
        return figures ? cell.padStart(widths[index]!) : cell.padEnd(widths[index]!);
      })
      .join('  ')}`.trimEnd();
  return [`  ${title}`, ...all.map(line)].join('\n');
}
