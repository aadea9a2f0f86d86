import { asCsv } from '../sheet/build/csv-records.ts';
import { element, htmlPage, type Markup, markup } from '../sheet/write/markup.ts';
import { type Page, pageAsText, type Table } from '../sheet/write/tables.ts';
import { type Message, message } from '../words/message.ts';
import type { Speaker } from '../words/speaker.ts';
import { figureOf, figureTable, type HistoryFigure, isOneFigure, underAllNames } from './figure-table.ts';
import {
  allFigures,
  type FigureChange,
  type History,
  type HistoryRow,
  type HistoryRowWords,
  type HistoryTrial,
} from './history.ts';
import { historyChart } from './history-chart.ts';

/** A history as people read it: a row for each revision and for each trial, the oldest first, and charts of figures. */
export interface HistoryPage {
  readonly title: string;
  /** Where it stands, and how much there is. */
  readonly lead: readonly string[];
  readonly heads: readonly string[];
  readonly rows: readonly HistoryPageRow[];
  /** Drawings in SVG, each with the figure that it is of. */
  readonly charts: readonly HistoryPageChart[];
  /** What the marks of a chart mean. */
  readonly key: string;
}

export interface HistoryPageRow {
  readonly date: string;
  /** Of a trial none. */
  readonly commit?: string;
  readonly author: string;
  /** What changed, each in a line of its own. */
  readonly changes: readonly string[];
  readonly words: string;
}

export interface HistoryPageChart {
  readonly figure: string;
  readonly name: string;
  readonly svg: string;
}

/** A history in the words of a speaker; with the figures `wanted` alone where some are named. */
export function historyPage(
  history: History,
  speaker: Speaker,
  wanted?: readonly HistoryFigure[],
): HistoryPage {
  const { formula, file, rows, trials } = history;
  const shown = [
    ...rows.map((row) => ({ seconds: row.seconds, row: pageRow(row, history.names, speaker) })),
    ...trials.map((trial) => ({ seconds: trial.seconds, row: trialRow(trial, speaker) })),
  ];
  const byTime = inTime(shown);
  return {
    title: formula,
    lead: [file, speaker.say(message('history.so-many', { count: rows.length, trialCount: trials.length }))],
    heads: (['date', 'commit', 'author', 'changed', 'words'] as const).map((head) =>
      speaker.say(message(`history.head-${head}`)),
    ),
    rows: byTime.map(({ row }) => row),
    charts: chartsOf(history, speaker, wanted),
    key: speaker.say(message('history.chart-key')),
  };
}

/** Trials among revisions by their day, the revisions in their own order whatever their clocks said. */
function inTime<T extends { readonly seconds: number; readonly row: HistoryPageRow }>(
  all: readonly T[],
): T[] {
  const revisions = all.filter(({ row }) => row.commit !== undefined);
  const trials = all.filter(({ row }) => row.commit === undefined);
  const merged: T[] = [];
  let next = 0;
  for (const revision of revisions) {
    for (let trial = trials[next]; trial !== undefined && trial.seconds < revision.seconds; ) {
      merged.push(trial);
      next++;
      trial = trials[next];
    }
    merged.push(revision);
  }
  return [...merged, ...trials.slice(next)];
}

function pageRow(row: HistoryRow, names: History['names'], speaker: Speaker): HistoryPageRow {
  const remarks = [
    row.fate === 'new' ? speaker.say(message('history.new')) : undefined,
    row.fate === 'removed' ? speaker.say(message('history.removed')) : undefined,
    row.renamedFrom === undefined
      ? undefined
      : speaker.say(message('history.renamed-from', { name: row.renamedFrom })),
    row.movedFrom === undefined
      ? undefined
      : speaker.say(message('history.moved-from', { file: row.movedFrom })),
    ...(row.namedAnew ?? []).map(({ from, to }) =>
      speaker.say(message('history.named-anew', { name: from, otherName: to })),
    ),
  ].filter((one) => one !== undefined);
  const { figures } = row;
  const first =
    row.fate !== 'new' || figures === undefined
      ? []
      : figureTable.flatMap(({ name, text }) => {
          const written = text(figures, speaker);
          return written === undefined ? [] : [`${name(speaker)} ${written}`];
        });
  return {
    ...{ date: row.date, commit: row.commit.slice(0, 8), author: row.author },
    words: row.uncommitted === undefined ? row.words : speaker.say(message('history.uncommitted')),
    changes: [...remarks, ...first, ...row.changes.map((change) => changeText(change, names, speaker))],
  };
}

