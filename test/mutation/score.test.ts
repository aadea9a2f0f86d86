import { expect, it } from 'vitest';
import { isEquivalent, scoreOf } from './score.ts';

it('bounds a share as published: 81 of 263 (Newcombe, Stat. Med. 17, 1998, table I, method 3, from memory)', () => {
  const { fraction, low, high } = scoreOf(81, 263 - 81);
  expect(fraction).toBeCloseTo(0.308, 4);
  expect(low).toBeCloseTo(0.2553, 4);
  expect(high).toBeCloseTo(0.3662, 4);
});

it('says nothing of no mutants', () => {
  expect(scoreOf(0, 0)).toEqual({ fraction: Number.NaN, low: 0, high: 1 });
});

it('knows an equivalent mutant by what stands there, wherever the line has moved', () => {
  const named = [
    {
      file: 'core/a.ts',
      line: 'return one < two;',
      was: 'one < two',
      becomes: 'one <= two',
      why: 'they differ',
    },
  ];
  const location = { start: { line: 2, column: 10 }, end: { line: 2, column: 19 } };
  const text = 'function a() {\n  return one < two;\n}\n';
  expect(isEquivalent({ location, replacement: 'one <= two' }, text, 'core/a.ts', named)).toBe(true);
  expect(isEquivalent({ location, replacement: 'true' }, text, 'core/a.ts', named)).toBe(false);
  expect(isEquivalent({ location, replacement: 'one <= two' }, text, 'core/b.ts', named)).toBe(false);
});
