import { html, nothing, render } from 'lit-html';
import { repeat } from 'lit-html/directives/repeat.js';
import type { BenchDough, Display, ExperimentBench } from '../../server/protocol.ts';
import { clockText, dayOf } from '../clock.ts';
import { element } from '../preview/elements.ts';
import { filled } from '../preview/filled.ts';
import type { Shown } from '../preview/found.ts';
import type { TakenReading } from '../preview/messages.ts';
import { minutesText } from '../preview/numbers.ts';
import { type ReadingControls, readingControls } from '../preview/reading.ts';
import { plainDisplay, type Units, unitsOf } from '../preview/units.ts';
import { type BenchRun, type DoughRun, noRun } from './messages.ts';
import { leadSeconds, minuteNow, mixedSeconds, nextReading, readingAbout, started, stopped } from './runs.ts';

export interface Bench {
  readonly root: HTMLElement;
  show(bench: ExperimentBench, shownIn: Display | undefined, run: BenchRun): void;
  clear(): void;
  /** One dough on or back; stays at either end. */
  step(by: 1 | -1): void;
  /** Writes the running times anew. */
  tick(): void;
}

export interface BenchActions {
  readonly keep: (run: BenchRun) => void;
  readonly leave: () => void;
  readonly log: (dough: string, reading: TakenReading) => void;
}

const noDoughRun: DoughRun = { before: 0 };

