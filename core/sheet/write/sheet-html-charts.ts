import type { SheetChart } from '../build/chart.ts';
import type { Told } from '../build/sheet-words.ts';
import { element, type Markup, markup } from './markup.ts';
import { section } from './sheet-html-blocks.ts';
import { plainTable } from './sheet-html-outcome.ts';

/** A chart with its words. On a screen the table that says the same can be opened; on paper other tables have it. */
export function chartSection(chart: SheetChart, { word }: Told, id: string): Markup {
  return section(
    id,
    'chart',
    chart.title,
    [],
    markup(withOwnIds(chart.wide, id)),
    element('p', { class: 'small' }, chart.description),
    element(
      'details',
      { class: 'screen' },
      element('summary', {}, word('sheet.as-table')),
      plainTable(id, chart.table.heads, chart.table.rows),
    ),
  );
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
