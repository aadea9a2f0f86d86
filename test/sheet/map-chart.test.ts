import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createService, type MapOptions, type MapView, mapAxes, writeMaps } from '../../core/index.ts';
import { loadLanguage } from '../../core/words/languages.ts';
import { kitchen } from '../kitchens/kitchens.ts';
import { drawnTexts, layoutFaults, strangeParts } from './drawings.ts';

const examples = join(import.meta.dirname, '..', '..', 'examples');
const files = ['bakery', 'flours', 'mixers', 'stores'].map((name) => `${name}.dough`);
const german = await loadLanguage('de');

function demo(formula: string, asked: MapOptions = {}): MapView {
  const service = createService();
  for (const name of [...files, `formulas/${formula}.dough`])
    service.setText(`file:///quay/${name}`, readFileSync(join(examples, name), 'utf8'));
  const uri = `file:///quay/formulas/${formula}.dough`;
  const line = service.symbols(uri).find(({ kind }) => kind === 'formula')!.place.line;
  return service.map(uri, line, asked)!;
}

function kitchenMap(text: string, asked: MapOptions, inGerman: boolean): MapView {
  const service = createService();
  if (inGerman) service.setSettings({ language: german });
  service.setText('file:///quay/a.dough', text);
  const line = text.split('\n').findIndex((one) => one.startsWith('formula'));
  return service.map('file:///quay/a.dough', line, asked)!;
}

const formulas = readdirSync(join(examples, 'formulas')).map((name) => name.replace('.dough', ''));

describe('the map of the gap as a drawing', () => {
  it.each(formulas)('%s: nothing in it stands on anything else, on any axis', (formula) => {
    for (const against of mapAxes) {
      const { chart, none } = demo(formula, { against });
      expect(chart === undefined).toBe(none !== undefined);
      if (chart === undefined) continue;
      for (const svg of [chart.narrow, chart.wide])
        expect([...layoutFaults(svg), ...strangeParts(svg)]).toEqual([]);
    }
  });

  it('stays so in any kitchen, in English and in German', () => {
    let count = 0;
    for (let seed = 0; seed < 12; seed++)
      for (const kind of ['plausible', 'absurd'] as const)
        for (const against of mapAxes) {
          const { chart } = kitchenMap(kitchen(seed, kind), { against }, seed % 2 === 1);
          if (chart === undefined) continue;
          count++;
          for (const svg of [chart.narrow, chart.wide])
            expect([...layoutFaults(svg), ...strangeParts(svg)], `${kind} ${seed} ${against}`).toEqual([]);
        }
    expect(count).toBeGreaterThan(40);
  });

  it('holds its title and its description, and the words of its zones in their places or in its key', () => {
    const { chart, sentences } = demo('ferry-loaf');
    expect(chart!.wide).toContain(`<title>${chart!.title}</title>`);
    expect(chart!.description).toBe(sentences.join(' '));
    const texts = drawnTexts(chart!.wide).map(({ text }) => text);
    for (const word of ['not yet developed', 'developed', 'let-down', 'breakdown'])
      expect(texts).toContain(word);
    expect(texts).toContain('this formula: 67%, 32 min');
    expect(texts).toContain('above 26.5 °C: too warm');
  });

  it('sets the mark and the too-warm line where the figures say', () => {
    const { chart, data } = demo('ferry-loaf');
    const axis = drawnTexts(chart!.wide);
    const middle = (text: string): number => {
      const found = axis.find((one) => one.text === text)!;
      return (found.left + found.right) / 2;
    };
    const perMinute = (middle('40 min') - middle('10 min')) / 30;
    const x = (minutes: number): number => middle('10 min') + (minutes - 10) * perMinute;
    const mark = /<circle cx="([\d.]+)"[^>]*class="own-mark"/.exec(chart!.wide)!;
    expect(Math.abs(Number(mark[1]) - x(data!.mark.minutes))).toBeLessThan(0.5);
    const warm = /<polyline points="([^"]*)"[^>]*class="too-warm"/.exec(chart!.wide)![1]!.split(' ');
    const shown = data!.rows.filter(({ tooWarmMinutes }) => tooWarmMinutes !== undefined);
    expect(warm).toHaveLength(shown.length);
    for (const [index, point] of warm.entries())
      expect(Math.abs(Number(point.split(',')[0]) - x(shown[index]!.tooWarmMinutes!))).toBeLessThan(0.5);
  });
});

describe('a formula that wishes another degree of mixing', () => {
  it('has a line for it, and a sentence', () => {
    const text =
      'formula Quay Tin:\n  yield 20 kg\n  bread flour 100%\n  water 65%\n\nmix in spiral:\n  develop short\n  load all\n  speed 1 for 6 min\n';
    const { chart, sentences } = kitchenMap(text, {}, false);
    expect(sentences.join(' ')).toMatch(/It is mixed as wished, a short mix, from about [\d.–]+ min\./);
    expect(chart!.wide).toContain('class="wished"');
    expect([...layoutFaults(chart!.wide), ...strangeParts(chart!.wide)]).toEqual([]);
  });
});

describe('the map of the gap written', () => {
  const view = demo('slack-water-brown');
  const service = createService();

  it('has in its table the formula itself, and both ends of the map', () => {
    const { rows } = view.chart!.table;
    expect(rows.filter(([name]) => name!.includes('(this formula)'))).toHaveLength(1);
    expect(rows[0]![0]).toBe(`${Math.round(view.data!.rows.at(-1)!.value * 1000) / 10}%`);
    expect(rows.length).toBeLessThanOrEqual(11);
  });

  it('draws in letters what the grid holds', () => {
    const text = writeMaps([view], 'text', service.speaker());
    const own = text.split('\n').find((line) => line.includes('@'))!;
    const letters = own.slice(own.indexOf('.'));
    expect(letters.indexOf('@') + 1).toBe(Math.ceil((view.data!.mark.minutes / view.data!.lastMinute) * 60));
    expect(letters.replace(/[@+|]/g, '')).toMatch(/^\.+o+\/*#+$/);
  });

  it('gives programs every row and its grid', () => {
    const [told] = JSON.parse(writeMaps([view], 'json', service.speaker())) as [
      { version: number; line: number; rows: { cells: { zone: string; minutes: number }[] }[] },
    ];
    expect(told.version).toBe(1);
    expect(told.rows).toHaveLength(40);
    expect(told.rows.every(({ cells }) => cells.length === 80)).toBe(true);
    const records = writeMaps([view], 'csv', service.speaker()).trim().split('\r\n');
    expect(records).toHaveLength(41);
    expect(records.filter((one) => one.includes(',yes,'))).toHaveLength(1);
  });

  it('is a drawing of its own, black on white', () => {
    const svg = writeMaps([view], 'svg', service.speaker());
    expect(svg).toMatch(/^<svg color="black" /);
    expect(svg).toMatch(/<\/desc><rect width="100%" height="100%" fill="white"\/>/);
  });
});
