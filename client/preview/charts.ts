import type { SheetChart, SheetView } from '../../server/protocol.ts';
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

/** What an SVG of ours may hold: shapes and words. Whatever else stood in it is left out. */
const allowed: ReadonlySet<string> = new Set([
  ...['svg', 'g', 'path', 'rect', 'line', 'polyline', 'polygon', 'circle', 'ellipse', 'text', 'tspan'],
  ...['title', 'desc', 'defs', 'pattern', 'clipPath'],
]);

/**
 * A drawing read as data, never set as markup. Names inside it get an ending of their own, for a page that holds two
 * drawings must not hold one name twice.
 */
function drawing(svg: string, ending: string): Node | undefined {
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (root.localName !== 'svg') return undefined;
  for (const part of [root, ...root.querySelectorAll('*')]) {
    if (!allowed.has(part.localName)) part.remove();
    for (const { name, value } of [...part.attributes]) {
      if (/^on|^style$|href$/i.test(name)) part.removeAttribute(name);
      else if (name === 'id') part.setAttribute(name, `${value}-${ending}`);
      else if (name.startsWith('aria-') && name.endsWith('by'))
        part.setAttribute(
          name,
          value
            .split(' ')
            .map((id) => `${id}-${ending}`)
            .join(' '),
        );
      else if (value.includes('url(#'))
        part.setAttribute(name, value.replace(/url\(#([^)]+)\)/g, `url(#$1-${ending})`));
    }
  }
  return document.importNode(root, true);
}
