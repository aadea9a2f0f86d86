import type { SheetChart, SheetView } from '../../server/protocol.ts';
import { drawing } from './drawing.ts';
import { element } from './elements.ts';

/** A chart of a sheet with its words and the table that says the same; nothing where it has none of the kind. */
export function chartSection(
  { charts, labels }: SheetView,
  kind: SheetChart['kind'],
  level: 'h2' | 'h3' = 'h2',
): HTMLElement | undefined {
  const chart = charts.find((one) => one.kind === kind);
  if (!chart) return undefined;
  const heading = `chart-${kind}`;
  const row = (cells: readonly HTMLElement[]) => element('tr', {}, ...cells);
  const heads = chart.table.heads.map((text) => element('th', { text, attributes: { scope: 'col' } }));
  const rows = chart.table.rows.map((cells) =>
    row(cells.map((text) => element('td', { text, attributes: { dir: 'auto' } }))),
  );
  return element(
    'section',
    { class: `chart ${kind}-chart`, attributes: { 'aria-labelledby': heading } },
    element(level, { text: chart.title, attributes: { id: heading } }),
    element('div', { class: 'narrow' }, drawing(chart.narrow, 'n')),
    element('div', { class: 'wide' }, drawing(chart.wide, 'w')),
    element(
      'details',
      { class: 'fold', attributes: { 'data-key': `chart ${kind}` } },
      element('summary', {
        text: labels.asTable,
        attributes: { 'data-key': `chart ${kind} summary` },
      }),
      element('p', { text: chart.description, attributes: { dir: 'auto' } }),
      element(
        'table',
        { class: 'plain', attributes: { 'aria-labelledby': heading } },
        element('thead', {}, row(heads)),
        element('tbody', {}, ...rows),
      ),
    ),
  );
}
