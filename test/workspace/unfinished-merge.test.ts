import { describe, expect, it } from 'vitest';
import { createService, type Service } from '../../core/index.ts';

// The lines of both sides stand in a text that git could not merge: whatever is added up of them is no bread of anybody.

const uri = 'file:///quay-lane/tin.dough';
const torn = `formula Quay Tin:
  yield 10 kg
  bread flour        100%
  water              65%
<<<<<<< ours
  salt               1.9%
=======
  salt               2.6%
>>>>>>> theirs
`;

function serviceOf(text: string): Service {
  const service = createService();
  service.setRoots(['file:///quay-lane/']);
  service.setText(uri, text);
  return service;
}
const totalsIn = (text: string) => serviceOf(text).totals(uri);

describe('a merge that is not finished', () => {
  it('has no figures, no weights and no findings but that it is one', () => {
    const service = serviceOf(torn);
    expect(totalsIn(torn)).toMatchObject([{ formula: 'Quay Tin', overall: [], parts: [], resolved: false }]);
    expect(totalsIn(torn)[0]).not.toHaveProperty('saltFraction');
    expect(service.findings(uri).map(({ code, place }) => [code, place.line])).toEqual([
      ['unreadable', 4],
      ['unreadable', 6],
      ['unreadable', 8],
    ]);
    const [sheet] = [service.sheet(uri, 0, {})];
    expect(sheet).toMatchObject({ state: 'held', heldBy: { line: 4 } });
    expect(JSON.stringify(sheet?.sections)).not.toContain('salt');
    expect(service.moment(uri, 'Quay Tin', 'tin.dough')).toMatchObject({ unfinishedMerge: true });
  });

  it('is none that a variant or a bread may be made of, and another formula of the file is as it was', () => {
    const more = `
formula Kid like Quay Tin:
  butter 2%

formula Takes It:
  bread flour 100%
  water 60%
  Quay Tin 20%

formula Alone:
  bread flour 100%
  water 60%
`;
    const service = serviceOf(torn + more);
    const told = service
      .totals(uri)
      .map(({ formula, resolved, hydration }) => [formula, resolved, hydration]);
    expect(told).toEqual([
      ['Quay Tin', false, undefined],
      ['Kid', false, undefined],
      ['Takes It', false, undefined],
      ['Alone', true, 0.6],
    ]);
    const line = (torn + more).split('\n').indexOf('formula Takes It:');
    expect(service.sheet(uri, line, {})).toMatchObject({
      state: 'held',
      heldBy: { line, message: expect.stringContaining('merge is not finished') },
    });
  });

  it('leaves alone what was measured, also where no programme says when the mixing ended', () => {
    const text = 'formula Quay Tin:\n  bread flour 100%\n  water 60%\n\ntrial 2026-03-14:\n  end 26.2 °C\n';
    expect(serviceOf(text).moment(uri, 'Quay Tin', 'tin.dough')?.trials).toEqual([
      { title: '2026-03-14', date: '2026-03-14', measuredCelsius: 26.2 },
    ]);
  });

  it('is worked out again as soon as somebody has decided', () => {
    const decided = torn.replace(/<<<<<<<[\s\S]*=======\n/, '').replace(/>>>>>>>.*\n/, '');
    expect(totalsIn(decided)[0]?.saltFraction).toBeCloseTo(0.026, 9);
  });
});
