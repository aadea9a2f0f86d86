import { describe, expect, it } from 'vitest';
import { gone, overLastGood } from '../../client/preview/last-good.ts';
import { placeFindings } from '../../client/preview/place-findings.ts';
import type { SheetFinding, SheetView } from '../../server/protocol.ts';
import {
  findingAtNothing,
  findingAtPhase,
  findingAtStep,
  findingAtWater,
  harbourTin,
  harbourTinHeld,
  withFindings,
} from './sheets.ts';

describe('where a finding stands', () => {
  it('is at the row, phase and step of its line, and under the heading where its line shows nowhere', () => {
    expect([...placeFindings(withFindings)]).toEqual([
      ['row 1 2', [findingAtWater]],
      ['phase 3', [findingAtPhase]],
      ['step 4', [findingAtStep]],
      ['heading', [findingAtNothing]],
    ]);
  });

  it.each([
    ['the block', 20, 'block 1'],
    ['the mixing', 19, 'mixing'],
    ['a fact no row stands for', 14, 'fact prefermented'],
    ['the block of a preferment, for what it says below its rows', 18, 'block 0'],
    ['the heading, for the header of the steps', 30, 'heading'],
    ['the heading, for the line of the formula itself', 0, 'heading'],
  ])('is %s', (_, line, place) => {
    expect([...placeFindings({ ...harbourTin, findings: [at(line)] }).keys()]).toEqual([place]);
  });

  it('is the trial or what comes of it, where its line is of those', () => {
    const sheet: SheetView = {
      ...harbourTin,
      yields: [{ key: 'baked', label: 'Baked', value: '18.8 kg', source: 'file', line: 1 }],
      trials: [
        {
          title: '2026-05-01',
          line: 40,
          notes: [],
          readings: [{ line: 44, when: 'end', measured: '25 °C' }],
        },
      ],
    };
    const placed = placeFindings({ ...sheet, findings: [at(1), at(40), at(44)] });
    expect([...placed]).toEqual([
      ['yield baked', [at(1)]],
      ['trial 0', [at(40), at(44)]],
    ]);
  });

  it('is one place only, though the line shows at several', () => {
    // The salt of line 9 is a row and a fact.
    const placed = placeFindings({ ...harbourTin, findings: [at(9), at(9)] });
    expect([...placed]).toEqual([['row 2 0', [at(9), at(9)]]]);
  });
});

describe('the last whole sheet under a held one', () => {
  const view = overLastGood(harbourTin, harbourTinHeld);

  it('keeps the figures and tells what holds now', () => {
    expect(view.state).toBe('held');
    expect(view.makes).toEqual(harbourTin.makes);
    expect(view.blocks[1]?.rows[2]?.weigh).toEqual(harbourTin.blocks[1]?.rows[2]?.weigh);
    expect(view.findings).toEqual(harbourTinHeld.findings);
  });

  it('keeps findings at their rows though lines were added above', () => {
    expect([...placeFindings(view).keys()]).toEqual(['row 1 2', 'heading']);
    expect(view.water?.line).toBe(9);
  });

  it('keeps what comes of it, its trials and its charts', () => {
    const trials = [{ title: '2026-05-01', line: 40, notes: [], readings: [] }];
    const chart = { kind: 'mixing', title: '', description: '', narrow: '', wide: '' } as const;
    const whole: SheetView = {
      ...harbourTin,
      yields: [{ key: 'baked', label: 'Baked', value: '18.8 kg', source: 'file', line: 1 }],
      cost: { text: '2 EUR a piece', rows: [] },
      trials,
      charts: [{ ...chart, table: { heads: [], rows: [] } }],
    };
    const now = { ...harbourTinHeld, trials: [{ ...trials[0]!, line: 41 }] };
    const kept = overLastGood(whole, now);
    expect(kept.yields).toEqual([{ key: 'baked', label: 'Baked', value: '18.8 kg', source: 'file' }]);
    expect(kept.cost).toEqual(whole.cost);
    expect(kept.charts).toEqual(whole.charts);
    expect(kept.trials[0]!.line).toBe(41);
  });

  it('lets no finding stand at a row that is gone from the file', () => {
    const without = { ...harbourTinHeld, blocks: harbourTinHeld.blocks.slice(0, 1) };
    const rows = overLastGood(harbourTin, without).blocks[1]?.rows ?? [];
    expect(rows.map((row) => row.line)).toEqual([gone, gone, gone, gone]);
  });
});

function at(line: number): SheetFinding {
  return { line, level: 'warning', code: 'any', message: 'Any.' };
}
