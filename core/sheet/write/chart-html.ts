import { message } from '../../words/message.ts';
import type { Speaker } from '../../words/speaker.ts';
import type { ChartSection } from '../build/sheet-document.ts';
import { type Child, element, type Markup, markup } from './markup.ts';

/** A chart with its words. On a screen the table that says the same can be opened; on paper other tables have it. */
export function chartParts(
  { wide, description, table }: ChartSection,
  id: string,
  { say }: Speaker,
): Child[] {
  return [
    markup(withOwnIds(wide, id)),
    element('p', { class: 'small told' }, description),
    element(
      'details',
      { class: 'screen' },
      element('summary', {}, say(message('sheet.as-table'))),
      plainTable(id, table),
    ),
  ];
}

/** A drawing whose inner names end in one of their own, for a page of several must not hold one name twice. */
function withOwnIds(svg: string, ending: string): string {
  return svg
    .replace(/\bid="([^"]*)"/g, `id="$1-${ending}"`)
    .replace(/url\(#([^)]*)\)/g, `url(#$1-${ending})`)
    .replace(
      /\b(aria-(?:labelled|described)by)="([^"]*)"/g,
      (_, name: string, ids: string) =>
        `${name}="${ids
          .split(' ')
          .map((one) => `${one}-${ending}`)
          .join(' ')}"`,
    );
}

/** A small table whose columns after the first are figures. */
function plainTable(id: string, { heads, rows }: ChartSection['table']): Markup {
  const side = (index: number) => ({ class: index === 0 ? undefined : 'figures' });
  const head = heads.map((text, index) => element('th', { scope: 'col', ...side(index) }, text));
  const lines = rows.map(([name = '', ...cells]) =>
    element(
      'tr',
      {},
      element('th', { scope: 'row', dir: 'auto' }, name),
      ...cells.map((text) => element('td', { class: 'figures' }, text)),
    ),
  );
  return element(
    'table',
    { class: 'plain', 'aria-labelledby': id },
    element('thead', {}, element('tr', {}, ...head)),
    element('tbody', {}, ...lines),
  );
}
