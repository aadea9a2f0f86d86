import type { SheetBlock, SheetFigure, SheetLabels, SheetRow, SheetView } from '../../server/protocol.ts';
import { element, lineButton, type Reveal } from './elements.ts';
import { filled } from './filled.ts';
import { findingsAt } from './findings.ts';
import { weighedText } from './numbers.ts';
import type { PlacedFindings } from './place-findings.ts';

/** Second band: what is weighed, one block a moment, in the order of the work. */
export function weighingBlocks(view: SheetView, placed: PlacedFindings, reveal: Reveal): HTMLElement {
  const { labels } = view;
  const waterAt = placeOfWater(view);
  const water = waterText(view, placed, reveal);
  const sections = view.blocks.map((block, b) => {
    const heading = `block-${b}`;
    return element(
      'section',
      // Two blocks may have one title; with their times their names differ.
      { class: `block ${block.kind}`, attributes: { 'aria-labelledby': `${heading}-head` } },
      element(
        'header',
        { attributes: { id: `${heading}-head` } },
        element(
          'h2',
          { attributes: { id: heading } },
          lineButton(block.title, block.line, `block ${b}`, reveal),
        ),
        ...[block.clock?.words, block.when]
          .filter(Boolean)
          .map((text) => element('p', { class: 'when', text, attributes: { dir: 'auto' } })),
        block.times > 1
          ? element('p', { class: 'times', text: filled(labels.times, String(block.times)) })
          : undefined,
      ),
      block.note ? element('p', { class: 'note', text: block.note, attributes: { dir: 'auto' } }) : undefined,
      findingsAt(placed, `block ${b}`, labels, reveal),
      waterAt?.block === b && waterAt.row === undefined ? water : undefined,
      weighTable(block, b, {
        heading,
        placed,
        labels,
        reveal,
        water,
        waterText: view.water?.text,
        waterRow: waterAt?.block === b ? waterAt.row : undefined,
      }),
    );
  });
  const batches = view.batches.text
    ? element('p', { class: 'batches', text: view.batches.text, attributes: { dir: 'auto' } })
    : undefined;
  return element('div', { class: 'weighing' }, batches, ...sections, waterAt ? undefined : water);
}

interface TableParts {
  readonly heading: string;
  readonly placed: PlacedFindings;
  readonly labels: SheetLabels;
  readonly reveal: Reveal;
  readonly water: HTMLElement | undefined;
  readonly waterText: string | undefined;
  readonly waterRow: number | undefined;
}

// The rows turn into a grid where the panel is narrow, and a grid is no table to a screen reader unless every role is said.
function weighTable(block: SheetBlock, b: number, parts: TableParts): HTMLElement {
  const { labels } = parts;
  const runs = block.rows.some((row) => row.scaleReads);
  const columns = runs ? 4 : 3;
  const head = element(
    'tr',
    { attributes: { role: 'row' } },
    columnHead('ingredient', labels.ingredient),
    columnHead('weigh', labels.weigh),
    runs ? columnHead('reads', labels.scaleReads) : undefined,
    columnHead('percent', labels.ofFlour),
  );
  const rows = block.rows.flatMap((row, r) => {
    const said = [
      parts.waterRow === r ? parts.water : undefined,
      findingsAt(parts.placed, `row ${b} ${r}`, labels, parts.reveal),
    ];
    const about = said.filter((part) => part !== undefined);
    // The water's own row says its temperature once, large.
    const saidBelow = parts.waterRow === r ? parts.waterText : undefined;
    const cells = weighRow(row, `row ${b} ${r}`, runs, saidBelow, parts);
    return about.length === 0 ? [cells] : [cells, aboutRow(columns, about)];
  });
  const total = element(
    'tr',
    { class: 'total', attributes: { role: 'row' } },
    element('th', {
      class: 'ingredient',
      text: labels.together,
      attributes: { scope: 'row', role: 'rowheader' },
    }),
    figureCell('weigh', labels, block.total, block.totalOfAll),
    runs ? element('td', { class: 'reads', attributes: { role: 'cell' } }) : undefined,
    element('td', { class: 'percent', attributes: { role: 'cell' } }),
  );
  return element(
    'table',
    {
      class: runs ? 'weigh-table runs' : 'weigh-table',
      attributes: { role: 'table', 'aria-labelledby': parts.heading },
    },
    element('thead', { attributes: { role: 'rowgroup' } }, head),
    element('tbody', { attributes: { role: 'rowgroup' } }, ...rows),
    // The sum of a single row is that row, and without all of its rows it is no sum.
    block.rows.length > 1 && block.rows.every((row) => row.weigh)
      ? element('tfoot', { attributes: { role: 'rowgroup' } }, total)
      : undefined,
  );
}

