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
  const total = sum === undefined || isRead(sum, rows) ? undefined : sum;
  const places = new Map(own.map((column) => [column.key, mostPlaces(column, rows)]));
  return html`<table class=${classesOf(section, used)} role="table" aria-labelledby=${heading}>
    <thead role="rowgroup">
      <tr role="row">
        ${
          head === ''
            ? html`<td class="ingredient" role="cell"></td>`
            : html`<th class="ingredient" scope="col" role="columnheader">${head}</th>`
        }
        ${own.map(
          (column) =>
            html`<th class=${classOf(column)} scope="col" role="columnheader">${headOf(column)}</th>`,
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
              ${own.map((column) => cellPart(row, column, used, places))}
            </tr>
            ${belowRow(row, own.length + 1, around)}`,
      )}
    </tbody>
    ${
      total === undefined
        ? nothing
        : html`<tfoot role="rowgroup">
            <tr class="total" role="row">
              <th class="ingredient" scope="row" role="rowheader">${total.name}</th>
              ${own.map((column) => cellPart(total, column, used, places))}
            </tr>
          </tfoot>`
    }
  </table>`;
}

/** Whether the scale, empty before the first row, reads the sum after the last: nothing stands twice. */
function isRead({ cells }: Row, rows: readonly Row[]): boolean {
  const first = rows[0]?.cells;
  if (cells.all !== undefined || rows.at(-1)?.cells.reads === undefined) return false;
  return (
    first?.reads !== undefined &&
    first.reads.text === first.weigh?.text &&
    first.reads.unit === first.weigh.unit
  );
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

/** A column with its one unit, which its lines need not say again. */
function headOf({ title, unit }: Column): string {
  return unit === undefined ? title : `${title}, ${unit}`;
}

/** The most places behind the decimal sign that a figure of a column has, in the unit of its heading. */
function mostPlaces({ key, unit }: Column, rows: readonly Row[]): number {
  const texts = rows.flatMap(({ cells }) => {
    const cell = cells[key];
    return cell === undefined || cell.unit === undefined || cell.unit !== unit ? [] : [cell.text];
  });
  return Math.max(0, ...texts.map((text) => behindSign(text).length));
}

function behindSign(text: string): string {
  return /[.,](\d+)$/.exec(text)?.[1] ?? '';
}

/** What a figure lacks of the places of its column; it stands unseen, so that figures are aligned on their signs. */
function padding(text: string, places: number): string {
  const own = behindSign(text);
  return own === '' && places > 0 ? `.${'0'.repeat(places)}` : '0'.repeat(Math.max(0, places - own.length));
}

function cellPart(
  { cells }: Row,
  column: Column,
  used: readonly Column[],
  places: ReadonlyMap<Column['key'], number>,
): Shown {
  const cell = cells[column.key];
  if (cell === undefined) return html`<td class=${classOf(column)} role="cell"></td>`;
  const below = used.flatMap((other) => {
    const under = other.below?.key === column.key ? cells[other.key] : undefined;
    return under === undefined ? [] : [filled(other.below!.words, cellText(under))];
  });
  return html`<td class=${classOf(column)} role="cell">${
    cell.unit === undefined
      ? cell.text
      : cell.unit === column.unit
        ? figure(cell.text, places.get(column.key) ?? 0)
        : weighed(cell)
  }${below.map((text) => html`<span class="all">${text}</span>`)}</td>`;
}

function figure(text: string, places: number): Shown {
  return html`<span class="figure">${text}</span><span class="pad" data-pad=${padding(text, places)}></span>`;
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
