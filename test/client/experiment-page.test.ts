import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { dayOf } from '../../client/clock.ts';
import type {
  BenchRun,
  ExperimentMode,
  FromExperiment,
  ToExperiment,
} from '../../client/experiment/messages.ts';
import { nextReading, started, stopped } from '../../client/experiment/runs.ts';
import type { BenchDough, ExperimentPageOptions } from '../../server/protocol.ts';
import { launchChromium } from '../editors/code-server.ts';
import { demoExperiment } from './experiments.ts';
import { axeViolations, sideways, smallTargets } from './look.ts';
import { openWebview, type PanelOptions, type Webview } from './panel-page.ts';
import { type ThemeName, themes } from './themes.ts';

let browser: Browser;
let panel: Webview<FromExperiment, ToExperiment>;
beforeAll(async () => {
  browser = await launchChromium();
});
afterAll(() => browser.close());
afterEach(async () => {
  const { wrong } = panel;
  await panel.page.close();
  expect(wrong).toEqual([]);
});

interface Opened {
  readonly mode?: ExperimentMode;
  readonly run?: BenchRun;
  readonly sheet?: ExperimentPageOptions;
  readonly change?: (text: string) => string;
}

async function open(
  { mode = 'sheet', run, sheet, change }: Opened = {},
  options: PanelOptions = {},
): Promise<Page> {
  panel = await openWebview(browser, 'client/experiment/page.ts', options);
  const shown = demoExperiment(sheet, change);
  await panel.send(run ? { ...shown, run } : shown);
  await panel.send({ type: 'mode', mode });
  return panel.page;
}

const lastRun = () => panel.sent.findLast((message) => message.type === 'run')?.run;
const readings = () => panel.sent.filter((message) => message.type === 'reading');

describe('the sheet of an experiment', () => {
  it('shows what the command line prints: expected, to fetch, order, weights, results, lessons', async () => {
    const page = await open();
    const plain = (words: string) => words.replaceAll(/\s+/g, ' ');
    const text = plain((await page.locator('#sheet').textContent()) ?? '');
    const { page: core } = demoExperiment();
    for (const { title, rows, notes = [] } of core.tables)
      for (const said of [title, ...rows.flat(), ...notes]) expect(text).toContain(plain(said));
    expect(await page.locator('.chart svg').count()).toBe(2);
  });

  it('asks for room to write and for hidden predictions, and keeps the key that was pressed in focus', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'Predictions hidden' }).click();
    await expect.poll(() => panel.sent.at(-1)).toEqual({ type: 'sheet', sheet: { hidden: true } });
    await panel.send(demoExperiment({ hidden: true }));
    const hidden = page.getByRole('button', { name: 'Predictions hidden' });
    expect(await hidden.getAttribute('aria-pressed')).toBe('true');
    expect(await page.evaluate('document.activeElement.id')).toBe('hidden');
    expect(await page.locator('#sheet').textContent()).not.toMatch(/±/);
    expect(await page.locator('td.blank').count()).toBeGreaterThan(20);
  });

  it('keeps what it is about for a reload, and shows nothing of that', async () => {
    const page = await open();
    const before = await page.locator('#sheet').textContent();
    const about = { place: { uri: 'file:///bench.dough', line: 3 }, mode: 'sheet', sheet: {} };
    await panel.send({ type: 'about', about } as never);
    expect(await page.evaluate(`JSON.parse(sessionStorage.getItem('state'))`)).toEqual(about);
    expect(await page.locator('#sheet').textContent()).toBe(before);
  });

  it('says what to do where there is none', async () => {
    const page = await open();
    await panel.send({
      type: 'none',
      what: 'There is no experiment here.',
      cure: 'Put the cursor into one.',
    });
    expect(await page.locator('h1:visible').textContent()).toBe('There is no experiment here.');
    expect(await page.getByRole('button').count()).toBe(0);
  });
});

