import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { createService, type SheetOptions, type SheetView } from '../../core/index.ts';

const folder = join(import.meta.dirname, '..', '..', 'examples');
const uri = 'file:///quay-lane/formulas/ferry-loaf.dough';

describe('trials on the sheet', () => {
  it('stand in the order of the file, each reading at its line beside what is computed for its minute', () => {
    const { text, view } = ferry();
    const lines = text.split('\n');
    expect(view.trials.map(({ title }) => title)).toEqual(['2026-02-11', '2026-03-18, warmer water']);
    for (const { title, line, readings } of view.trials) {
      expect(lines[line]).toBe(`trial ${title}:`);
      for (const { line: at, measured, when } of readings) {
        expect(lines[at]).toContain(`${Number.parseFloat(measured)}`);
        expect(lines[at]).toMatch(when === 'end' ? /^ +end / : new RegExp(`^ +at ${when} `));
      }
    }
  });

  it('say by how much they differ, warmer or colder, and both stages', () => {
    for (const { readings } of ferry().view.trials) {
      for (const { measured, workedOut, difference, stageWorkedOut } of readings) {
        const miss = Number.parseFloat(measured) - Number.parseFloat(workedOut!);
        const told = difference === 'as computed' ? 0 : Number.parseFloat(difference!);
        // Each figure is rounded to a tenth by itself.
        expect(Math.abs(Math.abs(miss) - told)).toBeLessThan(0.11);
        if (Math.abs(miss) > 0.15) expect(difference).toContain(miss > 0 ? 'warmer' : 'colder');
        expect(stageWorkedOut).toMatch(/^[a-z-]+$/);
      }
    }
  });

  it('tell the loss of weight read as water', () => {
    const [first] = ferry().view.trials;
    expect(first!.notes.join(' ')).toContain('78 g of 25.18 kg were missing');
    expect(first!.notes.join(' ')).toContain(
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
    const [trial] = service.sheet(uri, 0, {})!.trials;
    expect(trial!.readings).toEqual([{ line: 4, when: '4 min', measured: '21 °C' }]);
    expect(trial!.notes[0]).toMatch(/^Nothing to set beside the readings: /);
  });

  it('are none where the formula has none', () => {
    const service = createService();
    service.setText(uri, 'formula Tide Mill:\n  bread flour 100%\n');
    expect(service.sheet(uri, 0, {})!.trials).toEqual([]);
  });
});

function ferry(asked: SheetOptions = {}): { text: string; view: SheetView } {
  const service = createService();
  for (const name of ['bakery', 'flours', 'mixers'])
    service.setText(`file:///quay-lane/${name}.dough`, readFileSync(join(folder, `${name}.dough`), 'utf8'));
  const text = readFileSync(join(folder, 'formulas', 'ferry-loaf.dough'), 'utf8');
  service.setText(uri, text);
  const line = text.split('\n').findIndex((one) => one.startsWith('formula'));
  return { text, view: service.sheet(uri, line, asked)! };
}
