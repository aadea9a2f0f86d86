import type { PlanPage, PlanPageTable } from '../../server/protocol.ts';
import { drawing } from '../preview/drawing.ts';
import { button, element } from '../preview/elements.ts';
import type { FromPlan, ToPlan } from './messages.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromPlan): void };

const editor = acquireVsCodeApi();
const main = document.getElementById('sheet');

window.addEventListener('message', ({ data }: MessageEvent<ToPlan>) => {
  const top = document.documentElement.scrollTop;
  main?.replaceChildren(...shown(data));
  document.documentElement.scrollTop = top;
});
editor.postMessage({ type: 'ready' });

function shown(data: ToPlan): (Node | string)[] {
  if (data.type === 'plan') return planShown(data.page, data.print);
  return [
    element('h1', { text: data.what }),
    element('p', { class: 'hint-words', text: data.cure, attributes: { dir: 'auto' } }),
  ];
}

function planShown({ title, facts, drawing: drawn, tables, notes }: PlanPage, print: string): Node[] {
  return [
    element('h1', { text: title, attributes: { dir: 'auto' } }),
    element(
      'dl',
      { class: 'plan-facts' },
      ...facts.flatMap(([label, value]) => [
        element('dt', { text: label }),
        element('dd', { text: value, attributes: { dir: 'auto' } }),
      ]),
    ),
    ...notes.map((text) => element('p', { class: 'plan-note', text, attributes: { dir: 'auto' } })),
    ...(drawn === undefined
      ? []
      : [
          element(
            'div',
            { class: 'chart' },
            element('div', { class: 'narrow' }, drawing(drawn.narrow, 'n')),
            element('div', { class: 'wide' }, drawing(drawn.wide, 'w')),
          ),
        ]),
    ...tables.filter(({ rows }) => rows.length > 0).map(tableShown),
    element(
      'p',
      {},
      button(print, () => editor.postMessage({ type: 'print' })),
    ),
  ];
}

function tableShown({ title, columns, rows }: PlanPageTable, index: number): HTMLElement {
  const side = (column: number) => (columns[column]?.figures ? { class: 'figures' } : {});
  return element(
    'section',
    { attributes: { 'aria-labelledby': `table-${index}` } },
    element('h2', { text: title, attributes: { id: `table-${index}` } }),
    element(
      'table',
      { class: 'history' },
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          ...columns.map(({ name }, column) =>
            element('th', { ...side(column), text: name, attributes: { scope: 'col' } }),
          ),
        ),
      ),
      element(
        'tbody',
        {},
        ...rows.map((row) =>
          element(
            'tr',
            {},
            ...row.map((text, column) =>
              element('td', { ...side(column), text, attributes: { dir: 'auto' } }),
            ),
          ),
        ),
      ),
    ),
  );
}
