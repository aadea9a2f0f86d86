import { describe, expect, it } from 'vitest';
import { applied, findingsOf } from './findings.ts';

const warm = (bulk: string): string =>
  'bakery Quay Lane:\n  room 32 °C\n  flour 32 °C\n\nmixer home hook:\n  kind planetary\n  speed 1 60 rpm\n  speed 6 250 rpm\n\n' +
  'formula Quay Tin:\n  yield 4 kg\n  dough temperature 24 °C\n  strong white  100%\n  water  60%, at 2 °C\n  salt  2%\n\n' +
  `mix in home hook:\n  load flour, water, salt\n  speed 1 for 4 min\n  speed 6 for 10 min\n\nprocess:\n  bulk ${bulk} at 25 °C\n  divide\n`;

const tooWarm = (text: string) =>
  findingsOf([{ path: 'a.dough', text }]).find(({ code }) => code === 'too-warm');

describe('a dough too warm before it is developed', () => {
  it('can be mixed short and folded in its bulk, after which it is not too warm', () => {
    const text = warm('2 h');
    const finding = tooWarm(text)!;
    const fix = finding.fixes.find(({ title }) => title.includes('fold twice'))!;
    const after = applied(text, finding.firstLine, fix);
    expect(after).toMatch(/bulk 2 h at 25 °C, fold at 40 min, fold at 1 h 20 min/);
    expect(after).toMatch(/speed 6 for \d(\.5)? min/);
    expect(tooWarm(after)).toBeUndefined();
  });

  it('is not offered folds in a bulk too short for them', () => {
    const { fixes } = tooWarm(warm('40 min'))!;
    expect(fixes.some(({ title }) => title.includes('fold'))).toBe(false);
  });
});

describe('a calibration by which a faster speed warms less', () => {
  const text =
    'mixer hook:\n  kind spiral\n  speed 1 100 rpm\n  speed 2 200 rpm\n\nformula Quay Tin:\n  yield 20 kg\n  bread flour  100%\n  water  65%\n  salt  2%\n\n' +
    'mix in hook:\n  load flour, water, salt\n  speed 1 for 6 min\n  speed 2 for 6 min\n\n' +
    'trial 2026-03-03:\n  room 21 °C\n  flour 20 °C\n  water 14 °C\n  at 3 min  22.5 °C\n  at 6 min  25.2 °C\n  at 9 min  25.3 °C\n  end  25.4 °C\n';

  it('is told, and is no fix to be taken without a look', () => {
    const finding = findingsOf([{ path: 'a.dough', text }]).find(
      ({ code }) => code === 'mixer-can-be-calibrated',
    )!;
    expect(finding.message).toMatch(/speed 2 would warm less than speed 1, which no mixer does/);
    expect(finding.fixes.map(({ preferred }) => preferred)).toEqual([undefined]);
  });
});
