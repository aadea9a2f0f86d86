import { html, nothing, render } from 'lit-html';
import { keyed } from 'lit-html/directives/keyed.js';
import { live } from 'lit-html/directives/live.js';
import { repeat } from 'lit-html/directives/repeat.js';
import type { Row, Section, ShownSheet, TableSection, WorkMoment } from '../../server/protocol.ts';
import { clockText } from '../clock.ts';
import { element } from './elements.ts';
import { filled } from './filled.ts';
import { type Around, findingsList, type Shown } from './found.ts';
import { nodesOf } from './last-figures.ts';
import { noWork, type TakenReading, type WorkState } from './messages.ts';
import { minutesText } from './numbers.ts';
import { type ReadingControls, readingControls } from './reading.ts';
import { cellText, weighed } from './rows-table.ts';
import { plainDisplay, unitsOf } from './units.ts';

export interface Working {
  readonly root: HTMLElement;
  show(view: ShownSheet, work: WorkState): void;
  /** Takes everything off the page. */
  clear(): void;
  /** One moment on or back; stays at either end. */
  step(by: 1 | -1): void;
  /** Writes the running times anew. */
  tick(): void;
}

export interface WorkingActions {
  readonly keep: (work: WorkState) => void;
  readonly leave: () => void;
  readonly log: (reading: TakenReading) => void;
  readonly around: (view: ShownSheet) => Around;
}

