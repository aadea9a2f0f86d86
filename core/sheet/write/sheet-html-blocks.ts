import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { figureWords, hasSum, rowNotes, type Told, timesWords } from '../build/sheet-words.ts';
import type { SheetBlock, SheetFigure, SheetRow } from '../build/view.ts';
import { type Child, element, type Markup } from './markup.ts';

/** A block of more rows is no longer kept on one page: it would leave the page before it empty, and fill its own. */
const mostRowsKept = 16;

/** One moment at the scale: what is weighed, with a box to tick for each time it is. */
export function blockSection(block: SheetBlock, b: number, told: Told, id: string): Markup {
  const runs = block.rows.some(({ scaleReads }) => scaleReads !== undefined);
  const columns = runs ? 5 : 4;
  const { word, speaker } = told;
  const { water } = told.view;
  const rows = block.rows.flatMap((row, r) => [
    weighRow(row, block.times, runs, speaker),
    aboutRow(columns, told.findings(`row ${b} ${r}`)),
  ]);
  const holdsWater = block.kind === 'bowl' && block.rows.some(({ line }) => line === water?.line);
  const head = element(
    'tr',
    {},
    element('th', { scope: 'col', class: 'ticks' }, word('sheet.tick')),
    element('th', { scope: 'col' }, word('sheet.ingredient')),
    element('th', { scope: 'col', class: 'figures' }, word('sheet.weigh')),
    runs ? element('th', { scope: 'col', class: 'figures' }, word('sheet.scale-reads')) : undefined,
    element('th', { scope: 'col', class: 'figures' }, word('sheet.of-flour')),
  );
  const sum = element(
    'tr',
    {},
    element('td', {}),
    element('th', { scope: 'row' }, word('sheet.together')),
    figureCell('grams', block.total, block.totalOfAll, speaker),
    runs ? element('td', {}) : undefined,
    element('td', {}),
  );
  return section(
    id,
    block.rows.length > mostRowsKept ? 'block long' : 'block',
    block.title,
    [block.clock?.words, block.when, timesWords(block.times, speaker)],
    block.note === undefined ? undefined : element('p', { class: 'note', dir: 'auto' }, block.note),
    findingsList(told.findings(`block ${b}`)),
    element(
      'table',
      { class: 'weigh', 'aria-labelledby': id },
      element('thead', {}, head),
      element('tbody', {}, ...rows),
      hasSum(block) ? element('tfoot', {}, sum) : undefined,
    ),
    holdsWater && water !== undefined && water.detail.length > 0
      ? element('ul', { class: 'small' }, ...water.detail.map((one) => element('li', {}, one)))
      : undefined,
  );
}

/** A part of the sheet under its heading, with the time behind it. */
export function section(
  id: string,
  name: string,
  title: string,
  when: readonly (string | undefined)[],
  ...children: readonly Child[]
): Markup {
  const time = when.filter((part) => part !== undefined && part !== '').join(', ');
  return element(
    'section',
    { class: name },
    element(
      'h2',
      { id, dir: 'auto' },
      title,
      time === '' ? undefined : element('span', { class: 'when' }, ` · ${time}`),
    ),
    ...children,
  );
}

/** More boxes than these stand in several rows, so that the names keep their room. */
const mostInARow = 5;

/** Boxes for a pen, one for each time. */
export function ticks(times: number): Markup {
  const boxes = Array.from({ length: times }, () => element('span', { class: 'tick' }));
  return element('td', { class: times > mostInARow ? 'ticks many' : 'ticks' }, ...boxes);
}

export function findingsList(findings: readonly string[]): Child {
  if (findings.length === 0) return undefined;
  return element('ul', { class: 'findings' }, ...findings.map((one) => element('li', { dir: 'auto' }, one)));
}

/** What was found at the line above it. */
export function aboutRow(columns: number, findings: readonly string[]): Child {
  const list = findingsList(findings);
  if (list === undefined) return undefined;
  return element('tr', { class: 'about' }, element('td', { colspan: String(columns) }, list));
}

function weighRow(row: SheetRow, times: number, runs: boolean, speaker: Speaker): Markup {
  return element(
    'tr',
    {},
    ticks(times),
    element(
      'th',
      { scope: 'row', class: 'name', dir: 'auto' },
      row.name,
      ...rowNotes(row).map((note) => element('span', { class: 'note', dir: 'auto' }, note)),
    ),
    figureCell('grams', row.weigh, row.all, speaker),
    runs ? figureCell('reads', row.scaleReads, undefined, speaker) : undefined,
    element('td', { class: 'figures percent' }, row.percent ?? ''),
  );
}

function figureCell(
  name: string,
  figure: SheetFigure | undefined,
  all: SheetFigure | undefined,
  speaker: Speaker,
): Markup {
  if (figure === undefined) return element('td', { class: `figures ${name}` });
  return element(
    'td',
    { class: `figures ${name}` },
    `${figure.figure}\u00A0`,
    element('span', { class: 'unit' }, figure.unit),
    all === undefined
      ? undefined
      : element(
          'span',
          { class: 'all' },
          speaker.say(message('sheet.figure-in-all', { written: figureWords(all) })),
        ),
  );
}
