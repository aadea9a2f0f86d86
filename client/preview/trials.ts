import type { SheetLabels, SheetReading, SheetTrial, SheetView } from '../../server/protocol.ts';
import { element, lineButton, type Reveal } from './elements.ts';
import { findingsAt } from './findings.ts';
import type { PlacedFindings } from './place-findings.ts';

/** What trials of the formula measured, beside what is computed for the same minute. */
export function trialsSection(
  { trials, labels }: SheetView,
  placed: PlacedFindings,
  reveal: Reveal,
): HTMLElement | undefined {
  if (trials.length === 0) return undefined;
  return element(
    'section',
    { class: 'trials', attributes: { 'aria-labelledby': 'trials' } },
    element('h3', { text: labels.trials, attributes: { id: 'trials' } }),
    ...trials.map((trial, t) => trialPart(trial, t, placed, labels, reveal)),
  );
}

function trialPart(
  trial: SheetTrial,
  t: number,
  placed: PlacedFindings,
  labels: SheetLabels,
  reveal: Reveal,
): HTMLElement {
  const heading = `trial-${t}`;
  const heads = [labels.at, labels.measured, labels.computed, labels.offBy].map((text) =>
    element('th', { text, attributes: { scope: 'col' } }),
  );
  return element(
    'div',
    { class: 'trial' },
    element(
      'h4',
      { attributes: { id: heading } },
      lineButton(trial.title || labels.trial, trial.line, `trial ${t}`, reveal),
    ),
    findingsAt(placed, `trial ${t}`, labels, reveal),
    trial.readings.length > 0
      ? element(
          'table',
          { class: 'plain', attributes: { 'aria-labelledby': heading } },
          element('thead', {}, element('tr', {}, ...heads)),
          element('tbody', {}, ...trial.readings.map(readingRow)),
        )
      : undefined,
    ...trial.notes.map((text) => element('p', { class: 'note', text, attributes: { dir: 'auto' } })),
  );
}

function readingRow(reading: SheetReading): HTMLElement {
  return element(
    'tr',
    {},
    element('th', { text: reading.when, attributes: { scope: 'row' } }),
    stateCell(reading.measured, reading.stage, 'measured'),
    stateCell(reading.workedOut, reading.stageWorkedOut),
    element('td', { text: reading.difference ?? '' }),
  );
}

function stateCell(celsius: string | undefined, stage: string | undefined, name?: string): HTMLElement {
  const said = [celsius, stage].filter((part) => part !== undefined);
  return element('td', { class: name, text: said.join(' ') });
}
