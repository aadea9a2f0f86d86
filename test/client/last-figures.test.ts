import { describe, expect, it } from 'vitest';
import { lastFigures } from '../../client/preview/last-figures.ts';
import type { SheetFinding } from '../../server/protocol.ts';
import { partsOf, placesOf, tablesIn, withFound } from '../sheet/parts.ts';
import { computedSheet } from './computed-sheets.ts';
import { harbourTin, harbourTinHeld } from './sheets.ts';

describe('the last whole sheet under a held one', () => {
  const view = lastFigures(harbourTin, harbourTinHeld);

  it('keeps the figures and tells what holds now', () => {
    expect(view.state).toBe('held');
    expect(view.makes).toEqual(harbourTin.makes);
    const weights = (sheet: typeof view) =>
      tablesIn(sheet.sections, 'bowl', 'later').map(({ rows }) => rows.map(({ cells }) => cells));
    expect(weights(view)).toEqual(weights(harbourTin));
    expect(view.findings).toEqual(harbourTinHeld.findings);
  });

  it('keeps findings at their rows though lines were added above', () => {
    expect(placesOf(view)).toEqual([
      ['bowl/water', [9]],
      ['heading', [5]],
    ]);
    expect(tablesIn(view.sections, 'bowl')[0]!.rows.map(({ line }) => line)).toEqual([7, 8, 9, 14]);
  });

  it('keeps what comes of it, its trials and its charts', () => {
    const whole = computedSheet('Ferry Loaf');
    const held = { ...whole, state: 'held', sections: [], makes: [] } as const;
    const [before, after] = [whole, lastFigures(whole, held)].map(partsOf);
    expect(after!.charts).toEqual(before!.charts);
    expect(after!.yields.map(({ value }) => value)).toEqual(before!.yields.map(({ value }) => value));
    expect(after!.cost).toEqual(before!.cost);
    expect(after!.trials.map(({ rows }) => rows.map(({ cells }) => cells))).toEqual(
      before!.trials.map(({ rows }) => rows.map(({ cells }) => cells)),
    );
  });

  it('has no line for what is gone from the file, and no finding at it', () => {
    const without = { ...harbourTinHeld, sections: harbourTinHeld.sections.slice(0, 1) };
    const [bowl] = tablesIn(lastFigures(harbourTin, without).sections, 'bowl');
    expect(bowl!.rows.map(({ line, findings }) => [line, findings])).toEqual(
      bowl!.rows.map(() => [undefined, undefined]),
    );
  });

  it('tells below the heading what was found at a node that it does not have', () => {
    const at = (line: number): SheetFinding => ({ line, level: 'hint', code: 'any', message: 'Any.' });
    const sections = harbourTin.sections.filter(({ name }) => name !== 'clock');
    const kept = lastFigures({ ...harbourTin, sections }, withFound(harbourTinHeld, [at(6), at(32)]));
    expect(placesOf(kept)).toEqual([['heading', [6, 32]]]);
  });
});
