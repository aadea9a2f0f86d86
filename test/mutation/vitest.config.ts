import { defineConfig } from 'vitest/config';
import fast from '../core.vitest.config.ts';

/**
 * What mutants of the core are held against: the fast lane, and the other tests of the core in memory that take less than some
 * seconds. What is slow, random or a process is left out, so that a mutant costs seconds; it could only kill more.
 */
export default defineConfig({
  test: {
    ...fast.test,
    // With all mutants in it the core runs several times as long.
    testTimeout: 600_000,
    include: [
      ...(fast.test?.include ?? []),
      'test/{sheet,words,history,examples}/**/*.test.ts',
      'test/workspace/{freshness,last-figures,many-alike,persistent-map,scope,snapshot}.test.ts',
      'test/analysis/variant.test.ts',
      'test/merge/merge.test.ts',
    ],
    exclude: [
      '**/*{properties,any-input,large,stability,keeps-overall,other-language,hint-insertion,possible-changes}*',
      'test/rules/{check,kept-programme}.test.ts',
      'test/analysis/gap-map.test.ts',
      'test/text/display.test.ts',
      'test/sheet/{charts,keep-tried,map-chart}.test.ts',
      'test/words/languages.test.ts',
    ],
  },
});
