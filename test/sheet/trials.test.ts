import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createService, type SheetOptions } from '../../core/index.ts';
import { partsOf } from './parts.ts';

const folder = join(import.meta.dirname, '..', '..', 'examples');
const uri = 'file:///quay-lane/formulas/ferry-loaf.dough';

describe('trials on the sheet', () => {
  it('stand in the order of the file, each reading at its line beside what is computed for its minute', () => {
    const { text, view } = ferry();
    const lines = text.split('\n');
    expect(view.trials.map(({ title }) => title)).toEqual([
      'Trial 2026-02-11',
      'Trial 2026-03-18, warmer water',
    ]);
    for (const { title, line, rows } of view.trials) {
      expect(lines[line!]).toBe(`${title.toLowerCase()}:`);
      for (const { line: at, cells, name } of rows) {
        expect(lines[at!]).toContain(`${Number.parseFloat(cells.measured!.text)}`);
        expect(lines[at!]).toMatch(name === 'end' ? /^ +end / : new RegExp(`^ +at ${name} `));
      }
    }
  });

  it('say by how much they differ, warmer or colder, and both stages', () => {
    for (const { rows } of ferry().view.trials) {
      for (const { cells } of rows) {
        const [measured, computed, off] = [cells.measured!.text, cells.computed!.text, cells.off!.text];
        const miss = Number.parseFloat(measured) - Number.parseFloat(computed);
        const told = off === 'as computed' ? 0 : Number.parseFloat(off);
        // Each figure is rounded to a tenth by itself.
        expect(Math.abs(Math.abs(miss) - told)).toBeLessThan(0.11);
        if (Math.abs(miss) > 0.15) expect(off).toContain(miss > 0 ? 'warmer' : 'colder');
        expect(computed).toMatch(/°C [a-z-]+$/);
      }
    }
  });

  it('tell the loss of weight read as water', () => {
    const [first] = ferry().view.trials;
    expect(first!.notes!.join(' ')).toContain('78 g of 25.18 kg were missing');
    expect(first!.notes!.join(' ')).toContain(
      'Were all of it water, the hydration would have fallen from 67%',
    );
  });

  it('stay what they were when another size and another room are tried', () => {
    const asked: SheetOptions = { size: { by: 'pieces', pieces: 80 }, today: { roomCelsius: 28 } };
    expect(ferry(asked).view.trials).toEqual(ferry().view.trials);
  });

  it('say why nothing stands beside a reading', () => {
    const service = createService();
    service.setText(
      uri,
      'formula Tide Mill:\n  bread flour 100%\n  water 65%\ntrial 2026-05-01:\n  at 4 min 21 °C\n',
    );
    const [trial] = partsOf(service.sheet(uri, 0, {})!).trials;
    const [{ line, name, cells }] = trial!.rows as [(typeof trial & object)['rows'][number]];
    expect({ line, name, ...cells }).toEqual({
      ...{ line: 4, name: '4 min', measured: { text: '21 °C' } },
      ...{ computed: { text: '' }, off: { text: '' } },
    });
    expect(trial!.notes![0]).toMatch(/^Nothing to set beside the readings: /);
  });

  it('show how a dough felt, beside its stage or in its place', () => {
    const service = createService();
    service.setText(
      uri,
      'formula Tide Mill:\n  bread flour 100%\n  water 65%\ntrial 2026-05-01:\n  at 4 min 21 °C, shiny, smooth\n  at 6 min 22 °C, developing, sticky\n',
    );
    const [trial] = partsOf(service.sheet(uri, 0, {})!).trials;
    expect(trial!.rows.map(({ cells }) => cells.measured?.text)).toEqual([
      '21 °C, smooth, shiny',
      '22 °C developing, sticky',
    ]);
  });

  it('are none where the formula has none', () => {
    const service = createService();
    service.setText(uri, 'formula Tide Mill:\n  bread flour 100%\n');
    expect(partsOf(service.sheet(uri, 0, {})!).trials).toEqual([]);
  });
});

function ferry(asked: SheetOptions = {}): { text: string; view: ReturnType<typeof partsOf> } {
  const service = createService();
  for (const name of ['bakery', 'flours', 'mixers'])
    service.setText(`file:///quay-lane/${name}.dough`, readFileSync(join(folder, `${name}.dough`), 'utf8'));
  const text = readFileSync(join(folder, 'formulas', 'ferry-loaf.dough'), 'utf8');
  service.setText(uri, text);
  const line = text.split('\n').findIndex((one) => one.startsWith('formula'));
  return { text, view: partsOf(service.sheet(uri, line, asked)!) };
}
