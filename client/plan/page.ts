import { button, element } from '../preview/elements.ts';
import { tablesPageShown } from '../preview/tables-page.ts';
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
  if (data.type === 'plan') {
    const print = button(data.print, () => editor.postMessage({ type: 'print' }));
    return [...tablesPageShown(data.page), element('p', {}, print)];
  }
  return [
    element('h1', { text: data.what }),
    element('p', { class: 'hint-words', text: data.cure, attributes: { dir: 'auto' } }),
  ];
}
