import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { originWords } from '../build/origin.ts';
import type {
  Column,
  Row,
  Section,
  SheetDocument,
  SheetNode,
  Step,
  StepsSection,
  TableSection,
} from '../build/sheet-document.ts';
import { chartParts } from './chart-html.ts';
import { factsBody, foundList, pairs, sentences } from './facts-html.ts';
import { type Child, element, htmlPage, type Markup } from './markup.ts';
import { type PaperLayout, paperLayout } from './paper-layout.ts';
import type { FiledSheet } from './sheet-json.ts';
import { cellWords, isAtHead, leadOf, rowNotes, usedColumns } from './sheet-sentences.ts';
import { pageFoot, sheetStyle } from './sheet-style.ts';

/** Batch sheets as one page that prints as it stands, each from a page of its own on. */
export function sheetsAsHtml(sheets: readonly FiledSheet[], speaker: Speaker): string {
  const names = [...new Set(sheets.map(({ view }) => view.formula))].join(', ');
  const feet = sheets.map(({ view, origin }, index) =>
    pageFoot(`sheet-${index + 1}`, view.formula, origin, speaker),
  );
  const articles = sheets.map((sheet, index) => article(sheet, `sheet-${index + 1}`, speaker));
  const title = speaker.say(message('sheet.title', { name: names }));
  return htmlPage(speaker.language, title, sheetStyle + feet.join(''), [element('main', {}, ...articles)]);
}

function article({ view, origin }: FiledSheet, id: string, speaker: Speaker): Markup {
  const layout = paperLayout(view);
  const head = view.sections.filter(isAtHead);
  const worked = view.sections.filter((section) => !isAtHead(section) && !isLooked(section));
  // Nobody works from trials and charts: the pages that are worked from come before.
  const below = [...worked, ...view.sections.filter(isLooked)];
  return element(
    'article',
    { class: `sheet ${id}${layout === 'flowing' ? '' : ` compact ${layout}`}`, 'aria-labelledby': id },
    element(
      'header',
      {},
      element('h1', { id, dir: 'auto' }, view.formula),
      line('makes', view.makes.join(' · ')),
      line('batches', view.batches.text),
      line('from', originWords(origin, speaker)),
      sentences('lead', leadOf(view, speaker)),
      ...head.map((section) => (section.kind === 'facts' ? pairs(section, speaker) : undefined)),
    ),
    ...(layout === 'flowing'
      ? below.map((section, index) => sectionOf(section, `${id}-${index + 1}`, speaker))
      : laidOut(below, id, speaker, layout)),
  );
}

/** Sections with the ids of their headings, by their names. */
type Named = (...names: readonly Section['name'][]) => Markup[];

/** What is weighed across the page, the work side by side below it, and small below that, or on a page of its own, what comes of it. */
function laidOut(
  below: readonly Section[],
  id: string,
  speaker: Speaker,
  layout: Exclude<PaperLayout, 'flowing'>,
): Markup[] {
  const made = below.map((section, index) => ({
    name: section.name,
    markup: sectionOf(
      section.kind === 'chart' ? { ...section, wide: section.narrow } : section,
      `${id}-${index + 1}`,
      speaker,
    ),
  }));
  const named: Named = (...names) =>
    made.filter(({ name }) => names.includes(name)).map(({ markup }) => markup);
  const weighed = named('before', 'bowl', 'later', 'apart');
  if (layout === 'one-page')
    return [
      ...weighed,
      sides(named('mixing', 'clock', 'label'), named('log', 'mixing-chart', 'yield', 'cost')),
      // What the dough is made of is what is weighed above, where nothing is made before.
      element('div', { class: 'after' }, ...named('cautions')),
    ];
  return [
    ...weighed,
    sides(named('clock'), named('mixing', 'log')),
    element(
      'div',
      { class: 'rest' },
      ...named('before-after', 'mixing-chart', 'map-chart', 'trial', 'yield', 'composition-chart'),
      ...named('cost', 'label', 'cautions'),
    ),
  ];
}

function sides(left: readonly Markup[], right: readonly Markup[]): Markup {
  return element('div', { class: 'sides' }, element('div', {}, ...left), element('div', {}, ...right));
}

function isLooked({ kind, name }: Section): boolean {
  return kind === 'chart' || name === 'trial';
}

/** A section of more rows is no longer kept on one page: it would leave the page before it empty, and fill its own. */
const mostRowsKept = 16;

/** A part of the sheet under its heading, with the time behind it. */
function sectionOf(section: Section, id: string, speaker: Speaker): Markup {
  const { name, title, when = [], lead = [], notes = [] } = section;
  const isLong = section.kind === 'table' && section.rows.length > mostRowsKept;
  const time = when.join(', ');
  return element(
    'section',
    {
      class: [...(section.kind === 'chart' ? ['chart'] : []), name, ...(isLong ? ['long'] : [])].join(' '),
      'data-id': section.id,
    },
    element(
      'h2',
      { id, dir: 'auto' },
      title,
      time === '' ? undefined : element('span', { class: 'when' }, ` · ${time}`),
    ),
    ...lead.map((one) =>
      element(
        'p',
        { class: 'note', dir: 'auto' },
        ...(typeof one === 'string'
          ? [one]
          : one.map(({ text, strong }) => (strong === true ? element('strong', {}, text) : text))),
      ),
    ),
    foundList(section, speaker),
    ...bodyOf(section, id, speaker),
    notes.length === 0
      ? undefined
      : element('ul', { class: 'small' }, ...notes.map((one) => element('li', { dir: 'auto' }, one))),
  );
}

