import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkSync } from 'recheck';
import { describe, expect, it } from 'vitest';
import { madePatterns, type WrittenPattern, writtenPatterns } from './regular-expressions.ts';

// A text of a stranger must not cost more than its length: the checker builds the automaton of a pattern, or makes attacks up
// and tries them. The square is allowed to the patterns of a list, each of which is asked of a name, a word or one line,
// and lines end at 4000 letters: 16 million steps of a few nanoseconds at the very most. Nothing is allowed the cube or more.
describe('regular expressions', () => {
  it('that are written out cost no more than the length of a text', () => {
    const all = writtenPatterns(['core', 'server', 'client']);
    expect(all.length).toBeGreaterThan(100);
    const slow = slowOf(all);
    expect(slow.filter((one) => !one.endsWith('2nd degree polynomial'))).toEqual([]);
    if (process.env.UPDATE === '1') writeFileSync(listed, `${slow.join('\n')}\n`);
    expect(readFileSync(listed, 'utf8').trimEnd().split('\n')).toEqual(slow);
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

const listed = join(import.meta.dirname, '..', 'fixtures', 'tidy', 'square-patterns.txt');

function slowOf(patterns: readonly WrittenPattern[]): string[] {
  const told = patterns.flatMap(({ file, source, flags }) => {
    const found = checkSync(source, flags.replace(/[dv]/g, ''), { timeout: 5000 });
    return found.status === 'vulnerable'
      ? [`${file}: /${source}/${flags} is ${found.complexity.summary.replace(' (fuzz)', '')}`]
      : [];
  });
  return told.sort();
}
