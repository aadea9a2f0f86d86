import type { ExperimentBench, ExperimentPageOptions } from '../../server/protocol.ts';
import { hostOf } from '../beside/page-host.ts';
import { button, element } from '../preview/elements.ts';
import { tablesPageShown } from '../preview/tables-page.ts';
import { followKeys } from '../preview/work-keys.ts';
import { createBench } from './bench.ts';
import type { ExperimentMode, FromExperiment, ToExperiment } from './messages.ts';

const main = document.getElementById('sheet')!;
const said = element('p', { class: 'edit-said', attributes: { role: 'status' } });
const controls = element('div', { class: 'experiment-controls' });
const content = element('div');
let mode: ExperimentMode = 'sheet';
let shown: Extract<ToExperiment, { type: 'experiment' }> | undefined;
/** What the controls say: drawn anew only where that is another, so that a key that was pressed keeps the focus. */
let controlWords = '';

const bench = createBench({
  keep: (run) => host.post({ type: 'run', ...about(), run }),
  leave: () => setMode('sheet'),
  log: (dough, reading) => host.post({ type: 'reading', ...about(), dough, reading }),
});
followKeys(bench.root, bench.step, () => mode === 'bench');
setInterval(bench.tick, 500);
main.append(said, controls, content, bench.root);

const host = hostOf<ToExperiment, FromExperiment>({ type: 'ready' }, (data) => {
  switch (data.type) {
    case 'experiment':
      shown = data;
      return draw();
    case 'none':
      shown = undefined;
      draw();
      return content.replaceChildren(
        element('h1', { text: data.what }),
        element('p', { class: 'hint-words', text: data.cure, attributes: { dir: 'auto' } }),
      );
    case 'mode':
      mode = data.mode;
      return drawMode(true);
    case 'said':
      said.textContent = data.text;
      return;
  }
});

function about(): { readonly uri: string; readonly experiment: string } {
  return { uri: shown?.bench.uri ?? '', experiment: shown?.bench.experiment ?? '' };
}

function setMode(next: ExperimentMode): void {
  mode = next;
  host.post({ type: 'mode', mode });
  drawMode(true);
}

function draw(): void {
  const top = document.documentElement.scrollTop;
  if (shown !== undefined) {
    document.documentElement.lang = shown.page.language;
    content.replaceChildren(...tablesPageShown(shown.page));
    drawControls(shown);
  }
  drawMode(false);
  document.documentElement.scrollTop = top;
}

function drawControls({ bench: { labels }, sheet, print }: NonNullable<typeof shown>): void {
  const words = JSON.stringify([labels, sheet, print]);
  if (words === controlWords) return;
  controlWords = words;
  const focused = document.activeElement?.id;
  const run = button(labels.run, () => setMode('bench'), {
    class: 'main',
    attributes: { title: labels.runHint, id: 'run' },
  });
  const toggle = (key: keyof ExperimentPageOptions, text: string) =>
    button(text, () => host.post({ type: 'sheet', sheet: { ...sheet, [key]: sheet[key] !== true } }), {
      attributes: { 'aria-pressed': String(sheet[key] === true), id: key },
    });
  controls.replaceChildren(
    run,
    toggle('blanks', labels.blanks),
    toggle('hidden', labels.hidden),
    button(print, () => host.post({ type: 'print' }), { attributes: { id: 'print' } }),
  );
  if (focused) document.getElementById(focused)?.focus();
}

/** The sheet, or the bench; the focus goes along where a person asked for the other. */
function drawMode(isAsked: boolean): void {
  const isBench = mode === 'bench' && shown !== undefined;
  bench.root.hidden = !isBench;
  content.hidden = isBench;
  controls.hidden = isBench || shown === undefined;
  if (isBench && shown) bench.show(benchOf(shown), shown.shownIn, shown.run);
  else bench.clear();
  if (!isAsked) return;
  said.textContent = '';
  if (isBench) bench.root.querySelector<HTMLElement>('h1')?.focus();
  else document.getElementById('run')?.focus();
}

/** A class sees no predictions at the bench either. */
function benchOf({ bench: whole, sheet }: NonNullable<typeof shown>): ExperimentBench {
  if (sheet.hidden !== true) return whole;
  const doughs = whole.doughs.map((dough) => ({
    ...dough,
    readings: dough.readings.map(({ minutes }) => ({ minutes, expected: '' })),
  }));
  return { ...whole, doughs };
}
