import type { SheetRow, ShownSheet } from '../../server/protocol.ts';
import { button, element, type Reveal } from './elements.ts';
import { filled } from './filled.ts';
import { findingsAt } from './findings.ts';
import { noWork, type RunningTimer, type TakenReading, type WorkState } from './messages.ts';
import { type Moment, momentSeconds, momentsOf, momentTitle } from './moments.ts';
import { clockText, minutesText, weighedText } from './numbers.ts';
import { placeFindings } from './place-findings.ts';
import { type ReadingControls, readingControls } from './reading.ts';
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
  /** How a line of a sheet is shown in the editor. */
  readonly reveal: (view: ShownSheet) => Reveal;
}

/** The sheet one moment at a time, large enough to be read from a metre, for floury hands. */
export function createWorking(actions: WorkingActions, now: () => number = Date.now): Working {
  const root = element('div', { class: 'work-mode' });
  const said = element('p', { class: 'spoken', attributes: { role: 'alert' } });
  let view: ShownSheet | undefined;
  let work: WorkState = noWork;
  let moments: readonly Moment[] = [];
  let reading: ReadingControls | undefined;
  const told = new Set<string>();

  const found = () => moments.findIndex(({ key }) => key === work.moment);
  const index = () => Math.max(0, found());
  /** Nothing is drawn before there is a sheet. */
  const labels = () => view!.labels;
  const batches = () => view?.batches.count ?? 1;
  const batch = () => Math.min(work.batch ?? 1, batches());
  const keep = (next: WorkState) => {
    work = next;
    actions.keep(next);
  };
  const go = (key: string) => {
    keep({ ...work, moment: key });
    draw();
    root.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  };
  const step = (by: 1 | -1) => {
    const next = moments[index() + by];
    if (next) go(next.key);
  };

  const startTimer = (moment: Moment, seconds: number) => {
    const timer = { label: momentTitle(moment), startedAt: now(), seconds };
    keep({ ...work, timers: { ...work.timers, [moment.key]: timer } });
    draw(`timer ${moment.key}`);
  };
  const stopTimer = (moment: Moment) => {
    const { [moment.key]: _, ...others } = work.timers;
    told.delete(moment.key);
    keep({ ...work, timers: others });
    draw(`timer ${moment.key}`);
  };

  const weighRow = (row: SheetRow, r: number, moment: Moment): HTMLElement => {
    // Another size is weighed anew: what was ticked at the old one is not.
    const key = `${moment.key} ${batch()} ${row.name} ${r} ${row.weigh?.figure ?? ''}`;
    const box = element('input', { attributes: { type: 'checkbox', 'data-key': key } });
    box.checked = work.ticked.includes(key);
    box.addEventListener('change', () => {
      const others = work.ticked.filter((one) => one !== key);
      keep({ ...work, ticked: box.checked ? [...others, key] : others });
      draw();
    });
    const weigh = row.weigh
      ? element(
          'span',
          { class: 'weigh' },
          element('span', { class: 'figure', text: row.weigh.figure }),
          document.createTextNode('\u00a0'),
          element('span', { class: 'unit', text: row.weigh.unit }),
        )
      : element('span', { class: 'weigh missing', text: row.missing ?? '' });
    return element(
      'li',
      {},
      element(
        'label',
        { class: 'tick' },
        box,
        element(
          'span',
          { class: 'what' },
          element('span', { class: 'ingredient', text: row.name, attributes: { dir: 'auto' } }),
          row.note
            ? element('span', { class: 'how', text: row.note, attributes: { dir: 'auto' } })
            : undefined,
          row.scaleReads
            ? element('span', {
                class: 'note',
                text: filled(labels().reads, weighedText(row.scaleReads)),
              })
            : undefined,
        ),
        weigh,
      ),
    );
  };

  const timerPart = (moment: Moment): HTMLElement | undefined => {
    const seconds = momentSeconds(moment);
    if (seconds === undefined || seconds <= 0) return undefined;
    const running = work.timers[moment.key];
    const time = element('p', {
      class: 'time',
      attributes: { role: 'timer', 'data-timer': moment.key, 'aria-label': labels().timeLeft },
      text: clockText(seconds),
    });
    return element(
      'div',
      { class: 'timer' },
      time,
      button(
        running ? labels().stopTimer : labels().startTimer,
        () => (running ? stopTimer(moment) : startTimer(moment, seconds)),
        { class: 'big', attributes: { 'data-key': `timer ${moment.key}` } },
      ),
    );
  };

  /** Minutes from the start of mixing by the running timer, else where the phase ends; none at the end of it all. */
  const minutesNow = (moment: Moment & { kind: 'mix' }): number | undefined => {
    const { phase } = moment;
    const running = work.timers[moment.key];
    const elapsed = running ? (now() - running.startedAt) / 60_000 : phase.minutes;
    const isLast = view?.mixing?.phases.at(-1) === phase;
    if (elapsed >= phase.minutes && isLast) return undefined;
    const minutes = phase.endMinute - phase.minutes + Math.min(elapsed, phase.minutes);
    return Math.round(minutes * 2) / 2;
  };

  const body = (moment: Moment): readonly (HTMLElement | undefined)[] => {
    if (moment.kind === 'weigh') {
      const { block } = moment;
      const rows = block.rows.map((row, r) => weighRow(row, r, moment));
      return [
        block.note
          ? element('p', { class: 'note', text: block.note, attributes: { dir: 'auto' } })
          : undefined,
        element('ul', { class: 'ticks' }, ...rows),
        block.total && block.rows.length > 1
          ? element('p', {
              class: 'together',
              text: filled(labels().togetherFigure, weighedText(block.total)),
            })
          : undefined,
      ];
    }
    if (moment.kind === 'step') return [timerPart(moment)];
    const { phase } = moment;
    const ends = [phase.celsius, phase.stage].filter(Boolean).join(', ');
    const units = unitsOf(view?.shownIn ?? plainDisplay);
    reading = readingControls({
      phase,
      minutes: () => minutesNow(moment),
      units,
      labels: labels(),
      log: actions.log,
    });
    return [
      element('p', {
        class: 'ends',
        text: [minutesText(phase.minutes, units), ends && filled(labels().endsAt, ends)]
          .filter(Boolean)
          .join(' · '),
      }),
      timerPart(moment),
      reading.root,
    ];
  };

  const draw = (focus?: string) => {
    if (!view) return;
    const moment = moments[index()];
    const number = index();
    const running = Object.entries(work.timers).filter(([key]) => key !== moment?.key);
    const clock =
      moment?.kind === 'weigh' ? moment.block.clock : moment?.kind === 'step' ? moment.step.clock : undefined;
    const when = moment?.kind === 'weigh' ? [clock?.words, moment.block.when] : [clock?.words];
    reading = undefined;
    const keyOfFocus = focus ?? (document.activeElement as HTMLElement | null)?.dataset.key;
    const times = moment?.kind === 'weigh' ? moment.block.times : 1;
    const parts = [
      element(
        'header',
        { class: 'work-head' },
        element('p', { class: 'of', text: view.formula, attributes: { dir: 'auto' } }),
        moment
          ? element('p', {
              class: 'count',
              text: filled(labels().of, String(number + 1), String(moments.length)),
            })
          : undefined,
        times > 1 ? batchPart() : undefined,
        beginAnew(),
        button(labels().wholeSheet, actions.leave, { attributes: { 'data-key': 'leave' } }),
      ),
      running.length > 0 ? element('div', { class: 'other-timers' }, ...running.map(otherTimer)) : undefined,
      element(
        'div',
        { class: 'moment' },
        element('h1', {
          text: moment ? momentTitle(moment) : labels().nothingToDo,
          attributes: { tabindex: '-1', dir: 'auto' },
        }),
        ...when.filter(Boolean).map((text) => element('p', { class: 'when', text })),
        ...(moment ? body(moment) : []),
        ...(moment ? findingsOf(view, moment) : []),
      ),
      element(
        'nav',
        { class: 'work-foot', attributes: { 'aria-label': labels().moments } },
        button(labels().back, () => step(-1), {
          class: 'big',
          attributes: { 'data-key': 'back', ...(number === 0 ? { disabled: '' } : {}) },
        }),
        button(labels().next, () => step(1), {
          class: 'big',
          attributes: { 'data-key': 'next', ...(number >= moments.length - 1 ? { disabled: '' } : {}) },
        }),
      ),
      said,
    ];
    root.replaceChildren(...parts.filter((part) => part !== undefined));
    if (keyOfFocus !== undefined)
      root
        .querySelector<HTMLElement>(`[data-key="${CSS.escape(keyOfFocus)}"]`)
        ?.focus({ preventScroll: true });
    tick();
  };

  const otherTimer = ([key, timer]: readonly [string, RunningTimer]): HTMLElement =>
    button('', () => (moments.some((one) => one.key === key) ? go(key) : undefined), {
      class: 'other-timer',
      attributes: { 'data-timer': key, 'data-label': timer.label, 'data-key': `other ${key}` },
    });

  /** Takes back all ticks and timers, for the next dough of the day; asks once more, for a sleeve taps too. */
  const beginAnew = (): HTMLElement | undefined => {
    if (work.ticked.length === 0 && Object.keys(work.timers).length === 0) return undefined;
    let isSure = false;
    const anew = button(
      labels().anew,
      () => {
        if (!isSure) {
          isSure = true;
          anew.textContent = labels().anewSure;
          return;
        }
        told.clear();
        keep(noWork);
        draw();
        root.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true });
      },
      { attributes: { 'data-key': 'anew' } },
    );
    anew.addEventListener('blur', () => {
      isSure = false;
      anew.textContent = labels().anew;
    });
    return anew;
  };

  const batchPart = (): HTMLElement => {
    const select = element('select', { attributes: { id: 'batch', 'data-key': 'batch' } });
    for (let number = 1; number <= batches(); number += 1)
      select.append(
        element('option', {
          text: filled(labels().of, String(number), String(batches())),
          attributes: { value: String(number) },
        }),
      );
    select.value = String(batch());
    select.addEventListener('change', () => {
      keep({ ...work, batch: Number(select.value) });
      draw('batch');
    });
    return element(
      'span',
      { class: 'field' },
      element('label', { text: labels().batch, attributes: { for: 'batch' } }),
      select,
    );
  };

  const findingsOf = (sheet: ShownSheet, moment: Moment): readonly HTMLElement[] => {
    const placed = placeFindings(sheet);
    const lines = new Set(
      moment.kind === 'weigh' ? [moment.line, ...moment.block.rows.map(({ line }) => line)] : [moment.line],
    );
    return [...placed].flatMap(([place, findings]) => {
      if (place === 'heading' || !findings.some(({ line }) => lines.has(line))) return [];
      const list = findingsAt(placed, place, sheet.labels, actions.reveal(sheet));
      return list ? [list] : [];
    });
  };

  const tick = () => {
    reading?.tick();
    for (const part of root.querySelectorAll<HTMLElement>('[data-timer]')) {
      const key = part.dataset.timer ?? '';
      const timer = work.timers[key];
      if (!timer) continue;
      const left = timer.seconds - (now() - timer.startedAt) / 1000;
      const text = left > 0 ? clockText(Math.ceil(left)) : filled(labels().overSince, clockText(-left));
      const label = part.dataset.label;
      const words = label === undefined ? text : `${label}: ${text}`;
      if (part.textContent !== words) part.textContent = words;
      part.classList.toggle('over', left <= 0);
      if (left > 0 || told.has(key)) continue;
      told.add(key);
      said.textContent = filled(labels().over, timer.label);
    }
  };

  return {
    root,
    step,
    tick,
    clear() {
      view = undefined;
      root.replaceChildren();
    },
    show(next, kept) {
      view = next;
      work = kept;
      moments = momentsOf(next);
      draw();
    },
  };
}
