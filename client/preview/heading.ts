import type { SheetFact, SheetLabels, SheetView } from '../../server/protocol.ts';
import { element, lineButton, type Reveal } from './elements.ts';
import { findingsAt } from './findings.ts';
import type { PlacedFindings } from './place-findings.ts';

/** First band: the formula's name, what it makes, and what was found that stands at nothing else on the sheet. */
export function titleBand(view: SheetView, placed: PlacedFindings, reveal: Reveal): HTMLElement {
  const makes = view.makes.map((text) => element('span', { text, attributes: { dir: 'auto' } }));
  if (view.tried) makes.push(element('strong', { class: 'tried', text: view.labels.tried }));
  return element(
    'header',
    { class: 'title' },
    element('h1', {}, lineButton(view.formula, view.line, 'formula', reveal)),
    makes.length > 0 ? element('p', { class: 'makes' }, ...makes) : undefined,
    findingsAt(placed, 'heading', view.labels, reveal),
  );
}

/** The figures a baker knows a dough by. */
export function factsBand(view: SheetView, placed: PlacedFindings, reveal: Reveal): HTMLElement | undefined {
  return view.facts.length === 0 ? undefined : factsList(view, 'fact', placed, reveal);
}

/** Labelled figures, each with what was found at it. */
export function factsList(
  view: SheetView,
  place: 'fact' | 'yield',
  placed: PlacedFindings,
  reveal: Reveal,
): HTMLElement {
  const facts = place === 'fact' ? view.facts : view.yields;
  const pairs = facts.map((fact) => factPair(fact, `${place} ${fact.key}`, placed, view.labels, reveal));
  return element('dl', { class: 'facts' }, ...pairs);
}

function factPair(
  fact: SheetFact,
  place: `fact ${string}` | `yield ${string}`,
  placed: PlacedFindings,
  labels: SheetLabels,
  reveal: Reveal,
): HTMLElement {
  const label = fact.line === undefined ? undefined : lineButton(fact.label, fact.line, place, reveal);
  return element(
    'div',
    {},
    label ? element('dt', {}, label) : element('dt', { text: fact.label }),
    element('dd', { class: 'value', text: fact.value }),
    fact.source === 'today' ? element('dd', { class: 'note', text: labels.today }) : undefined,
    fact.note ? element('dd', { class: 'note', text: fact.note, attributes: { dir: 'auto' } }) : undefined,
    withFindings(findingsAt(placed, place, labels, reveal)),
  );
}

function withFindings(findings: HTMLElement | undefined): HTMLElement | undefined {
  return findings ? element('dd', { class: 'about' }, findings) : undefined;
}
