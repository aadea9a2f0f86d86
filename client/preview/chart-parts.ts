import { html } from 'lit-html';
import { guard } from 'lit-html/directives/guard.js';
import type { ChartSection } from '../../server/protocol.ts';
import type { Around, Shown } from './found.ts';

/** A chart drawn for the room there is, and the table that says the same. */
export function chartParts(
  { narrow, wide, description, table }: ChartSection,
  heading: string,
  { labels }: Around,
): Shown {
  return html`<div class="narrow">${guard([narrow], () => drawing(narrow, 'n'))}</div>
    <div class="wide">${guard([wide], () => drawing(wide, 'w'))}</div>
    <details class="fold">
      <summary>${labels.asTable}</summary>
      <p dir="auto">${description}</p>
      <table class="plain" aria-labelledby=${heading}>
        <thead>
          <tr>
            ${table.heads.map((text) => html`<th scope="col">${text}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${table.rows.map(
            (cells) =>
              html`<tr>
                ${cells.map((text) => html`<td dir="auto">${text}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
    </details>`;
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