/** The sheet one moment at a time, large enough to be read from a metre, for floury hands. */
export function createWorking(actions: WorkingActions, now: () => number = Date.now): Working {
  const root = element('div', { class: 'work-mode' });
  let view: ShownSheet | undefined;
  let work: WorkState = noWork;
  /** The moment that a reading is logged for, and its controls, which keep what is typed. */
  let reading: { readonly of: string; readonly controls: ReadingControls } | undefined;
  /** The timer that was over last, which is said aloud once. */
  let over = '';
  let isSureOfAnew = false;

  const keep = (next: WorkState) => {
    work = next;
    actions.keep(next);
    draw();
  };
  const focusTitle = () => root.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true });
  const go = (id: string) => {
    keep({ ...work, moment: id });
    focusTitle();
    window.scrollTo(0, 0);
  };
  const step = (by: 1 | -1) => {
    const { moments = [] } = view ?? {};
    const next = moments[indexOf(moments, work) + by];
    if (next) go(next.id);
  };

  const rowPart = (sheet: ShownSheet, row: Row): Shown => {
    const { cells, name, notes = [], missing } = row;
    const { weigh, reads } = cells;
    // Another size is weighed anew: what was ticked at the old one is not.
    const key = `${row.id} ${batchOf(sheet, work)} ${weigh?.text ?? ''}`;
    const toggle = (event: Event) => {
      const others = work.ticked.filter((one) => one !== key);
      const isTicked = event.target instanceof HTMLInputElement && event.target.checked;
      keep({ ...work, ticked: isTicked ? [...others, key] : others });
    };
    return html`<li>
      <label class="tick"
        ><input type="checkbox" .checked=${live(work.ticked.includes(key))} @change=${toggle} />
        <span class="what"
          ><span class="ingredient" dir="auto">${name}</span>${notes.map(
            (note) => html`<span class="how" dir="auto">${note}</span>`,
          )}${
            reads === undefined
              ? nothing
              : html`<span class="note">${filled(sheet.labels.reads, cellText(reads))}</span>`
          }</span
        >${
          weigh === undefined
            ? html`<span class="weigh missing">${missing ?? ''}</span>`
            : html`<span class="weigh">${weighed(weigh)}</span>`
        }</label
      >
    </li>`;
  };

  const weighing = (sheet: ShownSheet, { rows, sum, lead = [] }: TableSection): Shown => {
    const together = sum?.cells.weigh;
    return html`${lead.map((one) => html`<p class="note" dir="auto">${one}</p>`)}
      <ul class="ticks">
        ${repeat(
          rows,
          ({ id }) => id,
          (row) => rowPart(sheet, row),
        )}
      </ul>
      ${
        together === undefined
          ? nothing
          : html`<p class="together">${filled(sheet.labels.togetherFigure, cellText(together))}</p>`
      }`;
  };

  const timer = ({ labels }: ShownSheet, moment: WorkMoment): Shown => {
    const { id, title, seconds } = moment;
    if (seconds === undefined || seconds <= 0) return nothing;
    const running = work.timers[id];
    const left = running === undefined ? seconds : leftOf(running, now());
    const toggle = () => {
      const { [id]: _, ...others } = work.timers;
      const started = { ...others, [id]: { label: title, startedAt: now(), seconds } };
      keep({ ...work, timers: running ? others : started });
    };
    return html`<div class="timer">
      <p class="time ${left > 0 ? '' : 'over'}" role="timer" aria-label=${labels.timeLeft}>${
        left > 0 ? clockText(Math.ceil(left)) : filled(labels.overSince, clockText(-left))
      }</p>
      <button type="button" class="big" @click=${toggle}>${
        running ? labels.stopTimer : labels.startTimer
      }</button>
    </div>`;
  };

  /** Minutes from the start of mixing by the running timer, else where the line ends; none at the end of it all. */
  const minutesNow = ({ id, seconds = 0, ends }: WorkMoment): number | undefined => {
    const own = seconds / 60;
    const running = work.timers[id];
    const elapsed = running ? (now() - running.startedAt) / 60_000 : own;
    if (ends === undefined || (elapsed >= own && ends.isLast)) return undefined;
    return Math.round((ends.minute - own + Math.min(elapsed, own)) * 2) / 2;
  };

  const readingOf = (sheet: ShownSheet, moment: WorkMoment): ReadingControls => {
    const { celsius } = moment.ends ?? {};
    const of = JSON.stringify([moment.id, celsius, sheet.shownIn, sheet.labels.language]);
    if (reading?.of !== of) {
      const controls = readingControls({
        celsius,
        minutes: () => minutesNow(moment),
        units: unitsOf(sheet.shownIn ?? plainDisplay),
        labels: sheet.labels,
        log: actions.log,
        water: work.waterCelsius,
        setWater(waterCelsius) {
          const { waterCelsius: _, ...others } = work;
          keep(waterCelsius === undefined ? others : { ...others, waterCelsius });
        },
      });
      reading = { of, controls };
    }
    return reading.controls;
  };

  const mixing = (sheet: ShownSheet, moment: WorkMoment): Shown => {
    const { celsius, stage } = moment.ends ?? {};
    const units = unitsOf(sheet.shownIn ?? plainDisplay);
    const ends = [celsius, stage].filter((part) => part !== undefined).join(', ');
    const said = [
      minutesText((moment.seconds ?? 0) / 60, units),
      ...(ends === '' ? [] : [filled(sheet.labels.endsAt, ends)]),
    ];
    return html`<p class="ends">${said.join(' · ')}</p>
      ${timer(sheet, moment)} ${readingOf(sheet, moment).root}`;
  };

  const body = (sheet: ShownSheet, moment: WorkMoment): Shown => {
    if (moment.of === 'mix') return mixing(sheet, moment);
    const section = sheet.sections.find(({ id }) => id === moment.id);
    return section?.kind === 'table' ? weighing(sheet, section) : timer(sheet, moment);
  };

  const draw = (): void => {
    if (!view) return;
    const { labels, moments, formula } = view;
    const index = indexOf(moments, work);
    const moment = moments[index];
    render(
      html`<header class="work-head">
          <p class="of" dir="auto">${formula}</p>
          ${
            moment === undefined
              ? nothing
              : html`<p class="count">${filled(labels.of, String(index + 1), String(moments.length))}</p>`
          }
          ${batchPart(view, moment)} ${anewPart(view)}
          <button type="button" @click=${actions.leave}>${labels.wholeSheet}</button>
        </header>
        ${otherTimers(view, moment)}
        ${keyed(
          moment?.id,
          html`<div class="moment">
            <h1 tabindex="-1" dir="auto">${moment?.title ?? labels.nothingToDo}</h1>
            ${(moment?.when ?? []).map((text) => html`<p class="when">${text}</p>`)}
            ${moment === undefined ? nothing : body(view, moment)}
            ${moment === undefined ? nothing : foundAt(view, moment, actions.around(view))}
          </div>`,
        )}
        <nav class="work-foot" aria-label=${labels.moments}>
          <button type="button" class="big" ?disabled=${index === 0} @click=${() => step(-1)}>${labels.back}</button>
          <button
            type="button"
            class="big"
            ?disabled=${index >= moments.length - 1}
            @click=${() => step(1)}
            >${labels.next}</button
          >
        </nav>
        <p class="spoken" role="alert">${over}</p>`,
      root,
    );
  };

  const otherTimers = ({ moments, labels }: ShownSheet, moment: WorkMoment | undefined): Shown => {
    const running = Object.entries(work.timers).filter(([id]) => id !== moment?.id);
    if (running.length === 0) return nothing;
    return html`<div class="other-timers">
      ${repeat(
        running,
        ([id]) => id,
        ([id, one]) => {
          const left = leftOf(one, now());
          const time = left > 0 ? clockText(Math.ceil(left)) : filled(labels.overSince, clockText(-left));
          return html`<button
            type="button"
            class="other-timer ${left > 0 ? '' : 'over'}"
            @click=${() => (moments.some((other) => other.id === id) ? go(id) : undefined)}
            >${one.label}: ${time}</button
          >`;
        },
      )}
    </div>`;
  };

  /** Takes back all ticks and timers, for the next dough of the day; asks once more, for a sleeve taps too. */
  const anewPart = ({ labels }: ShownSheet): Shown => {
    if (work.ticked.length === 0 && Object.keys(work.timers).length === 0) return nothing;
    const isSure = (sure: boolean) => {
      if (sure === isSureOfAnew) return;
      isSureOfAnew = sure;
      draw();
    };
    const press = () => {
      if (!isSureOfAnew) return isSure(true);
      isSureOfAnew = false;
      over = '';
      keep(noWork);
      focusTitle();
    };
    return html`<button type="button" @click=${press} @blur=${() => isSure(false)}>${
      isSureOfAnew ? labels.anewSure : labels.anew
    }</button>`;
  };

  const batchPart = (sheet: ShownSheet, moment: WorkMoment | undefined): Shown => {
    const { labels, batches, sections } = sheet;
    const section = sections.find(({ id }) => id === moment?.id);
    if (section?.kind !== 'table' || (section.times ?? 1) < 2) return nothing;
    const choose = (event: Event) => {
      if (event.target instanceof HTMLSelectElement) keep({ ...work, batch: Number(event.target.value) });
    };
    const chosen = batchOf(sheet, work);
    const numbers = Array.from({ length: batches.count }, (_, index) => index + 1);
    return html`<span class="field"
      ><label for="batch">${labels.batch}</label
      ><select id="batch" @change=${choose}>
        ${numbers.map(
          (number) =>
            html`<option value=${number} ?selected=${number === chosen}>${filled(labels.of, String(number), String(batches.count))}</option>`,
        )}
      </select></span
    >`;
  };

  return {
    root,
    step,
    tick() {
      reading?.controls.tick();
      const running = Object.values(work.timers);
      if (view === undefined || running.length === 0) return;
      const ended = running.filter((one) => leftOf(one, now()) <= 0).map(({ label }) => label);
      over = ended.map((label) => filled(view?.labels.over ?? '', label)).join(' ');
      draw();
    },
    clear() {
      view = undefined;
      reading = undefined;
      render(nothing, root);
    },
    show(next, kept) {
      view = next;
      work = kept;
      draw();
      this.tick();
    },
  };
}

