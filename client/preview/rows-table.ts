import { html, nothing } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { Cell, Column, Row, TableSection } from '../../server/protocol.ts';
import { filled } from './filled.ts';
import { type Around, findingsList, named, type Shown } from './found.ts';

/**
 * Rows with a name and cells. They turn into a grid where the panel is narrow, and a grid is no table to a screen reader
 * unless every role is said.
 */
export function rowsTable(section: TableSection, heading: string, around: Around): Shown {
  const { rows, sum, head } = section;
  const used = section.columns.filter(({ key }) => rows.some(({ cells }) => (cells[key]?.text ?? '') !== ''));
  const own = used.filter(({ below }) => below === undefined);
  return html`<table class=${classesOf(section, used)} role="table" aria-labelledby=${heading}>
    <thead role="rowgroup">
      <tr role="row">
        ${
          head === ''
            ? html`<td class="ingredient" role="cell"></td>`
            : html`<th class="ingredient" scope="col" role="columnheader">${head}</th>`
        }
        ${own.map(
          (column) => html`<th class=${classOf(column)} scope="col" role="columnheader">${column.title}</th>`,
        )}
      </tr>
    </thead>
    <tbody role="rowgroup">
      ${repeat(
        rows,
        ({ id }) => id,
        (row) =>
          html`<tr class=${row.missing === undefined ? '' : 'missing'} role="row" data-id=${row.id}>
              <th class="ingredient" scope="row" role="rowheader">${named(row.name, row.line, around)}${besideName(row)}</th>
              ${own.map((column) => cellPart(row, column, used))}
            </tr>
            ${belowRow(row, own.length + 1, around)}`,
      )}
    </tbody>
    ${
      sum === undefined
        ? nothing
        : html`<tfoot role="rowgroup">
            <tr class="total" role="row">
              <th class="ingredient" scope="row" role="rowheader">${sum.name}</th>
              ${own.map((column) => cellPart(sum, column, used))}
            </tr>
          </tfoot>`
    }
  </table>`;
}

function classesOf({ columns }: TableSection, used: readonly Column[]): string {
  const has = (all: readonly Column[], key: Column['key']): boolean => all.some((one) => one.key === key);
  if (has(columns, 'lasts')) return 'mixing-table';
  if (!has(columns, 'weigh')) return 'plain';
  return has(used, 'reads') ? 'weigh-table runs' : 'weigh-table';
}

function classOf({ key, figures }: Column): string {
  const name = key.replace(/ .*/, '');
  return figures === true ? `${name} figures` : name;
}

function besideName({ notes = [], missing }: Row): Shown {
  const beside = [...notes, ...(missing === undefined ? [] : [missing])];
  return html`${beside.map((note) => html`<span class="note" dir="auto">${note}</span>`)}`;
}

function cellPart({ cells }: Row, column: Column, used: readonly Column[]): Shown {
  const cell = cells[column.key];
  if (cell === undefined) return html`<td class=${classOf(column)} role="cell"></td>`;
  const below = used.flatMap((other) => {
    const under = other.below?.key === column.key ? cells[other.key] : undefined;
    return under === undefined ? [] : [filled(other.below!.words, cellText(under))];
  });
  return html`<td class=${classOf(column)} role="cell">${
    cell.unit === undefined ? cell.text : weighed(cell)
  }${below.map((text) => html`<span class="all">${text}</span>`)}</td>`;
}

/** A weight as it is weighed, its unit kept beside it. */
export function weighed({ text, unit = '' }: Cell): Shown {
  return html`<span class="figure">${text}</span>\u00a0<span class="unit">${unit}</span>`;
}

/** The same as text. */
export function cellText({ text, unit }: Cell): string {
  return unit === undefined ? text : `${text}\u00a0${unit}`;
}

/** What was found at a row, below its figures. */
function belowRow({ id, findings }: Row, columns: number, around: Around): Shown {
  if (findings === undefined) return nothing;
  return html`<tr class="about" role="row" data-id=${id}>
    <td role="cell" colspan=${columns} aria-colspan=${columns}>${findingsList(findings, around)}</td>
  </tr>`;
}
