import { checkSync } from 'recheck';
import { describe, expect, it } from 'vitest';
import { madePatterns, type WrittenPattern, writtenPatterns } from './regular-expressions.ts';

// A text of a stranger must cost its length: what a pattern could try over and over is found by building its automaton, and
// an attack that the checker makes up is tried by it before it is told.
describe('regular expressions', () => {
  it('that are written out cost no more than the length of a text', () => {
    const all = writtenPatterns(['core', 'server', 'client']);
    expect(all.length).toBeGreaterThan(100);
    expect(slowOf(all)).toEqual([]);
  }, 600_000);

  it('that the core puts together do neither', async () => {
    const made = await madePatterns(() => import('../../core/index.ts'));
    expect(made.length).toBeGreaterThan(3);
    expect(slowOf(made)).toEqual([]);
  }, 600_000);

  it('would be found', () => {
    expect(slowOf([{ file: 'a.ts', source: '^\\s*a*a*$', flags: '' }])).toHaveLength(1);
  }, 60_000);
});

function slowOf(patterns: readonly WrittenPattern[]): string[] {
  return patterns.flatMap(({ file, source, flags }) => {
    const found = checkSync(source, flags.replace(/[dv]/g, ''), { timeout: 5000 });
    return found.status === 'vulnerable'
      ? [`${file}: /${source}/${flags} is ${found.complexity.summary}`]
      : [];
  });
}