describe('the bench', () => {
  it('has the doughs in the order in which they are mixed, led through by keys', async () => {
    const page = await open({ mode: 'bench' });
    const names = await page.getByRole('group', { name: 'Doughs' }).getByRole('button').allTextContents();
    expect(names).toEqual(['Bench White', 'Bench Wet', 'Bench Wholemeal', 'Bench White by Hand']);
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Bench White');
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.bench h1').textContent()).toBe('Bench Wet');
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    expect(await page.locator('.bench h1').textContent()).toBe('Bench White');
    await expect.poll(() => lastRun()?.dough).toBe('Bench White');
  });

  it('runs one timer a dough and says when to stop each', async () => {
    const page = await open({ mode: 'bench' });
    await page.getByRole('button', { name: 'Mixing begins' }).click();
    await page.keyboard.press('ArrowRight');
    await page.getByRole('button', { name: 'Mixing begins' }).click();
    const started = () => Object.keys(lastRun()?.doughs ?? {});
    await expect.poll(started).toEqual(['Bench White', 'Bench Wet']);
    const { doughs } = lastRun()!;
    // Ten seconds before eight minutes.
    expect(doughs['Bench Wet']?.next).toEqual({ label: 'Stop the mixer, reading at 8 min', seconds: 470 });
    expect(await page.locator('.bench .ends').textContent()).toMatch(
      /^Stop the mixer in (8:00|7:5\d) · reading at 8 min$/,
    );
  });

  it('says aloud, once, that a mixer is to be stopped, whichever dough is shown', async () => {
    const run: BenchRun = {
      dough: 'Bench Wet',
      doughs: {
        'Bench White': {
          ...{ before: 0, startedAt: Date.now() - 485_000 },
          next: { label: 'Stop the mixer, reading at 8 min', seconds: 470 },
        },
      },
    };
    const page = await open({ mode: 'bench', run });
    expect(await page.getByRole('alert').textContent()).toBe(
      'Bench White: Stop the mixer, reading at 8 min.',
    );
    expect(await page.locator('.other-timer.over').textContent()).toBe('Bench White: Stop the mixer now');
    await page.locator('.other-timer.over').click();
    await page.getByRole('button', { name: 'Stopped' }).click();
    expect(await page.getByRole('alert').textContent()).toBe('');
    await expect.poll(() => lastRun()?.doughs['Bench White']?.before).toBeGreaterThanOrEqual(485);
    expect(lastRun()?.doughs['Bench White']).toEqual({ before: expect.any(Number) });
    expect(await page.locator('.bench .ends').textContent()).toBe('reading at 16 min');
  });

  it('logs a reading with two taps, at the minute of the timer, and adds further words to it', async () => {
    const run: BenchRun = { doughs: { 'Bench White': { before: 484 } } };
    const page = await open({ mode: 'bench', run });
    await page.getByRole('button', { name: '23.5 °C', exact: true }).click();
    await page.getByRole('button', { name: 'smooth' }).click();
    const reading = {
      date: dayOf(new Date()),
      minutes: 8,
      celsius: 23.5,
      said: '23.5 °C, smooth',
      feel: ['smooth'],
    };
    await expect
      .poll(() => readings())
      .toMatchObject([{ dough: 'Bench White', experiment: 'How long is too long', reading }]);
    await page.getByRole('button', { name: 'clears the bowl' }).click();
    await expect.poll(() => readings().at(-1)?.reading.feel).toEqual(['smooth', 'clears the bowl']);
    await page.getByRole('button', { name: 'developing', exact: true }).click();
    await expect
      .poll(() => readings().at(-1)?.reading)
      .toMatchObject({
        stage: 'developing',
        feel: ['smooth', 'clears the bowl'],
      });
    await page.getByRole('button', { name: 'smooth' }).click();
    await expect
      .poll(() => readings().at(-1)?.reading)
      .toMatchObject({
        minutes: 8,
        celsius: 23.5,
        feel: ['clears the bowl'],
      });
    // Another minute is another reading.
    await page.getByRole('button', { name: '16 min', exact: true }).click();
    await page.getByRole('button', { name: 'shiny' }).click();
    await expect.poll(() => readings()).toHaveLength(4);
    expect(await page.locator('.reading-told').textContent()).toBe(
      'First the temperature, or that none was taken, then the stage or the feel.',
    );
  });

  it('logs what was seen alone where no temperature was taken, and asks for something seen', async () => {
    const page = await open({ mode: 'bench' });
    await page.getByRole('button', { name: '8 min', exact: true }).click();
    const none = page.getByRole('button', { name: 'not taken' });
    await none.click();
    expect(await none.getAttribute('aria-pressed')).toBe('true');
    await page.getByRole('button', { name: 'no stage' }).click();
    expect(readings()).toEqual([]);
    expect(await page.locator('.reading-told').textContent()).toContain('First the temperature');
    await page.getByRole('button', { name: 'smooth' }).click();
    await expect.poll(() => readings()).toHaveLength(1);
    expect(readings()[0]!.reading).toEqual({
      ...{ date: dayOf(new Date()), minutes: 8, said: 'smooth', feel: ['smooth'] },
    });
    expect(await none.getAttribute('aria-pressed')).toBe('false');
    await page.getByRole('button', { name: 'shiny' }).click();
    await expect.poll(() => readings().at(-1)?.reading.feel).toEqual(['smooth', 'shiny']);
  });

  it('logs nothing before mixing has begun, unless a minute is chosen', async () => {
    const page = await open({ mode: 'bench' });
    await page.getByRole('button', { name: '23.5 °C', exact: true }).click();
    await page.getByRole('button', { name: 'smooth' }).click();
    expect(readings()).toEqual([]);
    expect(await page.locator('.reading-told').textContent()).toBe(
      'First let mixing begin, or choose the minute of the reading.',
    );
    await page.getByRole('button', { name: '30 min', exact: true }).click();
    await page.getByRole('button', { name: '27.5 °C', exact: true }).click();
    await page.getByRole('button', { name: 'no stage' }).click();
    await expect
      .poll(() => readings())
      .toMatchObject([{ reading: { minutes: 30, celsius: 27.5, said: '27.5 °C' } }]);
  });

  it('keeps the water as it was drawn for all readings of a dough', async () => {
    const page = await open({ mode: 'bench' });
    await page.getByLabel('Water as drawn, °C').fill('8.5');
    await expect.poll(() => lastRun()?.doughs['Bench White']?.waterCelsius).toBe(8.5);
    await page.getByRole('button', { name: '8 min', exact: true }).click();
    await page.getByRole('button', { name: '24 °C', exact: true }).click();
    await page.getByRole('button', { name: 'sticky' }).click();
    await expect.poll(() => readings()).toMatchObject([{ reading: { waterCelsius: 8.5 } }]);
  });

  it('keeps what is typed while the file changes under it, and shows what came into it', async () => {
    const run: BenchRun = { doughs: { 'Bench White': { before: 480 } } };
    const page = await open({ mode: 'bench', run });
    await page.getByLabel('or °C').fill('23.7');
    const today = dayOf(new Date());
    const change = (text: string) => text.replace('trial 2026-04-11:', `trial ${today}:`);
    await panel.send({ ...demoExperiment({}, change), run });
    expect(await page.getByLabel('or °C').inputValue()).toBe('23.7');
    expect(await page.locator('.planned li').first().locator('strong').textContent()).toMatch(/^23\.5 °C, /);
    await page.getByRole('button', { name: 'smooth' }).click();
    await expect.poll(() => readings()).toMatchObject([{ reading: { celsius: 23.7 } }]);
  });

  it('gives nothing away at the bench of a class', async () => {
    const page = await open({ mode: 'bench', sheet: { hidden: true } });
    expect(await page.locator('.bench').textContent()).not.toMatch(/±|expected/);
  });

  it('clears its timers when asked twice', async () => {
    const page = await open({ mode: 'bench', run: { doughs: { 'Bench Wet': { before: 60 } } } });
    await page.getByRole('button', { name: 'Begin anew' }).click();
    await page.getByRole('button', { name: 'Clear all timers of this experiment?' }).click();
    await expect.poll(() => lastRun()).toEqual({ doughs: {} });
  });

  it('leads back to the sheet', async () => {
    const page = await open({ mode: 'bench' });
    await page.getByRole('button', { name: 'Back to its sheet' }).click();
    await expect.poll(() => panel.sent.at(-1)).toEqual({ type: 'mode', mode: 'sheet' });
    expect(await page.evaluate('document.activeElement.id')).toBe('run');
  });
});

