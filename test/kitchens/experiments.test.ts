import { describe, expect, it } from 'vitest';
import { mixingStages } from '../../core/calc/mixing/development.ts';
import { createService, experimentPage, type Service } from '../../core/index.ts';
import { withEdits } from '../../core/text/edits.ts';
import { failed } from '../rules/failed.ts';
import { madeUpClass } from './experiments.ts';
import { seeded } from './kitchens.ts';

const uri = 'file:///quay/class.dough';
const stages: readonly (string | undefined)[] = mixingStages;

function opened(text: string): Service {
  const service = createService({ failed });
  service.setText(uri, text);
  return service;
}

const viewOf = (service: Service) => service.experiments(uri)[0]!;

/** Whatever an experiment shows before anybody has read a thermometer. */
function expectPlanned(text: string): void {
  const service = opened(text);
  const view = viewOf(service);
  expect(service.findings(uri).filter(({ level }) => level === 'error')).toEqual([]);
  const pages = [{}, { blanks: true }, { hidden: true }].map((asked) =>
    experimentPage(view, service.speaker(), asked),
  );
  expect(JSON.stringify([view, pages])).not.toMatch(/NaN|Infinity|undefined/);
  expect(JSON.stringify(pages[2])).not.toMatch(/±|developed|breakdown/);
  const taken = new Map<string, number>();
  for (const { name, doughGrams, weights, readings, programmeMinutes = 0, reason } of view.doughs) {
    expect(reason, name).toBeUndefined();
    expect(weights.reduce((sum, { grams }) => sum + grams, 0)).toBeCloseTo(doughGrams!, 3);
    for (const one of weights) taken.set(one.name, (taken.get(one.name) ?? 0) + one.grams);
    let stage = 0;
    for (const one of readings) {
      if (one.minutes > programmeMinutes + 1e-6) continue;
      // What is not known says why.
      if (one.celsius === undefined) {
        expect(one.reason).toBeDefined();
        expect(pages[0]!.notes.join('\n')).toContain(name);
        continue;
      }
      expect(one.celsius).toBeGreaterThan(2);
      expect(one.celsius).toBeLessThanOrEqual(45);
      const place = (word: string | undefined): number => stages.indexOf(word);
      expect(place(one.stage)).toBeGreaterThanOrEqual(stage);
      expect(place(one.earliestStage)).toBeLessThanOrEqual(place(one.stage));
      expect(place(one.latestStage)).toBeGreaterThanOrEqual(place(one.stage));
      stage = place(one.stage);
    }
  }
  for (const { name, grams } of view.flours) expect(grams).toBeCloseTo(taken.get(name)!, 3);
  expect(view.waterGrams).toBeCloseTo(taken.get('water')!, 3);
  // One dough after another, each once, each under a name of its own that the hover has too.
  expect(new Set(view.order.map(({ dough }) => dough)).size).toBe(view.doughs.length);
  for (const [index, turn] of view.order.entries())
    expect(turn.beginsMinutes).toBeGreaterThanOrEqual(view.order[index - 1]?.endsMinutes ?? 0);
  const hover = service.hover(uri, view.line, 13)!.markdown;
  for (const { name } of view.doughs) expect(hover).toContain(`| ${name} |`);
  for (const dough of view.doughs) {
    const isOwn = !service.lines(uri)[dough.line]!.includes(',');
    const end = dough.readings.find(
      ({ minutes }) => Math.abs(minutes - (dough.programmeMinutes ?? 0)) < 1e-6,
    );
    const batch = service.lines(uri).some((line) => line.startsWith('  batch'));
    const mixing = service.totals(uri).find(({ formula }) => formula === dough.formula)?.mixing;
    if (isOwn && !batch && end !== undefined) expect(end.celsius).toBeCloseTo(mixing!.endCelsius!, 6);
  }
}

/** What readings of mixers that run otherwise come back as, and where what they teach leads. */
function expectRead(seed: number): void {
  const { believed, real } = madeUpClass(seed);
  const random = seeded(seed + 5000);
  const truth = viewOf(opened(real));
  const service = opened(believed);
  let logged = 0;
  for (const { name, readings } of truth.doughs.filter(() => random() < 0.6))
    for (const { minutes, celsius, stage } of readings) {
      if (celsius === undefined || random() < 0.2) continue;
      const seen = random() < 0.5 && stage !== undefined ? { stage } : {};
      const reading = { date: '2026-09-03', minutes, celsius: Math.round(celsius * 10) / 10, ...seen };
      const edits = service.logTested(uri, { experiment: 'Quay lesson', dough: name, reading });
      if ('refused' in edits) throw new Error(edits.refused);
      for (const one of edits) service.setText(uri, withEdits(service.lines(uri).join('\n'), one.edits));
      logged++;
    }
  const view = viewOf(service);
  // Not one is lost, and none stands at another dough.
  expect(view.doughs.reduce((sum, { measured }) => sum + measured.length, 0)).toBe(logged);
  expect(service.findings(uri).filter(({ level }) => level === 'error')).toEqual([]);
  for (const { readings, measured } of view.doughs)
    for (const one of measured) {
      const planned = readings.find(({ minutes }) => minutes === one.minutes)!;
      expect(one.celsius).toBeCloseTo(planned.celsius!, 1);
      expect(one.stage).toBe(planned.stage);
    }
  expect(view.lessons.join('\n')).not.toMatch(/NaN|undefined|\b0 to |at least 0 times/);
  // What is learned is written once, and then nothing is left to write.
  for (let round = 0; round < 6; round++) {
    const found = service
      .findings(uri)
      .find(({ code, fixes }) => /calibrated$/.test(code) && fixes.length > 0);
    if (found === undefined) return;
    for (const one of found.fixes[0]!.edits)
      service.setText(uri, withEdits(service.lines(uri).join('\n'), one.edits));
  }
  throw new Error('the hint never ends');
}

describe('made-up classes', () => {
  it.each(Array.from({ length: 12 }, (_, index) => index))('ten of them from seed %i, as planned', (seed) => {
    for (let one = 0; one < 10; one++) {
      const { believed } = madeUpClass(1000 * seed + one);
      try {
        expectPlanned(believed);
      } catch (error) {
        throw new Error(`${String(error)}\n${believed}`);
      }
    }
  });

  it.each(Array.from({ length: 12 }, (_, index) => index))('from seed %i, read', (seed) => {
    try {
      expectRead(2000 + seed);
    } catch (error) {
      throw new Error(`${String(error)}\n${madeUpClass(2000 + seed).believed}`);
    }
  });
});
