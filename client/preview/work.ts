import type { SheetMixing, ShownSheet } from '../../server/protocol.ts';
import { chartSection } from './charts.ts';
import { element, lineButton, type Reveal } from './elements.ts';
import { filled } from './filled.ts';
import { findingsAt } from './findings.ts';
import { mixerWords } from './mixer-words.ts';
import { minutesText } from './numbers.ts';
import type { PlacedFindings } from './place-findings.ts';
import { trialsSection } from './trials.ts';
import { plainDisplay, unitsOf } from './units.ts';

/** What is done with the dough: the mixing in words, and the clock of the steps after it. */
export function workBands(view: ShownSheet, placed: PlacedFindings, reveal: Reveal): HTMLElement | undefined {
  const bands = [
    view.mixing ? mixingBand(view.mixing, view, placed, reveal) : trialsSection(view, placed, reveal),
    view.steps.length > 0 ? stepsBand(view, placed, reveal) : undefined,
    chartSection(view, 'timeline'),
  ].filter((band) => band !== undefined);
  return bands.length > 0 ? element('div', { class: 'working' }, ...bands) : undefined;
}

function mixingBand(
  mixing: SheetMixing,
  view: ShownSheet,
  placed: PlacedFindings,
  reveal: Reveal,
): HTMLElement {
  const { labels } = view;
  const units = unitsOf(view.shownIn ?? plainDisplay);
  const phases = mixing.phases.map((phase, p) =>
    element(
      'li',
      {},
      element(
        'div',
        { class: 'phase' },
        lineButton(phase.label, phase.line, `phase ${p}`, reveal),
        element('span', { class: 'lasts', text: minutesText(phase.minutes, units) }),
        element('span', { class: 'ends', text: filled(labels.endsAt, minutesText(phase.endMinute, units)) }),
        element('span', { class: 'celsius', text: phase.celsius ?? '' }),
        element('span', { class: 'stage', text: phase.stage ?? '' }),
      ),
      findingsAt(placed, `phase ${p}`, labels, reveal),
    ),
  );
  return element(
    'section',
    { class: 'mixing', attributes: { 'aria-labelledby': 'mixing' } },
    element(
      'header',
      {},
      element(
        'h2',
        { attributes: { id: 'mixing' } },
        lineButton(labels.mixing, mixing.line, 'mixing', reveal),
      ),
      element('p', {
        class: 'when',
        text: `${mixerWords(mixing.mixer, labels)} · ${mixing.total}`,
        attributes: { dir: 'auto' },
      }),
    ),
    findingsAt(placed, 'mixing', labels, reveal),
    phases.length > 0 ? element('ol', { class: 'phases' }, ...phases) : undefined,
    ...mixing.outlook.map((text) => element('p', { class: 'outlook', text, attributes: { dir: 'auto' } })),
    chartSection(view, 'mixing', 'h3'),
    trialsSection(view, placed, reveal),
  );
}

function stepsBand(view: ShownSheet, placed: PlacedFindings, reveal: Reveal): HTMLElement {
  const { labels } = view;
  const steps = view.steps.map((step, s) =>
    element(
      'li',
      {},
      step.clock ? element('span', { class: 'clock', text: step.clock.words }) : undefined,
      lineButton(step.text, step.line, `step ${s}`, reveal),
      foldTimes(view, step.line),
      findingsAt(placed, `step ${s}`, labels, reveal),
    ),
  );
  return element(
    'section',
    { class: 'steps', attributes: { 'aria-labelledby': 'steps' } },
    element('h2', { text: labels.afterMixing, attributes: { id: 'steps' } }),
    element('ol', {}, ...steps),
    view.timeline.readyClock
      ? element('p', { class: 'ready', text: filled(labels.ready, view.timeline.readyClock.words) })
      : undefined,
    ...view.timeline.notes.map((text) => element('p', { class: 'note', text, attributes: { dir: 'auto' } })),
  );
}

/** When the folds of a step are, by the clock. */
function foldTimes({ timeline, labels }: ShownSheet, line: number): HTMLElement | undefined {
  const times = timeline.moments.flatMap((one) =>
    one.kind === 'fold' && one.line === line && one.clock ? [one.clock.words] : [],
  );
  const text = filled(labels.folds, times.join(', '));
  return times.length > 0 ? element('p', { class: 'folds', text }) : undefined;
}