function bodyOf(section: Section, id: string, speaker: Speaker): Child[] {
  switch (section.kind) {
    case 'facts':
      return [factsBody(section, speaker)];
    case 'table':
      return section.rows.length === 0 ? [] : [rowsTable(section, id, speaker)];
    case 'steps':
      return [stepsTable(section, id, speaker)];
    case 'chart':
      return chartParts(section, id, speaker);
    case 'notes':
      return [];
  }
}

function rowsTable(section: TableSection, id: string, speaker: Speaker): Markup {
  const { rows, sum, times, head } = section;
  const columns = usedColumns(section);
  const own = columns.filter(({ below }) => below === undefined);
  const width = own.length + (times === undefined ? 1 : 2);
  const cells = (row: Row): Markup[] => own.map((column) => cellOf(row, column, columns));
  return element(
    'table',
    { class: classOfTable(section), 'aria-labelledby': id },
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        times === undefined ? undefined : tickHead(speaker),
        head === '' ? element('td', {}) : element('th', { scope: 'col' }, head),
        ...own.map((column) => element('th', { scope: 'col', class: classOf(column) }, column.title)),
      ),
    ),
    element(
      'tbody',
      {},
      ...rows.flatMap((row) => [
        element(
          'tr',
          { 'data-id': row.id },
          times === undefined ? undefined : ticks(times),
          element(
            'th',
            { scope: 'row', class: 'name', dir: 'auto' },
            row.name,
            ...rowNotes(row).map((note) => element('span', { class: 'note', dir: 'auto' }, note)),
          ),
          ...cells(row),
        ),
        aboutRow(row, width, speaker),
      ]),
    ),
    sum === undefined
      ? undefined
      : element(
          'tfoot',
          {},
          element(
            'tr',
            {},
            times === undefined ? undefined : element('td', {}),
            element('th', { scope: 'row' }, sum.name),
            ...cells(sum),
          ),
        ),
  );
}

function classOfTable({ columns, times }: TableSection): string {
  if (columns.some(({ key }) => key === 'weigh')) return 'weigh';
  return times === undefined ? 'plain' : 'work';
}

function classOf({ key, figures }: Column): string {
  const name = key.replace(/ .*/, '');
  return figures === true ? `figures ${name}` : name;
}

function cellOf({ cells }: Row, column: Column, columns: readonly Column[]): Markup {
  const cell = cells[column.key];
  if (cell === undefined) return element('td', { class: classOf(column) });
  const below = columns.flatMap((other) => {
    const text = other.below?.key === column.key ? cellWords(cells[other.key]) : '';
    return text === '' ? [] : [element('span', { class: 'all' }, other.below!.words.replace('{0}', text))];
  });
  return element(
    'td',
    { class: classOf(column) },
    cell.unit === undefined ? cell.text : `${cell.text}\u00A0`,
    cell.unit === undefined ? undefined : element('span', { class: 'unit' }, cell.unit),
    ...below,
  );
}

/** Every moment of the work with its time. */
function stepsTable({ heads, steps }: StepsSection, id: string, speaker: Speaker): Markup {
  const [when, work, lasts] = heads;
  return element(
    'table',
    { class: 'work', 'aria-labelledby': id },
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        tickHead(speaker),
        element('th', { scope: 'col' }, when),
        element('th', { scope: 'col' }, work),
        element('th', { scope: 'col', class: 'figures' }, lasts),
      ),
    ),
    element(
      'tbody',
      {},
      ...steps.flatMap((step) => [
        element(
          'tr',
          { class: step.of, 'data-id': step.id },
          ticks(step.of === 'ready' ? 0 : 1),
          element('td', { class: 'clock' }, step.when),
          element(
            'th',
            { scope: 'row', class: 'name', dir: 'auto' },
            step.brief ?? step.text,
            ...(step.notes ?? []).map((note) => element('span', { class: 'note', dir: 'auto' }, note)),
            bar(step),
          ),
          element('td', { class: 'figures' }, step.lasts ?? ''),
        ),
        aboutRow(step, 4, speaker),
      ]),
    ),
  );
}

/** Where a step lies along the whole work; the words beside it say the same. */
function bar({ along: { from, to } }: Step): Markup {
  const width = Math.max(0.8, (to - from) * 100);
  const x = Math.min(from * 100, 100 - width);
  return element(
    'svg',
    { class: 'along', viewBox: '0 0 100 4', preserveAspectRatio: 'none', 'aria-hidden': 'true' },
    element('path', { d: 'M0,2 H100', stroke: 'currentColor', 'stroke-opacity': '0.3' }),
    element('rect', { x: x.toFixed(1), y: '0', width: width.toFixed(1), height: '4' }),
  );
}

/** More boxes than these stand in several rows, so that the names keep their room. */
const mostInARow = 5;

function tickHead({ say }: Speaker): Markup {
  return element('th', { scope: 'col', class: 'ticks' }, say(message('sheet.tick')));
}

/** Boxes for a pen, one for each time. */
function ticks(times: number): Markup {
  const boxes = Array.from({ length: times }, () => element('span', { class: 'tick' }));
  return element('td', { class: times > mostInARow ? 'ticks many' : 'ticks' }, ...boxes);
}

/** What was found at the row above it. */
function aboutRow(node: SheetNode, columns: number, speaker: Speaker): Child {
  const list = foundList(node, speaker);
  if (list === undefined) return undefined;
  const cell = element('td', { colspan: String(columns) }, list);
  return element('tr', { class: 'about', 'data-id': node.id }, cell);
}

function line(name: string, text: SheetDocument['batches']['text']): Child {
  return text === undefined || text === '' ? undefined : element('p', { class: name, dir: 'auto' }, text);
}
