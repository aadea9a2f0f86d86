import { html, nothing, svg } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { FactsSection, Section, SheetDocument, Step, StepsSection } from '../../server/protocol.ts';
import { chartParts } from './chart-parts.ts';
import { type Around, findingsList, foldedFindings, named, type Shown } from './found.ts';
import { rowsTable } from './rows-table.ts';

/** What stands together, in the order of the sheet: what is weighed, what is done with it, what comes of it. */
const bands = ['weighing', 'doing', 'outcome'] as const;

const bandOf: Readonly<Record<Section['name'], (typeof bands)[number] | undefined>> = {
  // Below the heading, among the controls, and on paper alone.
  glance: undefined,
  log: undefined,
  facts: undefined,
  day: undefined,
  // What is stepped above is answered right below.
  'before-after': 'weighing',
  before: 'weighing',
  bowl: 'weighing',
  later: 'weighing',
  apart: 'weighing',
  mixing: 'doing',
  'map-chart': 'doing',
  'mixing-chart': 'doing',
  trial: 'doing',
  clock: 'doing',
  yield: 'outcome',
  'composition-chart': 'outcome',
  cost: 'outcome',
  label: 'outcome',
  cautions: 'outcome',
};

/** All sections of a sheet below its heading. */
export function sheetBands({ sections, batches }: SheetDocument, around: Around): Shown {
  return html`<div class=${around.scaleReading.isShown ? 'bands with-reading' : 'bands'}>
    ${bands.map((band) => {
      const own = sections.filter(({ name }) => bandOf[name] === band);
      if (own.length === 0) return nothing;
      const often = band === 'weighing' && batches.text !== undefined ? batches.text : undefined;
      return html`<div class=${band}>
        ${often === undefined ? nothing : html`<p class="batches" dir="auto">${often}</p>`}
        ${repeat(
          own,
          ({ id }) => id,
          (section, index) => sectionPart(section, `${band}-${index}`, around),
        )}
      </div>`;
    })}
  </div>`;
}

/** Sections that nobody works from: their headings fold them out. What was found in one folds it out by itself. */
const folded: ReadonlySet<Section['name']> = new Set([
  ...(['yield', 'composition-chart', 'cost', 'label', 'cautions'] as const),
]);

function hasFindings(section: Section): boolean {
  const nodes = section.kind === 'facts' ? section.facts : section.kind === 'table' ? section.rows : [];
  return [section, ...nodes].some(({ findings }) => findings !== undefined);
}

function sectionPart(section: Section, heading: string, around: Around): Shown {
  const { name, title, line, when = [], findings } = section;
  const body = html`${findingsList(findings, around)}${sentences(section)}${bodyOf(section, heading, around)}${notesOf(section)}${teachButton(section, around)}`;
  const classes = `${section.kind === 'chart' ? 'chart ' : ''}${name}`;
  if (folded.has(name))
    return html`<section class=${classes} data-id=${section.id} aria-labelledby=${heading}>
      <details class="fold" ?open=${hasFindings(section)}>
        <summary><h2 id=${heading}>${title}</h2></summary>
        ${body}
      </details>
    </section>`;
  return html`<section class=${classes} data-id=${section.id} aria-labelledby="${heading}-head">
    <header id="${heading}-head">
      <h2 id=${heading}>${line === undefined ? title : named(title, line, around)}</h2>
      ${when.map((text) => html`<p class="when" dir="auto">${text}</p>`)}
      ${name === 'bowl' && section.kind === 'table' ? readingSwitch(around) : nothing}
    </header>
    ${body}
  </section>`;
}

/** Beside what the readings of a trial miss: what teaches its mixer. */
function teachButton(section: Section, { teach }: Around): Shown {
  const { line } = section;
  if (section.kind !== 'table' || section.teach === undefined || line === undefined) return nothing;
  return html`<button type="button" class="teach" @click=${() => teach(line)}>${section.teach.words}</button>`;
}

/** Shows what one scale reads beside all weights, or leaves it out. */
function readingSwitch({ labels, scaleReading: { isShown, set } }: Around): Shown {
  const turn = (event: Event): void => set((event.target as HTMLInputElement).checked);
  return html`<label class="switch"
    ><input type="checkbox" .checked=${isShown} @change=${turn} />${labels.scaleReads}</label
  >`;
}

