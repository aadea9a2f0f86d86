import type { Change, ChangeGroup, ComparedBlock, ComparisonPage } from '../../server/protocol.ts';
import { element, lineButton } from '../preview/elements.ts';
import type { FromChanges, ToChanges } from './messages.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromChanges): void };

const editor = acquireVsCodeApi();
const main = document.getElementById('sheet')!;
const show = (line: number) => editor.postMessage({ type: 'reveal', line });

window.addEventListener('message', ({ data }: MessageEvent<ToChanges>) => {
  const focused =
    document.activeElement instanceof HTMLElement ? document.activeElement.dataset.key : undefined;
  main.replaceChildren(...(data.type === 'none' ? nothing(data.what, data.cure) : changes(data)));
  if (focused !== undefined)
    main.querySelector<HTMLElement>(`[data-key="${CSS.escape(focused)}"]`)?.focus({ preventScroll: true });
});
editor.postMessage({ type: 'ready' });

function nothing(what: string, cure: string): HTMLElement[] {
  return [element('h1', { text: what }), element('p', { class: 'hint-words', text: cure })];
}

function changes({ about, page, showLine }: ToChanges & { type: 'changes' }): HTMLElement[] {
  const sections = (blocks: readonly ComparedBlock[], kind: string) =>
    blocks.map((one, index) => section(one, page, showLine, `${kind} ${index}`));
  return [
    element('h1', { text: page.title }),
    element('p', { class: 'makes', text: about, attributes: { dir: 'auto' } }),
    element('p', { class: 'hint-words', text: page.verdict, attributes: { role: 'status' } }),
    ...sections(page.formulas, 'formula'),
    ...sections(page.definitions, 'definition'),
  ];
}

function section(
  { name, remarks, line, groups }: ComparedBlock,
  page: ComparisonPage,
  showLine: string,
  key: string,
): HTMLElement {
  const said = remarks.map(({ text }) => text).join(', ');
  return element(
    'section',
    { class: 'block', attributes: { 'aria-labelledby': key.replace(' ', '-') } },
    element(
      'header',
      {},
      element(
        'h2',
        { attributes: { id: key.replace(' ', '-'), dir: 'auto' } },
        nameOf(name, line, key, showLine),
      ),
      said ? element('p', { class: 'when', text: said, attributes: { dir: 'auto' } }) : undefined,
    ),
    ...groups.map((group, index) => changeTable(group, page, showLine, `${key} ${index}`, name)),
  );
}

function changeTable(
  { title, changes: rows }: ChangeGroup,
  page: ComparisonPage,
  showLine: string,
  key: string,
  of: string,
): HTMLElement | undefined {
  if (rows.length === 0) return undefined;
  const { before, after, by } = page.heads;
  const heads = [title, before, after, by];
  return element(
    'table',
    { class: 'changes', attributes: { 'aria-label': `${of}: ${title}` } },
    element(
      'thead',
      {},
      element('tr', {}, ...heads.map((text) => element('th', { text, attributes: { scope: 'col' } }))),
    ),
    element(
      'tbody',
      {},
      ...rows.map((change, index) => changeRow(change, page, showLine, `${key} ${index}`)),
    ),
  );
}

function changeRow(
  { name, before, after, by }: Change,
  { absent }: ComparisonPage,
  showLine: string,
  key: string,
): HTMLElement {
  const told = (value: Change['before'], instead: string) =>
    element(
      'td',
      { class: value ? '' : 'absent' },
      element('span', { text: value?.text ?? instead, attributes: { dir: 'auto' } }),
      value?.beside ? element('span', { class: 'note', text: ` ${value.beside}` }) : undefined,
    );
  return element(
    'tr',
    {},
    element('th', { attributes: { scope: 'row', dir: 'auto' } }, nameOf(name, after?.line, key, showLine)),
    told(before, absent.before),
    told(after, absent.after),
    element('td', { text: by ?? '' }),
  );
}

/** A name; where it has a line now, one that shows it. */
function nameOf(name: string, line: number | undefined, key: string, showLine: string): Node {
  if (line === undefined) return document.createTextNode(name);
  return lineButton(name, line, key, { show, hint: showLine });
}
