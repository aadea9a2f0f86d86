import type { SheetView, SizeRequest } from '../../server/protocol.ts';
import { weighingBlocks } from './blocks.ts';
import { element, lineNumber } from './elements.ts';
import { factsBand, titleBand } from './heading.ts';
import { overLastGood } from './last-good.ts';
import { type FromPage, type PageState, sizeKey, type ToPage } from './messages.ts';
import { placeFindings } from './place-findings.ts';
import { createSizeControls } from './size-controls.ts';
import { workBands } from './work.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): PageState | undefined;
  setState(state: PageState): void;
};

const editor = acquireVsCodeApi();
const main = document.getElementById('sheet')!;
const banner = element('p', { class: 'held-by', attributes: { role: 'status' } });
const spoken = element('p', { class: 'spoken', attributes: { role: 'status' } });
const title = element('div');
const content = element('div');

let state: PageState = editor.getState() ?? { sizes: {} };
let shown: SheetView | undefined;
let shownSequence = 0;
let resizing = false;
const lastGood = new Map<string, SheetView>();

const controls = createSizeControls((size) => {
  if (!shown) return;
  resizing = true;
  const { uri, formula } = shown;
  keep({ ...state, sizes: keptSizes(state.sizes, sizeKey(uri, formula), size) });
  editor.postMessage({ type: 'size', uri, formula, size });
});

// The controls stay where they are when the rest is drawn anew: taken out for a moment, they would lose what is typed.
main.append(banner, title, controls.form, content, spoken);

window.addEventListener('message', (event: MessageEvent<ToPage>) => {
  const message = event.data;
  if (message.sequence < shownSequence) return;
  shownSequence = message.sequence;
  if (message.type === 'sheet') showSheet(message.sheet);
  else showNothing(nothingWords[message.why]);
});
editor.postMessage({ type: 'ready', state });

const nothingWords = {
  'no-formula': [
    'No formula at the cursor.',
    'Put the cursor into a formula of a .dough file; its batch sheet stands here.',
  ],
  'no-server': [
    'The language server is not running.',
    'The command “Doughwright: Restart Language Server” starts it again.',
  ],
} as const;

function showSheet(sheet: SheetView): void {
  const { uri, formula, line } = sheet;
  keep({ ...state, uri, formula, line });
  const key = sizeKey(uri, formula);
  const good = lastGood.get(key);
  if (sheet.state === 'ready') lastGood.set(key, sheet);
  const view = sheet.state === 'held' && good ? overLastGood(good, sheet) : sheet;
  shown = sheet;
  if (view === sheet) controls.update(sheet);
  tell(banner, heldWords(sheet, good !== undefined));
  main.className = sheet.state;

  const placed = placeFindings(view);
  const reveal = (wanted: number) =>
    editor.postMessage({ type: 'reveal', uri, line: wanted < 0 ? line : wanted });
  const rest =
    sheet.state === 'empty'
      ? element('p', {
          class: 'hint-words',
          text: 'No ingredients yet. One line makes a start: strong white 100%',
        })
      : element(
          'div',
          { class: 'bands' },
          weighingBlocks(view, placed, reveal),
          workBands(view, placed, reveal),
        );
  draw(titleBand(view, placed, reveal), factsBand(view, placed, reveal), rest);
  if (resizing && sheet.state === 'ready') tell(spoken, `${formula}: ${sheet.makes.join(', ')}`);
  resizing = false;
}

function showNothing([what, cure]: readonly [string, string]): void {
  shown = undefined;
  tell(banner, '');
  main.className = 'nothing';
  controls.hide();
  draw(element('h1', { text: what }), element('p', { class: 'hint-words', text: cure }));
}

function heldWords(sheet: SheetView, hasGood: boolean): string {
  if (sheet.state !== 'held') return '';
  const figures = hasGood
    ? ' The figures below are the last that were whole.'
    : ' What is known so far stands below.';
  if (!sheet.heldBy) return `Not everything is known yet.${figures}`;
  const message = sheet.heldBy.message.replace(/[.\s]*$/u, '.');
  return `Line ${lineNumber(sheet.heldBy.line)} holds this up: ${message}${figures}`;
}

/** Draws the sheet anew and gives back what a baker would miss: the focus, and what was unfolded. */
function draw(heading: Node, ...below: readonly (Node | undefined)[]): void {
  const focusedKey =
    document.activeElement instanceof HTMLElement ? document.activeElement.dataset.key : undefined;
  const unfolded = new Set(Array.from(content.querySelectorAll<HTMLElement>('details[open]'), keyOf));
  title.replaceChildren(heading);
  content.replaceChildren(...below.filter((part) => part !== undefined));
  for (const details of content.querySelectorAll('details')) details.open = unfolded.has(keyOf(details));
  if (focusedKey === undefined) return;
  main.querySelector<HTMLElement>(`[data-key="${CSS.escape(focusedKey)}"]`)?.focus({ preventScroll: true });
}

function keyOf(part: HTMLElement): string | undefined {
  return part.dataset.key;
}

/** Says a text to a screen reader once: the same text again is no news. */
function tell(region: HTMLElement, text: string): void {
  if (region.textContent !== text) region.textContent = text;
}

function keep(next: PageState): void {
  state = next;
  editor.setState(next);
}

/** The newest sizes win; a hundred formulas are more than a bakery has open. */
function keptSizes(sizes: PageState['sizes'], key: string, size: SizeRequest): PageState['sizes'] {
  const others = Object.entries(sizes).filter(([other]) => other !== key);
  const kept = size.by === 'file' ? others : [...others, [key, size] as const];
  return Object.fromEntries(kept.slice(-100));
}