/** A change in words: `salt 2% → 1.9%`. */
export function changeText(
  { figure, before, after }: FigureChange,
  names: History['names'],
  speaker: Speaker,
): string {
  const { name, text } = underAllNames(figureOf(figure), names);
  const none = speaker.say(message('history.none'));
  const told = (figures: typeof before): string =>
    figures === undefined ? none : (text(figures, speaker) ?? none);
  return `${name(speaker)} ${told(before)} → ${told(after)}`;
}

/**
 * Since when a figure is as it is now, in a sentence; undefined where the formula is no longer there, or the figure is not known.
 */
export function sinceWhen({ rows, names }: History, key: string, speaker: Speaker): string | undefined {
  const figure = figureOf(key);
  const now = rows.findLast((row) => row.figures !== undefined || row.fate === 'removed')?.figures;
  const written = now === undefined ? undefined : figure.text(now, speaker);
  const since = rows.findLast(
    ({ fate, changes }) => fate === 'new' || changes.some((change) => isOneFigure(change.figure, key, names)),
  );
  if (written === undefined || since === undefined) return undefined;
  const facts = {
    ...{ name: figure.name(speaker), otherName: since.author, meant: since.date },
    ...{ otherWritten: since.words, commit: since.commit.slice(0, 8), sentence: written },
  };
  return speaker.say(message(since.fate === 'new' ? 'history.since-first' : 'history.since', facts));
}

function trialRow(trial: HistoryTrial, speaker: Speaker): HistoryPageRow {
  const { measuredCelsius, predictedCelsius, commit } = trial;
  const told = (): Message => {
    if (measuredCelsius === undefined) return message('history.trial-unmeasured');
    if (predictedCelsius === undefined)
      return message('history.trial-measured', { celsius: measuredCelsius });
    const both = { celsius: measuredCelsius, targetCelsius: predictedCelsius };
    return commit === ''
      ? message('history.trial-beside-now', both)
      : message('history.trial-beside', { ...both, commit: commit.slice(0, 8) });
  };
  return { date: trial.date ?? '', author: '', changes: [speaker.say(told())], words: trial.title };
}

/** Of the figures wanted, else of those that changed; of a history in which none did, none. */
function chartsOf(
  history: History,
  speaker: Speaker,
  wanted: readonly HistoryFigure[] | undefined,
): HistoryPageChart[] {
  const { names } = history;
  const changed = [...new Set(history.rows.flatMap(({ changes }) => changes.map(({ figure }) => figure)))];
  const states = history.rows.flatMap(({ figures }) => figures ?? []);
  const hasTrials = history.trials.some(({ measuredCelsius }) => measuredCelsius !== undefined);
  const isChanged = ({ key }: HistoryFigure): boolean => changed.some((one) => isOneFigure(one, key, names));
  const all = allFigures(states).filter(
    (one) => isChanged(one) || (one.key === 'end-temperature' && hasTrials),
  );
  // Of an ingredient that had several names one chart, under the last of them.
  const figures = (
    wanted ?? all.filter(({ key }, at) => !all.slice(at + 1).some((one) => isOneFigure(one.key, key, names)))
  ).map((one) => underAllNames(one, names));
  return figures.flatMap((figure) => {
    const svg = historyChart(history, figure, speaker);
    return svg === undefined ? [] : [{ figure: figure.key, name: figure.name(speaker), svg }];
  });
}

export function historyAsText(page: HistoryPage): string {
  const [date, commit, author, changed, words] = page.heads as [string, string, string, string, string];
  const table: Table = {
    title: page.lead.at(-1) ?? '',
    columns: [date, commit, author, words, changed].map((name) => ({ name })),
    rows: page.rows.flatMap((row) => {
      const [first = '', ...more] = row.changes;
      return [
        [row.date, row.commit ?? '', row.author, row.words, first],
        ...more.map((change) => ['', '', '', '', change]),
      ];
    }),
  };
  const told: Page = {
    ...{ language: '', title: [page.title, ...page.lead.slice(0, -1)].join('  '), tableHead: '' },
    ...{ facts: [], tables: [table], notes: [] },
  };
  return pageAsText(told);
}

