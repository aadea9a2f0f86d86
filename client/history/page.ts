import type { HistoryPage, HistoryPageRow } from '../../server/protocol.ts';
import { hostOf } from '../beside/page-host.ts';
import { drawing } from '../preview/drawing.ts';
import { element } from '../preview/elements.ts';
import type { FromHistory, ToHistory } from './messages.ts';

const main = document.getElementById('sheet');
hostOf<ToHistory, FromHistory>({ type: 'ready' }, (data) => main?.replaceChildren(...shown(data)));

function shown(data: ToHistory): Node[] {
  switch (data.type) {
    case 'history':
      return history(data.page);
    case 'reading':
      return [element('p', { class: 'hint-words', text: data.what, attributes: { role: 'status' } })];
    case 'none':
      return [
        element('h1', { text: data.what }),
        element('p', { class: 'hint-words', text: data.cure, attributes: { dir: 'auto' } }),
      ];
  }
}

function history({ title, lead, heads, rows, charts, key }: HistoryPage): Node[] {
  return [
    element('h1', { text: title, attributes: { dir: 'auto' } }),
    ...lead.map((text) => element('p', { class: 'makes', text, attributes: { dir: 'auto' } })),
    ...charts.map(({ name, svg }, index) =>
      element(
        'section',
        { class: 'chart', attributes: { 'aria-labelledby': `chart-${index}` } },
        element('h2', { text: name, attributes: { id: `chart-${index}`, dir: 'auto' } }),
        element('div', { class: 'history-drawing' }, drawing(svg, String(index))),
      ),
    ),
    ...(charts.length === 0 ? [] : [element('p', { class: 'hint-words', text: key })]),
    element(
      'table',
      { class: 'history', attributes: { 'aria-label': title } },
      element(
        'thead',
        {},
        element('tr', {}, ...heads.map((text) => element('th', { text, attributes: { scope: 'col' } }))),
      ),
      element('tbody', {}, ...rows.map(row)),
    ),
  ];
}

function row({ date, commit = '', author, changes, words }: HistoryPageRow): HTMLElement {
  const cell = (text: string) => element('td', { text, attributes: { dir: 'auto' } });
  return element(
    'tr',
    {},
    element('th', { class: 'whole', text: date, attributes: { scope: 'row' } }),
    cell(commit),
    cell(author),
    element(
      'td',
      {},
      element('ul', {}, ...changes.map((text) => element('li', { text, attributes: { dir: 'auto' } }))),
    ),
    cell(words),
  );
}