function weighRow(
  row: SheetRow,
  key: string,
  runs: boolean,
  saidBelow: string | undefined,
  { labels, reveal }: TableParts,
): HTMLElement {
  const notes = [row.note, row.missing].filter((note) => note !== undefined && note !== saidBelow);
  return element(
    'tr',
    { class: row.missing === undefined ? '' : 'missing', attributes: { role: 'row' } },
    element(
      'th',
      { class: 'ingredient', attributes: { scope: 'row', role: 'rowheader' } },
      lineButton(row.name, row.line, key, reveal),
      ...notes.map((note) => element('span', { class: 'note', text: note, attributes: { dir: 'auto' } })),
    ),
    figureCell('weigh', labels, row.weigh, row.all),
    runs ? figureCell('reads', labels, row.scaleReads) : undefined,
    element('td', { class: 'percent', text: row.percent ?? '', attributes: { role: 'cell' } }),
  );
}

function columnHead(column: string, text: string): HTMLElement {
  return element('th', { class: column, text, attributes: { scope: 'col', role: 'columnheader' } });
}

function figureCell(
  column: string,
  labels: SheetLabels,
  figure: SheetFigure | undefined,
  all?: SheetFigure,
): HTMLElement {
  const cell = element('td', { class: column, attributes: { role: 'cell' } });
  if (!figure) return cell;
  cell.append(
    element('span', { class: 'figure', text: figure.figure }),
    document.createTextNode('\u00a0'),
    element('span', { class: 'unit', text: figure.unit }),
  );
  if (all) {
    const text = filled(labels.figureInAll, weighedText(all));
    cell.append(element('span', { class: 'all', text }));
  }
  return cell;
}

function aboutRow(columns: number, about: readonly HTMLElement[]): HTMLElement {
  const attributes = { role: 'cell', colspan: String(columns), 'aria-colspan': String(columns) };
  return element(
    'tr',
    { class: 'about', attributes: { role: 'row' } },
    element('td', { attributes }, ...about),
  );
}

/** The water's own row in the bowl, else the block that fills the bowl. */
function placeOfWater(view: SheetView): { block: number; row?: number } | undefined {
  const line = view.water?.line;
  const inBowl = view.blocks.map((block, b) => ({ block, b })).filter(({ block }) => block.kind === 'bowl');
  for (const { block, b } of inBowl) {
    const row = block.rows.findIndex((other) => other.line === line);
    if (line !== undefined && row >= 0) return { block: b, row };
  }
  return inBowl[0] ? { block: inBowl[0].b } : undefined;
}

function waterText(view: SheetView, placed: PlacedFindings, reveal: Reveal): HTMLElement | undefined {
  const water = view.water;
  if (!water) return undefined;
  const details = water.detail.map((text) => element('li', { text, attributes: { dir: 'auto' } }));
  return element(
    'div',
    { class: 'water' },
    element('p', { class: 'water-text', text: water.text, attributes: { dir: 'auto' } }),
    findingsAt(placed, 'water', view.labels, reveal),
    details.length > 0
      ? element(
          'details',
          { attributes: { 'data-key': 'water' } },
          element('summary', {
            text: view.labels.temperatureWhy,
            attributes: { 'data-key': 'water summary' },
          }),
          element('ul', {}, ...details),
        )
      : undefined,
  );
}
