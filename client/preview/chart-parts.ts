import { html, nothing } from 'lit-html';
import { guard } from 'lit-html/directives/guard.js';
import type { ChartSection } from '../../server/protocol.ts';
import { drawing } from './drawing.ts';
import type { Around, Shown } from './found.ts';

/** A chart drawn for the room there is, and the table that says the same. */
export function chartParts(
  { narrow, middle, wide, description, table }: ChartSection,
  heading: string,
  { labels }: Around,
): Shown {
  return html`<div class="narrow">${guard([narrow], () => drawing(narrow, 'n'))}</div>
    ${middle === undefined ? nothing : html`<div class="middle">${guard([middle], () => drawing(middle, 'm'))}</div>`}
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
