import type { TablesPage, TablesPageTable } from '../../server/protocol.ts';
import { drawing } from './drawing.ts';
import { element } from './elements.ts';

/** A page of tables beside the editor: its heading, facts, notes, drawing and tables, as the core has them. */
export function tablesPageShown({
  title,
  facts,
  lead = [],
  drawing: drawn,
  tables,
  notes,
}: TablesPage): Node[] {
  return [
    element('h1', { text: title, attributes: { dir: 'auto' } }),
    element(
      'dl',
      { class: 'plan-facts' },
      ...facts.flatMap(([label, value]) => [
        element('dt', { text: label }),
        element('dd', { text: value, attributes: { dir: 'auto' } }),
      ]),
    ),
    ...[...lead, ...notes].map(noteShown),
    ...(drawn === undefined
      ? []
      : [
          element(
            'div',
            { class: 'chart' },
            element('div', { class: 'narrow' }, drawing(drawn.narrow, 'n')),
            element('div', { class: 'wide' }, drawing(drawn.wide, 'w')),
          ),
        ]),
    ...tables.filter(({ rows, notes: below = [] }) => rows.length > 0 || below.length > 0).map(tableShown),
  ];
}

function noteShown(text: string): HTMLElement {
  return element('p', { class: 'plan-note', text, attributes: { dir: 'auto' } });
}

function tableShown({ title, columns, rows, notes = [] }: TablesPageTable, index: number): HTMLElement {
  const side = (column: number) => {
    const { figures, blank } = columns[column] ?? {};
    return figures ? { class: 'figures' } : blank ? { class: 'blank' } : {};
  };
  const heads = columns.map(({ name }, column) =>
    element('th', { ...side(column), text: name, attributes: { scope: 'col' } }),
  );
  const cells = (row: readonly string[]) =>
    row.map((text, column) => element('td', { ...side(column), text, attributes: { dir: 'auto' } }));
  const table = element(
    'table',
    { class: 'history' },
    element('thead', {}, element('tr', {}, ...heads)),
    element('tbody', {}, ...rows.map((row) => element('tr', {}, ...cells(row)))),
  );
  return element(
    'section',
    { attributes: { 'aria-labelledby': `table-${index}` } },
    element('h2', { text: title, attributes: { id: `table-${index}` } }),
    // Wider than the panel it is moved by itself, by keys too.
    rows.length === 0
      ? undefined
      : element(
          'div',
          {
            class: 'table-room',
            attributes: { tabindex: '0', role: 'group', 'aria-labelledby': `table-${index}` },
          },
          table,
        ),
    ...notes.map((text) => element('p', { class: 'table-note', text, attributes: { dir: 'auto' } })),
  );
}
