import { stageMessage } from '../../analysis/mix-analysis.ts';
import type { DoughZone } from '../../calc/mixing/dough-zone.ts';
import { feelFacts } from '../../facts/trial-words.ts';
import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import { asCsv } from '../build/csv-records.ts';
import type { MapView } from '../build/map-view.ts';
import { rowWords, zoneMessage } from '../charts/map-words.ts';
import { type Page, pageAsMarkdown, pageAsText } from './tables.ts';

export const mapFormats = ['text', 'md', 'svg', 'csv', 'json'] as const;
export type MapFormat = (typeof mapFormats)[number];

/** One map as a reader or another program takes it. A map there is none of is its sentence, or nothing where figures are asked for. */
export function writeMaps(maps: readonly MapView[], format: MapFormat, speaker: Speaker): string {
  switch (format) {
    case 'svg':
      return maps.map(({ chart }) => (chart === undefined ? '' : alone(chart.wide))).join('');
    case 'csv':
      return asCsv(csvRecords(maps, speaker));
    case 'json':
      return `${JSON.stringify(maps.map(jsonOf), null, 2)}\n`;
    case 'md':
      return maps.map((map) => pageAsMarkdown(pageOf(map, speaker))).join('\n');
    case 'text':
      return maps
        .map((map) => [pageAsText(pageOf(map, speaker)), ...pictureOf(map, speaker)].join('\n'))
        .join('\n');
  }
}

/** A drawing as a file of its own: black on white whatever shows it. */
function alone(svg: string): string {
  const ground = '<rect width="100%" height="100%" fill="white"/>';
  return `${svg.replace('<svg ', '<svg color="black" ').replace(/<\/desc>/, (end) => end + ground)}\n`;
}

function pageOf({ formula, chart, sentences, data }: MapView, speaker: Speaker): Page {
  const { say } = speaker;
  const [first = '', ...others] = chart?.table.heads ?? [];
  const readings = data?.trials ?? [];
  return {
    language: speaker.language,
    title: chart?.title ?? formula,
    facts: [],
    lead: sentences,
    tableHead: '',
    tables:
      chart === undefined || data === undefined
        ? []
        : [
            {
              title: say(message('map.title')),
              columns: [{ name: first }, ...others.map((name) => ({ name, figures: true as const }))],
              rows: chart.table.rows,
            },
            {
              title: say(message('map.readings')),
              columns: [
                { name: say(message('chart.what')) },
                { name: first, figures: true },
                { name: say(message('chart.minute')), figures: true },
                { name: say(message('sheet.dough')), figures: true },
                { name: say(message('sheet.stage')) },
              ],
              rows: readings.map(({ trial, value, minutes, celsius, stage, feel = [] }) => [
                trial,
                rowWords(data, value, speaker),
                speaker.minutes(minutes),
                celsius === undefined ? '' : speaker.celsius(celsius),
                [...(stage === undefined ? [] : [stageMessage(stage)]), ...feelFacts(feel)]
                  .map(say)
                  .join(', '),
              ]),
            },
          ],
    notes: [],
  };
}

const signs: Readonly<Record<DoughZone, string>> = {
  'not-yet': '.',
  developed: 'o',
  'let-down': '/',
  breakdown: '#',
};
const columns = 60;
const mostRows = 20;

/** The map in letters: a row of them for every second row, the formula’s own always. */
function pictureOf({ data }: MapView, speaker: Speaker): string[] {
  if (data === undefined) return [];
  const { rows, lastMinute, mark, limitCelsius, trials } = data;
  const each = Math.ceil(rows.length / mostRows);
  const own = rows.findIndex(({ isOwn }) => isOwn);
  const shown = rows.filter((_, index) => index % each === own % each).reverse();
  const columnOf = (minutes: number): number =>
    Math.min(columns - 1, Math.max(0, Math.ceil((minutes / lastMinute) * columns) - 1));
  const names = shown.map(({ value }) => rowWords(data, value, speaker));
  const widest = Math.max(...names.map(({ length }) => length));
  const drawn = shown.map((row, index) => {
    const letters = Array.from({ length: columns }, (_, column) => {
      const cell =
        row.cells[
          Math.min(row.cells.length - 1, Math.floor(((column + 1) * row.cells.length) / columns) - 1)
        ];
      return cell?.zone === undefined ? ' ' : signs[cell.zone];
    });
    const warm = row.tooWarmMinutes;
    if (warm !== undefined && warm <= lastMinute) letters[columnOf(warm)] = '|';
    if (row.isOwn) {
      for (const { minutes } of trials) if (minutes <= lastMinute) letters[columnOf(minutes)] = '+';
      letters[columnOf(mark.minutes)] = '@';
    }
    return `  ${(names[index] ?? '').padStart(widest)} ${letters.join('')}`;
  });
  const { say } = speaker;
  const last = speaker.minutes(lastMinute);
  const rule = `  ${' '.repeat(widest)} ${'0'.padEnd(columns - last.length)}${last}`;
  const legend = [
    ...Object.entries(signs).map(([zone, sign]) => `${sign} ${say(zoneMessage(zone as DoughZone))}`),
    `| ${say(message('map.above', { limitCelsius }))}`,
    `@ ${say(message('map.this-formula'))}`,
    ...(trials.length > 0 ? [`+ ${say(message('map.readings'))}`] : []),
  ];
  return [...drawn, rule, '', ...legend.map((one) => `  ${one}`), ''];
}

const bands = ['developed', 'letDown', 'breakdown'] as const;

/** Every row of every map; minutes, °C and shares as bare figures. */
function csvRecords(maps: readonly MapView[], speaker: Speaker): string[][] {
  const heads = [
    'formula',
    'against',
    'value',
    'own',
    ...bands.flatMap((band) => ['low', 'expected', 'high'].map((end) => `${band} ${end} minutes`)),
    'gap minutes',
    'too warm minutes',
  ];
  const figure = (value: number | undefined, places: number): string =>
    value === undefined ? '' : speaker.number(value, places);
  const records = maps.flatMap(({ formula, data }) =>
    (data?.rows ?? []).map((row) => [
      formula,
      data?.against ?? '',
      figure(row.value, 4),
      row.isOwn ? 'yes' : '',
      ...bands.flatMap((band) =>
        (['low', 'expected', 'high'] as const).map((end) => figure(row[band]?.[end], 2)),
      ),
      figure(row.gapMinutes, 2),
      figure(row.tooWarmMinutes, 2),
    ]),
  );
  return [heads, ...records];
}

function jsonOf({ uri: file, formula, line, none, sentences, data }: MapView): object {
  return {
    version: 1,
    file,
    formula,
    line: line + 1,
    ...(none === undefined ? { sentences } : { none }),
    ...data,
  };
}
