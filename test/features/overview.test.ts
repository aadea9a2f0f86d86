import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { createService } from '../../core/index.ts';
import { projectFolder } from '../editors/places.ts';

it('the overview tells what the files define, each with what tells it from its neighbours', () => {
  const service = createService();
  const folder = join(projectFolder, 'examples');
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort()) {
    if (name.endsWith('.dough')) service.setText(`file:///${name}`, readFileSync(join(folder, name), 'utf8'));
  }
  const told = service.overview().map(({ kind, name, detail }) => `${kind} ${name}: ${detail}`);
  expect(told).toContain('bakery Quay Lane: room 21 °C · flour 19 °C · tap water 12 °C');
  expect(told).toContain('flour strong white: wheat · white · 12.6% protein');
  expect(told).toContain('mixer big spiral: spiral · 12 kg to 60 kg');
  expect(told).toContain('plan Saturday market: ready 2026-05-16 06:30 · 5 formulas');
  // 40 × 620 g and 1.5 % lost is 25.18 kg in the bowl (baker's arithmetic, common practice, no source).
  expect(told).toContain('formula Ferry Loaf: 67% hydration · 25.18 kg dough');
  for (const { uri, line, name } of service.overview()) {
    const text = readFileSync(join(folder, uri.replace('file:///', '')), 'utf8').split('\n')[line];
    expect(text).toContain(name);
  }
});

it('the overview follows a change, and leaves half-typed headers out', () => {
  const service = createService();
  service.setText('file:///a.dough', 'formula Tin:\n  bread flour 100%\n  water 60%\n\nplan\n\nflour :\n');
  expect(service.overview().map(({ name }) => name)).toEqual(['Tin']);
  service.setText('file:///a.dough', 'formula Tin:\n  bread flour 100%\n  water 70%\n');
  expect(service.overview()[0]?.detail).toContain('70% hydration');
  service.remove('file:///a.dough');
  expect(service.overview()).toEqual([]);
});

it.each(createService().templates())('a new formula begins sound: $title', ({ id }) => {
  for (const name of ['Slipway 7-Grain', '<b>Tin</b>: half "light"', '  ', 'mix']) {
    const service = createService();
    const text = service.newFormula(name, id);
    service.setText('file:///new.dough', text);
    expect(service.findings('file:///new.dough').filter(({ level }) => level !== 'hint')).toEqual([]);
    const [entry] = service.overview();
    expect(entry?.detail).toMatch(/6[68]% hydration/);
    if (name.startsWith('Slip')) expect(entry?.name).toBe(name);
  }
});