/** A page that prints as it stands: no script, nothing fetched. */
export function historyAsHtml(page: HistoryPage, language: string): string {
  const heads = page.heads.map((head) => element('th', { scope: 'col' }, head));
  const cell = (text: string): Markup => element('td', { dir: 'auto' }, text);
  const whole = (text: string): Markup => element('td', { class: 'whole' }, text);
  const rows = page.rows.map(({ date, commit, author, changes, words }) =>
    element(
      'tr',
      {},
      ...[whole(date), whole(commit ?? ''), cell(author)],
      element('td', {}, element('ul', {}, ...changes.map((one) => element('li', { dir: 'auto' }, one)))),
      cell(words),
    ),
  );
  return htmlPage(language, page.title, style, [
    element('h1', { dir: 'auto' }, page.title),
    ...page.lead.map((one) => element('p', {}, one)),
    ...page.charts.map(({ name, svg }) =>
      element('figure', {}, element('figcaption', { dir: 'auto' }, name), markup(svg)),
    ),
    page.charts.length === 0 ? undefined : element('p', { class: 'key' }, page.key),
    element('table', {}, element('thead', {}, element('tr', {}, ...heads)), element('tbody', {}, ...rows)),
  ]);
}

const style = [
  'body{font:16px/1.4 system-ui,sans-serif;margin:2rem auto;max-width:64rem;padding:0 1rem;color:#111;background:#fff}',
  'h1{font-size:1.5rem;margin-bottom:.3rem}p{margin:.2rem 0}',
  'figure{margin:1.2rem 0;break-inside:avoid}figcaption{font-weight:600}figure svg{max-width:100%;height:auto}.key{font-size:.9rem}',
  'table{border-collapse:collapse;width:100%;margin:1.5rem 0}tr{break-inside:avoid}',
  'th,td{text-align:left;padding:.3rem .8rem .3rem 0;border-bottom:1px solid #999;vertical-align:top}',
  'ul{margin:0;padding:0;list-style:none}.whole{white-space:nowrap}',
  '@media print{body{margin:0;max-width:none}}',
].join('');

const columns = [
  'kind',
  'date',
  'commit',
  'author',
  'words',
  'formula',
  'file',
  'fate',
  'changed',
  'hydration',
  'saltFraction',
  'prefermentedFlour',
  'mixMinutes',
  'endCelsius',
  'waterCelsius',
  'costPerKilogram',
  'currency',
  'allergens',
  'measuredCelsius',
  'predictedCelsius',
] as const;
type Column = (typeof columns)[number];

/** A row for each revision and each trial, its figures plain numbers, for a spreadsheet. */
export function historyAsCsv({ rows, trials, formula, file }: History): string {
  const told = (cells: Partial<Record<Column, string | number | undefined>>): string[] =>
    columns.map((column) => {
      const value = cells[column];
      return value === undefined ? '' : typeof value === 'number' ? String(Number(value.toFixed(6))) : value;
    });
  return asCsv([
    [...columns],
    ...rows.map(({ figures, changes, seconds: _, renamedFrom: __, movedFrom: ___, uncommitted, ...row }) => {
      const { ingredients: ____, allergens, costIsAtLeast: _____, ...plain } = figures ?? { ingredients: [] };
      return told({
        ...{ kind: uncommitted === undefined ? 'revision' : 'uncommitted', ...row, ...plain },
        changed: changes.map(({ figure }) => figure).join('; '),
        ...(allergens === undefined ? {} : { allergens: allergens.join('; ') }),
      });
    }),
    ...trials.map(({ title, seconds: _, ...trial }) =>
      told({ kind: 'trial', words: title, formula, file, ...trial }),
    ),
  ]);
}

/** A history for another program: what `history --format json` writes. */
export interface HistoryData {
  /** Its name now, or as it was called last. */
  readonly formula: string;
  readonly file: string;
  /** The oldest first. */
  readonly revisions: readonly HistoryDataRevision[];
  readonly trials: readonly Omit<HistoryTrial, 'seconds'>[];
}

/** A revision, and the keys of the figures that it changed. */
export interface HistoryDataRevision extends HistoryRowWords {
  readonly changed: readonly string[];
}

export function historyAsData({ formula, file, rows, trials }: History): HistoryData {
  return {
    ...{ formula, file },
    revisions: rows.map(({ changes, seconds: _, ...row }) => ({
      ...row,
      changed: changes.map(({ figure }) => figure),
    })),
    trials: trials.map(({ seconds: _, ...trial }) => trial),
  };
}
