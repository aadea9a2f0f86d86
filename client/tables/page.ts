import { hostOf } from '../beside/page-host.ts';
import { button, element } from '../preview/elements.ts';
import { tablesPageShown } from '../preview/tables-page.ts';
import type { FromTables, ToTables } from './messages.ts';

const main = document.getElementById('sheet');
const host = hostOf<ToTables, FromTables>({ type: 'ready' }, (data) => {
  const top = document.documentElement.scrollTop;
  main?.replaceChildren(...shown(data));
  document.documentElement.scrollTop = top;
});

function shown(data: ToTables): (Node | string)[] {
  if (data.type === 'tables') {
    document.documentElement.lang = data.page.language;
    const print = button(data.print, () => host.post({ type: 'print' }));
    return [...tablesPageShown(data.page), element('p', {}, print)];
  }
  return [
    element('h1', { text: data.what }),
    element('p', { class: 'hint-words', text: data.cure, attributes: { dir: 'auto' } }),
  ];
}
