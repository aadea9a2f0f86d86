import { describe, expect, it } from 'vitest';
import { mixingStages } from '../../core/calc/mixing/development.ts';
import { createService } from '../../core/index.ts';
import { failed } from '../rules/failed.ts';
import { kitchen } from './kitchens.ts';

const uri = 'file:///quay/kitchen.dough';

/** All that is shown of a kitchen: figures for programs, and every text for people. */
function shown(text: string) {
  const service = createService({ failed });
  service.setText(uri, text);
  const lines = text.split('\n');
  const totals = service.totals(uri)[0]!;
  const formulaLine = lines.findIndex((line) => line.startsWith('formula'));
  const sheet = service.sheet(uri, formulaLine, {})!;
  const hovers = lines.flatMap((line, number) => {
    const column = line.length - line.trimStart().length + 1;
    const hover = service.hover(uri, number, column);
    return hover === undefined ? [] : [hover.markdown];
  });
  const hints = service.hints(uri, 0, lines.length).map((hint) => hint.label);
  return { totals, sheet, texts: [...hovers, ...hints, ...(totals.mixing?.outlook ?? [])] };
}

/** Temperatures in a sentence that are no difference: not behind a sign, `by`, `±`, or in a table of heat. */
function temperaturesIn(text: string): number[] {
  const sentences = text
    .split('\n')
    .filter((line) => !line.startsWith('|') && !line.startsWith('This line alone:'));
  return sentences.flatMap((line) =>
    [
      ...line.matchAll(
        /(?<!± |by |\+)(?<![\d.])(−|-)?(\d+(?:\.\d+)?) °C(?!\/min| (?:cooler|warmer|colder))/g,
      ),
    ].map(([, sign, figure]) => (sign === undefined ? 1 : -1) * Number(figure)),
  );
}

function expectBelievable(text: string): void {
  const { totals, sheet, texts } = shown(text);
  const { water, mixing } = totals;
  const within = (value: number | undefined, least: number, most: number): void => {
    if (value === undefined) return;
    expect(value).toBeGreaterThanOrEqual(least);
    expect(value).toBeLessThanOrEqual(most);
  };
  within(water?.celsius, 0, 60);
  within(water?.ruleOfThumbCelsius, 0, 30);
  within(water?.frictionCelsius, 0, 30);
  within(water?.withIce?.doughCelsius, 0, 45);
  if (water !== undefined && water.iceGrams !== undefined && water.tapGrams !== undefined)
    expect(water.iceGrams).toBeLessThanOrEqual(water.tapGrams * (1 + 1e-9));
  within(mixing?.endCelsius, 0, 45);
  let stage = 0;
  for (const point of mixing?.curve ?? []) {
    within(point.celsius, 0, 45);
    if (point.stage === undefined) continue;
    const next = mixingStages.indexOf(point.stage as (typeof mixingStages)[number]);
    expect(next).toBeGreaterThanOrEqual(stage);
    stage = next;
  }
  const bands = [mixing?.developedAfterMinutes, mixing?.letDownAfterMinutes, mixing?.breakdownAfterMinutes];
  for (const band of bands) if (band !== undefined) expect(band[0]).toBeLessThanOrEqual(band[1]!);
  for (const [index, band] of bands.entries()) {
    const before = bands[index - 1];
    if (band === undefined || before === undefined) continue;
    expect(band[0]).toBeGreaterThanOrEqual(before[0]!);
    expect(band[1]).toBeGreaterThanOrEqual(before[1]!);
  }
  // The room, the flour and what is written stand in hovers too: nothing shown may lie outside of what the file or a dough can have.
  for (const one of texts) for (const celsius of temperaturesIn(one)) within(celsius, 0, 260);
  for (const section of sheet.sections) expect(JSON.stringify(section)).not.toMatch(/NaN|Infinity/);

  // No two sentences contradict each other.
  const outlook = (mixing?.outlook ?? []).join(' ');
  const codes = totals.findings.map(({ code }) => code);
  const isAsWanted = /: (about )?as (is usual|wanted)\./.test(outlook);
  if (isAsWanted) expect(codes).not.toContain('too-warm');
  const all = texts.join('\n');
  if (isAsWanted) expect(all).not.toMatch(/It is too warm/);
  expect(all).not.toMatch(/\b0 min more\b/);
  if (codes.includes('too-warm')) expect(outlook).toMatch(/too warm/);
  if (codes.includes('under-developed')) expect(codes).not.toContain('mixed-past-need');
  for (const past of ['let-down', 'broken-down'])
    if (codes.includes(past)) expect(codes).not.toContain('under-developed');
}

describe('made-up kitchens', () => {
  const seeds = Array.from({ length: 40 }, (_, index) => index);
  it.each(seeds)('plausible, ten of them from seed %i', (seed) => {
    for (let one = 0; one < 10; one++) {
      const text = kitchen(1000 * seed + one, 'plausible');
      try {
        expectBelievable(text);
      } catch (error) {
        throw new Error(`${String(error)}\n${text}`);
      }
    }
  });
  it.each(seeds)('absurd, ten of them from seed %i', (seed) => {
    for (let one = 0; one < 10; one++) {
      const text = kitchen(1_000_000 + 1000 * seed + one, 'absurd');
      try {
        expectBelievable(text);
      } catch (error) {
        throw new Error(`${String(error)}\n${text}`);
      }
    }
  });
});
