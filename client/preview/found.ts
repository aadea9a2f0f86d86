import { html, nothing, svg, type TemplateResult } from 'lit-html';
import type { SheetFinding, SheetLabels } from '../../server/protocol.ts';
import { filled } from './filled.ts';

/** What a template of the sheet needs beside what it shows. */
export interface Around {
  readonly labels: SheetLabels;
  /** Shows a zero-based line in the editor. */
  readonly show: (line: number) => void;
  /** Writes into a mixer what its trial at this line says. */
  readonly teach: (line: number) => void;
  /** Whether what one scale reads stands beside the weights, and what shows it or leaves it out from now on. */
  readonly scaleReading: { readonly isShown: boolean; readonly set: (shown: boolean) => void };
}

export type Shown = TemplateResult | typeof nothing;

/** A name that shows its line in the editor when pressed, or the name alone. It may be in any script, so its direction is its own. */
export function named(
  name: string,
  line: number | undefined,
  { labels, show }: { readonly labels: Pick<SheetLabels, 'showLine'>; readonly show: Around['show'] },
): Shown {
  if (line === undefined) return html`<span class="name" dir="auto">${name}</span>`;
  return html`<button
    type="button"
    class="name"
    dir="auto"
    data-line=${line}
    title=${labels.showLine}
    @click=${() => show(line)}
    >${name}</button
  >`;
}

/** The findings of one node as a list, or nothing when there are none; `isFar` where each is to name its line. */
export function findingsList(
  findings: readonly SheetFinding[] | undefined,
  around: Around,
  isFar = false,
): Shown {
  if (findings === undefined || findings.length === 0) return nothing;
  const { labels } = around;
  const place = (line: number): Shown =>
    html` (${named(filled(labels.line, String(line + 1)), line, around)})`;
  // Written without blanks between its parts: what a finding says is read out as it stands.
  const item = ({ level, message, line }: SheetFinding): Shown =>
    html`<li class="finding ${level}">${mark(level)}<span class="says"><strong class="level">${labels.levels[level]}: </strong><span dir="auto">${message}</span>${isFar ? place(line) : nothing}</span></li>`;
  return html`<ul class="findings">${findings.map(item)}</ul>`;
}

/** The same folded, below what says it in short already: the sign of each level stays in sight. */
export function foldedFindings(findings: readonly SheetFinding[] | undefined, around: Around): Shown {
  if (findings === undefined || findings.length === 0) return nothing;
  const { labels } = around;
  const levels = [...new Set(findings.map(({ level }) => level))];
  return html`<details class="fold why">
    <summary>${levels.map((level) => html`<span class="sign-of ${level}">${mark(level)}<span class="unseen">${labels.levels[level]}: </span></span>`)}${labels.why}</summary>
    ${findingsList(findings, around)}
  </details>`;
}

// One outline a level, so that the level shows without its colour: a square, a triangle, a circle, a dash.
const markPaths: Readonly<Record<SheetFinding['level'], string>> = {
  error: 'M2 2H14V14H2Z M5.2 5.2L10.8 10.8 M10.8 5.2L5.2 10.8',
  warning: 'M8 1.8L15 14.2H1Z M8 6.2V10 M8 11.7V12.6',
  info: 'M8 1.5A6.5 6.5 0 1 1 8 14.5A6.5 6.5 0 1 1 8 1.5Z M8 7V11.6 M8 4.4V5.4',
  hint: 'M3 8H13',
};

function mark(level: SheetFinding['level']): Shown {
  return html`<svg viewBox="0 0 16 16" class="mark" aria-hidden="true">${svg`<path d=${markPaths[level]}></path>`}</svg>`;
}
