import { mixingWords, phaseWords, type Told, type WordCode } from '../build/sheet-words.ts';
import { type Child, element, type Markup } from './markup.ts';
import { aboutRow, findingsList, section, ticks } from './sheet-html-blocks.ts';

/** The mixing, line by line, and how it is expected to end. */
export function mixingSection(told: Told, id: string): Child {
  const { speaker } = told;
  const { mixing, batches } = told.view;
  if (mixing === undefined) return undefined;
  const rows = mixing.phases.flatMap((phase, p) => [
    element(
      'tr',
      {},
      ticks(batches.count),
      element('th', { scope: 'row', class: 'does', dir: 'auto' }, phaseWords(phase, speaker)),
      figures(told.lasts(phase.minutes * 60)),
      figures(told.lasts(phase.endMinute * 60)),
      figures(phase.celsius ?? ''),
      element('td', { class: 'stage' }, phase.stage ?? ''),
    ),
    aboutRow(6, told.findings(`phase ${p}`)),
  ]);
  return section(
    id,
    'mixing',
    told.word('sheet.mixing'),
    [mixingWords(mixing, speaker)],
    findingsList(told.findings('mixing')),
    table(
      id,
      told,
      ['sheet.tick', 'sheet.work', 'sheet.lasts', 'sheet.until', 'sheet.dough', 'sheet.stage'],
      [2, 3, 4],
      rows,
    ),
    mixing.outlook.length === 0
      ? undefined
      : element('ul', { class: 'outlook' }, ...mixing.outlook.map((one) => element('li', {}, one))),
  );
}

/** Every moment of the work with its time. */
export function clockSection(told: Told, id: string): Child {
  const { moments } = told;
  if (moments.length === 0) return undefined;
  const rows = moments.flatMap((moment, m) => [
    element(
      'tr',
      { class: moment.kind },
      ticks(moment.kind === 'ready' ? 0 : 1),
      element('td', { class: 'clock' }, told.when(moment)),
      element('th', { scope: 'row', class: 'does', dir: 'auto' }, moment.text),
      figures(told.lasts(moment.seconds)),
    ),
    aboutRow(4, told.findings(`moment ${m}`)),
  ]);
  return section(
    id,
    'times',
    told.word('sheet.clock'),
    [],
    table(id, told, ['sheet.tick', 'sheet.at', 'sheet.work', 'sheet.lasts'], [3], rows),
    ...told.view.timeline.notes.map((note) => element('p', { class: 'note', dir: 'auto' }, note)),
  );
}

function figures(text: string): Markup {
  return element('td', { class: 'figures' }, text);
}

function table(
  id: string,
  { word }: Told,
  heads: readonly WordCode[],
  right: readonly number[],
  rows: readonly Child[],
): Markup {
  const head = heads.map((code, index) =>
    element('th', { scope: 'col', class: right.includes(index) ? 'figures' : undefined }, word(code)),
  );
  return element(
    'table',
    { class: 'work', 'aria-labelledby': id },
    element('thead', {}, element('tr', {}, ...head)),
    element('tbody', {}, ...rows),
  );
}