function indexOf(moments: readonly WorkMoment[], work: WorkState): number {
  return Math.max(
    0,
    moments.findIndex(({ id }) => id === work.moment),
  );
}

function batchOf({ batches }: ShownSheet, work: WorkState): number {
  return Math.min(work.batch ?? 1, batches.count);
}

/** Seconds until a timer ends, below 0 once it is over. */
function leftOf(
  { startedAt, seconds }: { readonly startedAt: number; readonly seconds: number },
  now: number,
): number {
  return seconds - (now - startedAt) / 1000;
}

/** What was found at a moment: at a section of weights, at it and at its rows; and what stands at the head of the sheet but concerns a line of it. */
function foundAt({ sections }: ShownSheet, { id }: WorkMoment, around: Around): Shown {
  const own = (section: Section) => (section.id === id ? nodesOf(section) : []);
  const one = sections.flatMap(nodesOf).filter((node) => node.id === id);
  const whole = sections.flatMap(own);
  const nodes = whole.length > 0 ? whole : one;
  const lines = new Set(nodes.map(({ line }) => line));
  const atHead = sections
    .filter(({ name }) => name === 'glance')
    .flatMap(nodesOf)
    .flatMap(({ findings = [] }) => findings.filter(({ line }) => lines.has(line)));
  return html`${[...nodes.map(({ findings }) => findings), atHead].map((all) => findingsList(all, around))}`;
}