/** An experiment run at the bench: one timer a dough, the mixer stopped before each reading, and two taps to log it. */
export function createBench(actions: BenchActions, now: () => number = Date.now): Bench {
  const root = element('div', { class: 'work-mode bench' });
  let shown: ExperimentBench | undefined;
  let units: Units = unitsOf(plainDisplay);
  let run: BenchRun = noRun;
  /** The minute that was chosen by hand for the next reading; else it goes by the timer. */
  let chosen: number | undefined;
  let reading: { readonly of: string; readonly controls: ReadingControls } | undefined;
  let isSure = false;
  /** Doughs whose mixer is to be stopped, which is said aloud once. */
  let alert = '';

  const keep = (next: BenchRun) => {
    run = next;
    actions.keep(next);
    draw();
  };
  const runOf = ({ name }: BenchDough): DoughRun => run.doughs[name] ?? noDoughRun;
  const current = (): BenchDough | undefined => {
    const { doughs = [] } = shown ?? {};
    return doughs.find(({ name }) => name === run.dough) ?? doughs[0];
  };
  const keepRun = (dough: BenchDough, next: DoughRun) => {
    chosen = undefined;
    keep({ ...run, dough: dough.name, doughs: { ...run.doughs, [dough.name]: withNext(dough, next) } });
  };
  const withNext = (dough: BenchDough, next: DoughRun): DoughRun => {
    const minutes = next.startedAt === undefined ? undefined : nextReading(dough, next);
    const { next: _, ...rest } = next;
    if (minutes === undefined || shown === undefined) return rest;
    const label = `${dough.stop}, ${filled(shown.labels.readAt, minutesText(minutes, units))}`;
    return { ...rest, next: { label, seconds: Math.max(0, minutes * 60 - next.before - leadSeconds) } };
  };
  const choose = (dough: BenchDough) => {
    chosen = undefined;
    keep({ ...run, dough: dough.name });
    root.querySelector<HTMLElement>('h1')?.focus({ preventScroll: true });
  };
  const step = (by: 1 | -1) => {
    const { doughs = [] } = shown ?? {};
    const shownNow = current();
    const next = shownNow && doughs[doughs.indexOf(shownNow) + by];
    if (next) choose(next);
  };

  /** Seconds until the mixer is to be stopped, below 0 once it should have been. */
  const leftOf = (dough: BenchDough): number | undefined => {
    const own = runOf(dough);
    const minutes = own.startedAt === undefined ? undefined : nextReading(dough, own);
    return minutes === undefined ? undefined : minutes * 60 - mixedSeconds(own, now());
  };

  const stopWords = ({ labels }: ExperimentBench, dough: BenchDough): string => {
    const left = leftOf(dough);
    const minutes = nextReading(dough, runOf(dough));
    if (minutes === undefined) return labels.noneLeft;
    const at = filled(labels.readAt, minutesText(minutes, units));
    if (left === undefined) return at;
    const stop =
      left > 0
        ? filled(labels.stopIn, dough.stop, clockText(Math.ceil(left)))
        : filled(labels.stopNow, dough.stop);
    return `${stop} · ${at}`;
  };

  const doughsPart = ({ doughs, labels }: ExperimentBench): Shown =>
    html`<div class="other-timers" role="group" aria-label=${labels.doughs}>
      ${repeat(
        doughs,
        ({ name }) => name,
        (dough) => {
          const left = leftOf(dough);
          const seconds = mixedSeconds(runOf(dough), now());
          const time =
            left !== undefined && left <= 0 ? filled(labels.stopNow, dough.stop) : clockText(seconds);
          return html`<button
            type="button"
            class="other-timer ${left !== undefined && left <= 0 ? 'over' : ''}"
            aria-pressed=${dough === current()}
            @click=${() => choose(dough)}
            ><bdi>${dough.name}</bdi>${seconds > 0 ? `: ${time}` : nothing}</button
          >`;
        },
      )}
    </div>`;

  const timerPart = (bench: ExperimentBench, dough: BenchDough): Shown => {
    const { labels } = bench;
    const own = runOf(dough);
    const [isRunning, seconds, left] = [own.startedAt !== undefined, mixedSeconds(own, now()), leftOf(dough)];
    const toggle = () => keepRun(dough, isRunning ? stopped(own, now()) : started(own, now()));
    const words = isRunning ? labels.stopped : seconds > 0 ? labels.goOn : labels.begin;
    return html`<div class="timer">
        <p class="time" role="timer" aria-label=${labels.mixedSoFar}>${clockText(seconds)}</p>
        <button type="button" class="big" @click=${toggle}>${words}</button>
      </div>
      <p class="ends ${left !== undefined && left <= leadSeconds ? 'over' : ''}">${stopWords(bench, dough)}</p>`;
  };

  const plannedPart = ({ labels }: ExperimentBench, { readings, logged }: BenchDough): Shown => {
    const today = dayOf(new Date(now()));
    const isToday = logged.filter(({ date }) => date === today);
    const minutes = [...new Set([...readings, ...isToday].map((one) => one.minutes))].sort((a, b) => a - b);
    if (minutes.length === 0) return nothing;
    return html`<section class="planned" aria-labelledby="planned">
      <h2 id="planned">${labels.planned}</h2>
      <ul>
        ${minutes.map((minute) => {
          const taken = isToday.find((one) => one.minutes === minute);
          const plan = readings.find((one) => one.minutes === minute);
          return html`<li>
            <span class="minute">${minutesText(minute, units)}</span>
            ${taken ? html`<strong dir="auto">${taken.words}</strong>` : nothing}
            ${
              plan === undefined || plan.expected === ''
                ? nothing
                : html`<span class="note" dir="auto">${filled(labels.expected, plan.expected)}</span>`
            }
          </li>`;
        })}
      </ul>
    </section>`;
  };

  const minutesOfReading = (dough: BenchDough) => chosen ?? minuteNow(runOf(dough), now());

  const minutePart = ({ labels }: ExperimentBench, dough: BenchDough): Shown => {
    const byTimer = minuteNow(runOf(dough), now());
    const press = (minutes: number | undefined) => () => {
      chosen = minutes;
      draw();
    };
    return html`<div class="chips" role="group" aria-label=${labels.minute}>
      ${
        byTimer === undefined
          ? nothing
          : html`<button type="button" class="chip" aria-pressed=${chosen === undefined} @click=${press(undefined)}
              >${filled(labels.byTimer, minutesText(byTimer, units))}</button
            >`
      }${dough.readings
        .filter(({ minutes }) => minutes !== byTimer || chosen === minutes)
        .map(
          ({ minutes }) =>
            html`<button type="button" class="chip" aria-pressed=${chosen === minutes} @click=${press(minutes)}
            >${minutesText(minutes, units)}</button
          >`,
        )}
    </div>`;
  };

  const readingOf = (bench: ExperimentBench, dough: BenchDough): ReadingControls => {
    const minutes = chosen ?? readingAbout(dough, runOf(dough));
    const celsius = dough.readings.find((one) => one.minutes === minutes)?.celsius;
    const of = JSON.stringify([dough.name, chosen, celsius, units.degrees, bench.labels.language]);
    if (reading?.of !== of) {
      const { waterCelsius } = runOf(dough);
      const controls = readingControls({
        celsius:
          celsius === undefined ? undefined : `${units.text(units.degreesOf(celsius), 1)} ${units.degrees}`,
        minutes: () => minutesOfReading(dough),
        ...{ units, labels: bench.labels, water: waterCelsius, minuteFirst: bench.labels.minuteFirst },
        log: (taken) => actions.log(dough.name, taken),
        setWater(celsius) {
          const { waterCelsius: _, ...rest } = runOf(dough);
          const next = celsius === undefined ? rest : { ...rest, waterCelsius: celsius };
          keep({ ...run, doughs: { ...run.doughs, [dough.name]: next } });
        },
      });
      reading = { of, controls };
    }
    return reading.controls;
  };

  const anewPart = ({ labels }: ExperimentBench): Shown => {
    if (Object.keys(run.doughs).length === 0) return nothing;
    const sure = (next: boolean) => {
      if (next === isSure) return;
      isSure = next;
      draw();
    };
    const press = () => {
      if (!isSure) return sure(true);
      isSure = false;
      keep(run.dough === undefined ? noRun : { ...noRun, dough: run.dough });
    };
    return html`<button type="button" @click=${press} @blur=${() => sure(false)}>${
      isSure ? labels.clearSure : labels.anew
    }</button>`;
  };

  const draw = (): void => {
    if (!shown) return;
    const bench = shown;
    const dough = current();
    alert = bench.doughs
      .filter((one) => (leftOf(one) ?? Number.POSITIVE_INFINITY) <= leadSeconds)
      .map((one) => `${one.name}: ${runOf(one).next?.label ?? one.stop}.`)
      .join(' ');
    render(
      html`<header class="work-head">
          <p class="of" dir="auto">${bench.experiment}</p>
          ${anewPart(bench)}
          <button type="button" @click=${actions.leave}>${bench.labels.asSheet}</button>
        </header>
        ${doughsPart(bench)}
        ${
          dough === undefined
            ? html`<h1 tabindex="-1">${bench.labels.nothingToDo}</h1>`
            : html`<div class="moment">
                <div class="moment-head">
                  <h1 tabindex="-1" dir="auto">${dough.name}</h1>
                  ${dough.place === undefined ? nothing : html`<p class="when" dir="auto">${dough.place}</p>`}
                </div>
                ${dough.reason === undefined ? nothing : html`<p class="note" dir="auto">${dough.reason}</p>`}
                ${timerPart(bench, dough)} ${minutePart(bench, dough)} ${readingOf(bench, dough).root}
                ${plannedPart(bench, dough)}
              </div>`
        }
        <p class="spoken" role="alert">${alert}</p>`,
      root,
    );
    reading?.controls.tick();
  };

  return {
    root,
    step,
    tick() {
      if (shown !== undefined && Object.values(run.doughs).some(({ startedAt }) => startedAt !== undefined))
        draw();
    },
    clear() {
      shown = undefined;
      reading = undefined;
      render(nothing, root);
    },
    show(bench, shownIn, kept) {
      shown = bench;
      units = unitsOf(shownIn ?? plainDisplay);
      run = kept;
      draw();
    },
  };
}
