import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findingsOf } from './findings.ts';

const folder = join(import.meta.dirname, '../fixtures/sound');
const files = readdirSync(folder).map((path) => ({ path, text: readFileSync(join(folder, path), 'utf8') }));

/** What speaks of how a dough is mixed, and of its water; the tests of mixing hold these formulas to that. */
const ofMixing = new Set([
  'too-warm',
  'let-down',
  'broken-down',
  'under-developed',
  'mixed-past-need',
  'ice-needed',
  'ice-above-half',
  'hot-water',
]);

// Formulas as bakers make them: common practice, no source. None is to be told anything of its time, its stiffness, or a range.
describe('a sound formula', () => {
  const told = findingsOf(files).filter(({ code }) => !ofMixing.has(code));
  const formulas = files.flatMap(({ path, text }) =>
    text.split('\n').flatMap((line, index) => {
      const name = /^formula (.+):/.exec(line)?.[1];
      return name === undefined ? [] : [{ path, name, line: index }];
    }),
  );

  it('is there of every kind', () => {
    expect(formulas.length).toBeGreaterThanOrEqual(28);
    expect(files.map(({ path }) => path)).toEqual([
      'grains.dough',
      'laminated.dough',
      'lean.dough',
      'preferments.dough',
      'rich.dough',
    ]);
  });

  it.each(formulas)('$name of $path earns no finding', ({ path, line }) => {
    const next =
      formulas.find((one) => one.path === path && one.line > line)?.line ?? Number.POSITIVE_INFINITY;
    const own = told.filter((one) => one.path === path && one.fileLine >= line && one.fileLine < next);
    expect(own.map(({ code, message }) => `${code}: ${message}`)).toEqual([]);
  });
});

describe('and one made unsound', () => {
  const codes = (path: string, from: string | RegExp, to: string): string[] => {
    const { text } = files.find((one) => one.path === path)!;
    const changed = text.replace(from, to);
    expect(changed).not.toBe(text);
    return findingsOf([{ path, text: changed }])
      .map(({ code }) => code)
      .filter((code) => !ofMixing.has(code));
  };

  it('is told of: an overnight brioche left at 24 °C, and a lean dough with a tenth of its yeast', () => {
    expect(codes('rich.dough', 'retard 14 h at 4 °C', 'bulk 14 h at 24 °C')).toEqual(['fermentation-time']);
    expect(codes('laminated.dough', 'retard 12 h at 3 °C', 'bulk 12 h at 21 °C')).toEqual([
      'fermentation-time',
    ]);
    expect(codes('lean.dough', 'fresh yeast        2%', 'fresh yeast        0.2%')).toEqual([
      'fermentation-time',
    ]);
    expect(codes('preferments.dough', 'bulk 1 h at 24 °C, fold at 30 min', 'bulk 10 min at 20 °C')).toEqual([
      'fermentation-time',
    ]);
  });

  it('is told of: a dough of half the egg at second speed', () => {
    expect(codes('rich.dough', 'egg                52%', 'egg                26%')).toContain(
      'fast-for-stiff',
    );
  });
});
