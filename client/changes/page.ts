import type { Change, ChangeGroup, Comparison, FormulaComparison } from '../../server/protocol.ts';
import { element, lineButton } from '../preview/elements.ts';
import type { FromChanges, ToChanges } from './messages.ts';

declare function acquireVsCodeApi(): { postMessage(message: FromChanges): void };

const editor = acquireVsCodeApi();
const main = document.getElementById('sheet')!;
const reveal = {
  show: (line: number) => editor.postMessage({ type: 'reveal', line }),
  hint: 'Show this line in the editor',
};

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

function changes({ file, since, comparison }: ToChanges & { type: 'changes' }): HTMLElement[] {
  const definitions = comparison.definitions.map((one, index) =>
    section(
      `${one.kind} ${one.name}`,
      fateWords(one.fate, one.kind),
      [{ subject: 'wording', title: '', changes: one.changes }],
      `definition ${index}`,
      one.after?.line,
    ),
  );
  return [
    element('h1', { text: 'What changed' }),
    element('p', { class: 'makes', text: `${file}, since ${since}`, attributes: { dir: 'auto' } }),
    element('p', { class: 'hint-words', text: verdictWords(comparison), attributes: { role: 'status' } }),
    ...comparison.formulas.map((one, index) =>
      section(one.formula, formulaWords(one), one.groups, `formula ${index}`, one.after?.line),
    ),
    ...definitions,
  ];
}

function verdictWords({ verdict }: Comparison): string {
  if (verdict === 'same') return 'Nothing: every line is as it was.';
  if (verdict === 'layout') return 'Nothing a baker weighs: only blanks, comments or the order of sections.';
  return verdict === 'wording' ? 'Other words for the same figures.' : 'What a baker weighs or does.';
}

function formulaWords({ fate, renamedFrom }: FormulaComparison): string {
  return renamedFrom === undefined ? fateWords(fate, 'formula') : `was called ${renamedFrom}`;
}

function fateWords(fate: FormulaComparison['fate'], kind: string): string {
  return fate === 'kept' ? '' : fate === 'added' ? `new ${kind}` : `${kind} taken out`;
}

function section(
  title: string,
  said: string,
  groups: readonly ChangeGroup[],
  key: string,
  line: number | undefined,
): HTMLElement {
  return element(
    'section',
    { class: 'block', attributes: { 'aria-labelledby': key.replace(' ', '-') } },
    element(
      'header',
      {},
      element(
        'h2',
        { attributes: { id: key.replace(' ', '-'), dir: 'auto' } },
        line === undefined ? document.createTextNode(title) : lineButton(title, line, key, reveal),
      ),
      said ? element('p', { class: 'when', text: said, attributes: { dir: 'auto' } }) : undefined,
    ),
    ...groups.map((group, index) => changeTable(group, `${key} ${index}`, title)),
  );
}

function changeTable(group: ChangeGroup, key: string, of: string): HTMLElement | undefined {
  if (group.changes.length === 0) return undefined;
  const heads = [group.title || 'What', 'Before', 'Now', 'By'];
  return element(
    'table',
    { class: 'changes', attributes: { 'aria-label': [of, group.title].filter(Boolean).join(': ') } },
    element(
      'thead',
      {},
      element('tr', {}, ...heads.map((text) => element('th', { text, attributes: { scope: 'col' } }))),
    ),
    element('tbody', {}, ...group.changes.map((change, index) => changeRow(change, `${key} ${index}`))),
  );
}

function changeRow({ name, before, after, by }: Change, key: string): HTMLElement {
  const line = after?.line;
  const told = (value: Change['before'], absent: string) =>
    element(
      'td',
      { class: value ? '' : 'absent' },
      element('span', { text: value?.text ?? absent, attributes: { dir: 'auto' } }),
      value?.beside ? element('span', { class: 'note', text: ` ${value.beside}` }) : undefined,
    );
  return element(
    'tr',
    {},
    element(
      'th',
      { attributes: { scope: 'row', dir: 'auto' } },
      line === undefined ? document.createTextNode(name) : lineButton(name, line, key, reveal),
    ),
    told(before, 'not there'),
    told(after, 'gone'),
    element('td', { text: by ?? '' }),
  );
}