function sentences({ lead = [] }: Section): Shown {
  return html`${lead.map(
    (one) =>
      html`<p class="note" dir="auto">${
        typeof one === 'string'
          ? one
          : one.map(({ text, strong }) => (strong === true ? html`<strong>${text}</strong>` : text))
      }</p>`,
  )}`;
}

function notesOf({ notes = [] }: Section): Shown {
  if (notes.length === 0) return nothing;
  return html`<ul class="notes">
    ${notes.map((text) => html`<li dir="auto">${text}</li>`)}
  </ul>`;
}

function bodyOf(section: Section, heading: string, around: Around): Shown {
  switch (section.kind) {
    case 'facts':
      return factsList(section, around);
    case 'table':
      return section.rows.length === 0 ? nothing : rowsTable(section, heading, around);
    case 'steps':
      return stepsTable(section, heading, around);
    case 'chart':
      return chartParts(section, heading, around);
    case 'notes':
      return nothing;
  }
}

/** The answers at the head of the sheet, each in a tile that leads to its line. */
export function answerTiles({ facts }: FactsSection, around: Around): Shown {
  return html`<dl class="glance">
    ${repeat(
      facts,
      ({ id }) => id,
      ({ id, label, line, value, verdict, notes, findings }) =>
        html`<div class=${verdict?.level ?? ''} data-id=${id}>
          <dt>${named(label, line, around)}</dt>
          <dd class="value" dir="auto"><span class="sign" aria-hidden="true">${verdict?.sign}</span> ${value}</dd>
          ${verdict === undefined || verdict.word === '' ? nothing : html`<dd class="word" dir="auto">${verdict.word}</dd>`}
          ${notes.map((text) => html`<dd class="note" dir="auto">${text}</dd>`)}
          ${findings === undefined ? nothing : html`<dd class="about">${foldedFindings(findings, around)}</dd>`}
        </div>`,
    )}
  </dl>`;
}

/** Labelled figures, each with what was found at it. */
export function factsList({ facts }: FactsSection, around: Around): Shown {
  return html`<dl class="facts">
    ${repeat(
      facts,
      ({ id }) => id,
      (fact) =>
        html`<div data-id=${fact.id}>
          <dt>${fact.line === undefined ? fact.label : named(fact.label, fact.line, around)}</dt>
          <dd class="value">${fact.value}</dd>
          ${fact.notes.map((text) => html`<dd class="note" dir="auto">${text}</dd>`)}
          ${
            fact.findings === undefined
              ? nothing
              : html`<dd class="about">${findingsList(fact.findings, around)}</dd>`
          }
        </div>`,
    )}
  </dl>`;
}

function stepsTable({ heads, steps }: StepsSection, heading: string, around: Around): Shown {
  const [when, work, lasts] = heads;
  return html`<table class="steps-table" aria-labelledby=${heading}>
    <thead>
      <tr>
        <th scope="col" class="clock">${when}</th>
        <th scope="col">${work}</th>
        <th scope="col" class="lasts">${lasts}</th>
      </tr>
    </thead>
    <tbody>
      ${repeat(
        steps,
        ({ id }) => id,
        (step) =>
          html`<tr class=${step.of} data-id=${step.id}>
            <td class="clock">${step.when}</td>
            <th scope="row">${step.of === 'ready' ? step.text : named(step.brief ?? step.text, step.line, around)}${bar(step)}${(step.notes ?? []).map((text) => html`<span class="note" dir="auto">${text}</span>`)}${findingsList(step.findings, around)}</th>
            <td class="lasts">${step.lasts ?? ''}</td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}

/** Where a step lies along the whole work; the words beside it say the same. */
function bar({ along: { from, to } }: Step): Shown {
  const width = Math.max(0.8, (to - from) * 100);
  const x = Math.min(from * 100, 100 - width);
  return html`<svg class="along" viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
    ${svg`<path d="M0,2 H100"></path><rect x=${x} y="0" width=${width} height="4"></rect>`}
  </svg>`;
}
