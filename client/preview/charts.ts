import type { SheetChart, SheetView } from '../../server/protocol.ts';
import { element } from './elements.ts';

/** The charts of a sheet, each with its words and the table that says the same. */
export function chartsBand(view: SheetView): HTMLElement | undefined {
  if (view.charts.length === 0) return undefined;
  return element('div', { class: 'charts' }, ...view.charts.map(chartSection));
}

function chartSection(chart: SheetChart, index: number): HTMLElement {
  const heading = `chart-${index}`;
  const cells = (tag: 'th' | 'td', texts: readonly string[]) =>
    texts.map((text) => element(tag, { text, ...(tag === 'th' ? { attributes: { scope: 'col' } } : {}) }));
  return element(
    'section',
    { class: 'chart', attributes: { 'aria-labelledby': heading } },
    element('h2', { text: chart.title, attributes: { id: heading } }),
    element('div', { class: 'narrow' }, drawing(chart.narrow, `${index}n`)),
    element('div', { class: 'wide' }, drawing(chart.wide, `${index}w`)),
    element(
      'details',
      { attributes: { 'data-key': `chart ${chart.kind}` } },
      element('summary', {
        text: 'The same as a table',
        attributes: { 'data-key': `chart ${chart.kind} summary` },
      }),
      element('p', { text: chart.description }),
      element(
        'table',
        { class: 'plain' },
        element('thead', {}, element('tr', {}, ...cells('th', chart.table.heads))),
        element('tbody', {}, ...chart.table.rows.map((row) => element('tr', {}, ...cells('td', row)))),
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
