import { checkSync } from 'recheck';
import { describe, expect, it } from 'vitest';
import { madePatterns, type WrittenPattern, writtenPatterns } from './regular-expressions.ts';

// The checker builds the automaton of a pattern, or makes attacks up and tries them. The square is let pass: most patterns are
// asked of a name or of one line, and lines end at 4000 letters. The cube of that, or worse, would hold an editor up.
describe('regular expressions', () => {
  it('that are written out cost less than the cube of the length of a text', () => {
    const all = writtenPatterns(['core', 'server', 'client']);
    expect(all.length).toBeGreaterThan(100);
    expect(slowOf(all)).toEqual([]);
  }, 600_000);

  it('that the core puts together do so too', async () => {
    const made = await madePatterns(() => import('../../core/index.ts'));
    expect(made.length).toBeGreaterThan(3);
    expect(slowOf(made)).toEqual([]);
  }, 600_000);

  it.each(['^(a+)+$', '^\\s*a*a*a*$'])(
    'would be found: %s',
    (source) => {
      expect(slowOf([{ file: 'a.ts', source, flags: '' }])).toHaveLength(1);
    },
    300_000,
  );
});

function slowOf(patterns: readonly WrittenPattern[]): string[] {
  return patterns.flatMap(({ file, source, flags }) => {
    const found = checkSync(source, flags, { timeout: 5000, randomSeed: 17 });
    if (found.status !== 'vulnerable' || found.complexity.summary.startsWith('2nd degree')) return [];
    return [`${file}: /${source}/${flags} is ${found.complexity.summary}`];
  });
}
