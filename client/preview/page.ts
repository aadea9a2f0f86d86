import { html, nothing, render } from 'lit-html';
import type { SheetOptions, ShownSheet } from '../../server/protocol.ts';
import { type ControlActions, type Controls, createControls } from './controls.ts';
import { element } from './elements.ts';
import { filled } from './filled.ts';
import { type Around, findingsList, named, type Shown } from './found.ts';
import { lastFigures } from './last-figures.ts';
import {
  type FromPage,
  formulaKey,
  noWork,
  type PageState,
  type ToPage,
  type WorkState,
} from './messages.ts';
import { answerTiles, factsList, sheetBands } from './sections.ts';
import { followKeys } from './work-keys.ts';
import { createWorking } from './working.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): PageState | undefined;
  setState(state: PageState): void;
};

/** So long the editor and the server may take over an edit, on a slow machine. */
const editMilliseconds = 3000;

const editor = acquireVsCodeApi();
const main = document.getElementById('sheet')!;
const banner = element('p', { class: 'held-by', attributes: { role: 'status' } });
const spoken = element('p', { class: 'spoken', attributes: { role: 'status' } });
const said = element('p', { class: 'edit-said', attributes: { role: 'status' } });
const title = element('div');
const content = element('div');

let state: PageState = editor.getState() ?? {};
let shown: ShownSheet | undefined;
/** What the page draws: the sheet, or what was whole of it before it was held up. */
let drawn: ShownSheet | undefined;
let work: WorkState = noWork;
let shownSequence = 0;
let trying = false;
/** Until when the sheets that an edit brings with it come in, one a file: any later one makes what was said of it old. */
let saidUntil = 0;
const lastGood = new Map<string, ShownSheet>();

const about = () => ({ uri: shown?.uri ?? '', formula: shown?.formula ?? '' });
const setMode = (mode: PageState['mode']) => {
  keep({ ...state, mode: mode ?? 'sheet' });
  drawMode();
};
const aroundOf = ({ labels, scaleReading }: ShownSheet): Around => ({
  labels,
  scaleReading: {
    isShown: scaleReading,
    set: (shownFromNow) => editor.postMessage({ type: 'scaleReading', shown: shownFromNow }),
  },
  show(line) {
    if (shown) editor.postMessage({ type: 'reveal', uri: shown.uri, line });
  },
  teach: (line) => editor.postMessage({ type: 'teach', ...about(), line }),
});

const controlActions: ControlActions = {
  ask(asked) {
    if (!shown) return;
    trying = true;
    editor.postMessage({ type: 'try', ...about(), asked });
  },
  keep: () => editor.postMessage({ type: 'keep', ...about() }),
  work: () => setMode('working'),
  pin: (pinned) => editor.postMessage({ type: 'pin', pinned }),
};
/** Made with the first sheet, whose words they take; anew only where those are of another language. */
let controls: Controls | undefined;
let controlWords = '';
const working = createWorking({
  keep(next) {
    work = next;
    editor.postMessage({ type: 'work', ...about(), work: next });
  },
  leave: () => setMode('sheet'),
  log: (reading) => editor.postMessage({ type: 'reading', ...about(), reading }),
  around: aroundOf,
});
followKeys(working.root, working.step, () => state.mode === 'working');
setInterval(working.tick, 500);

// The controls stay where they are when the rest is drawn anew: taken out for a moment, they would lose what is typed.
const place = element('div');
main.append(banner, said, title, place, content, working.root, spoken);

window.addEventListener('message', (event: MessageEvent<ToPage>) => {
  const message = event.data;
  switch (message.type) {
    case 'sheet':
    case 'nothing':
      if (message.sequence < shownSequence) return;
      shownSequence = message.sequence;
      if (message.type === 'sheet') return showSheet(message.sheet, message.asked, message.work);
      return showNothing(message.what, message.cure);
    case 'pinned':
      controls?.setPinned(message.pinned);
      return keep({ ...state, pinned: message.pinned });
    case 'mode':
      return setMode(message.mode);
    case 'cursor':
      return markLine(message.uri, message.line);
    case 'said':
      said.textContent = message.text;
      saidUntil = performance.now() + editMilliseconds;
      return;
  }
});
editor.postMessage({ type: 'ready', state });