describe('in every theme and width', () => {
  const run: BenchRun = { doughs: { 'Bench White': { before: 0, startedAt: Date.now() - 475_000 } } };
  for (const theme of Object.keys(themes) as ThemeName[])
    for (const mode of ['sheet', 'bench'] as const)
      it(`breaks no rule of accessibility and nothing sideways, ${mode}, ${theme}`, async () => {
        const page = await open({ mode, run }, { theme, width: 460 });
        expect(await axeViolations(page)).toEqual([]);
        expect(await smallTargets(page)).toEqual([]);
        expect(await sideways(page)).toBe(0);
        await page.setViewportSize({ width: 320, height: 800 });
        expect(await sideways(page)).toBe(0);
      });
});

describe('the timer of a dough', () => {
  const dough: BenchDough = {
    ...{ name: 'White', stop: 'Stop the mixer', logged: [] },
    readings: [8, 16, 30].map((minutes) => ({ minutes, expected: '' })),
  };

  it('counts only while it mixes, and takes a stop shortly before a reading for that reading', () => {
    const begun = started({ before: 0 }, 1_000_000);
    expect(nextReading(dough, begun)).toBe(8);
    const still = stopped(begun, 1_000_000 + 468_000);
    expect(still).toEqual({ before: 468 });
    expect(nextReading(dough, still)).toBe(16);
    const early = stopped(begun, 1_000_000 + 240_000);
    expect(nextReading(dough, early)).toBe(8);
    const on = started(still, 2_000_000);
    expect(stopped(on, 2_000_000 + 12_000).before).toBe(480);
  });
});