function showSheet(sheet: ShownSheet, asked: SheetOptions, kept: WorkState): void {
  const { uri, formula, line } = sheet;
  if (performance.now() > saidUntil || shown?.formula !== formula || shown.uri !== uri) said.textContent = '';
  keep({ ...state, uri, formula, line });
  work = kept;
  const key = formulaKey(uri, formula);
  const good = lastGood.get(key);
  if (sheet.state === 'ready') lastGood.set(key, sheet);
  const view = sheet.state === 'held' && good ? lastFigures(good, sheet) : sheet;
  shown = sheet;
  const offered = controlsIn(sheet);
  if (sheet.state === 'empty') offered.hide();
  else if (view === sheet) offered.update(sheet, asked);
  tell(banner, heldWords(sheet, good !== undefined));
  main.className = sheet.state;
  const around = aroundOf(view);
  render(html`${headingOf(view, around)}${answersOf(view, around)}`, title);
  render(
    sheet.state === 'empty'
      ? html`<p class="hint-words">${sheet.labels.noIngredients}</p>`
      : html`${factsOf(view, around)}${sheetBands(view, around)}`,
    content,
  );
  drawn = view;
  drawMode();
  // What was said of an earlier sheet is not so of this one.
  tell(spoken, trying && sheet.state === 'ready' ? `${formula}: ${sheet.makes.join(', ')}` : '');
  trying = false;
}

/** The formula's name, what it makes, and what was found that stands at nothing else on the sheet. */
function headingOf({ formula, line, makes, tried, findings, labels }: ShownSheet, around: Around): Shown {
  return html`<header class="title">
    <h1>${named(formula, line, around)}</h1>
    ${
      makes.length === 0 && !tried
        ? nothing
        : html`<p class="makes">
            ${makes.map((text) => html`<span dir="auto">${text}</span>`)}${
              tried ? html`<strong class="tried">${labels.tried}</strong>` : nothing
            }
          </p>`
    }
    ${findingsList(findings, around, true)}
  </header>`;
}

/** The three answers, right below the heading and above whatever is tried. */
function answersOf({ sections }: ShownSheet, around: Around): Shown {
  const glance = sections.find(({ name }) => name === 'glance');
  return glance?.kind === 'facts' ? answerTiles(glance, around) : nothing;
}

function factsOf({ sections }: ShownSheet, around: Around): Shown {
  const facts = sections.find(({ name }) => name === 'facts');
  return facts?.kind === 'facts' ? factsList(facts, around) : nothing;
}

/** Which line holds a sheet up, and which figures stand below; empty for a sheet that is whole. */
function heldWords({ state, heldBy, labels }: ShownSheet, hasGood: boolean): string {
  if (state !== 'held') return '';
  const held = heldBy
    ? filled(labels.heldBy, String(heldBy.line + 1), heldBy.message.replace(/(?<![?!.\s])[.\s]*$/u, '.'))
    : labels.held;
  return `${held} ${hasGood ? labels.lastFigures : labels.knownSoFar}`;
}

/** The controls in the words of this sheet. */
function controlsIn({ labels }: ShownSheet): Controls {
  const words = JSON.stringify(labels);
  if (controls && words === controlWords) return controls;
  controlWords = words;
  document.documentElement.lang = labels.language;
  controls = createControls(labels, controlActions);
  controls.setPinned(state.pinned === true);
  controls.form.classList.toggle('away', state.mode === 'working');
  place.replaceChildren(controls.form);
  return controls;
}

function showNothing(what: string, cure: string): void {
  shown = undefined;
  drawn = undefined;
  tell(banner, '');
  main.className = 'nothing';
  controls?.hide();
  render(html`<h1>${what}</h1>`, title);
  render(html`<p class="hint-words">${cure}</p>`, content);
  tell(spoken, '');
  drawMode();
}

/** The whole sheet, or one moment of it; a formula that has nothing to do yet is shown as a sheet. */
function drawMode(): void {
  const one = state.mode === 'working' && drawn !== undefined && drawn.state !== 'empty';
  const wasHidden = working.root.hidden;
  working.root.hidden = !one;
  if (one && drawn) working.show(drawn, work);
  else working.clear();
  title.hidden = one;
  content.hidden = one;
  controls?.form.classList.toggle('away', one);
  if (one && wasHidden) working.root.querySelector<HTMLElement>('h1')?.focus();
}

/** Shows where the cursor's line stands on the sheet, and brings it into view without moving what is read there. */
function markLine(uri: string, line: number): void {
  for (const marked of main.querySelectorAll('[aria-current]')) marked.removeAttribute('aria-current');
  if (!shown || shown.uri !== uri) return;
  const found = content.querySelector<HTMLElement>(`[data-line="${line}"]`);
  if (!found) return;
  found.setAttribute('aria-current', 'location');
  if (!main.contains(document.activeElement) || document.activeElement === document.body)
    found.scrollIntoView({ block: 'nearest' });
}

/** Says a text to a screen reader once: the same text again is no news. */
function tell(region: HTMLElement, text: string): void {
  if (region.textContent !== text) region.textContent = text;
}

function keep(next: PageState): void {
  state = next;
  editor.setState(next);
}
