import { defineConfig } from 'vitest/config';

/**
 * The fast lane, `npm run test:core`: the core in memory, without a process, a browser, a file written or a thousand random
 * texts. It says within some fifteen seconds whether a change of the core holds; `npm test` says everything.
 */
export default defineConfig({
  test: {
    include: [
      'test/{text,syntax,calc,analysis,rules,features,actions,compare,merge}/**/*.test.ts',
      'test/sheet/sheet.test.ts',
    ],
    exclude: [
      '**/*{properties,any-input,large,stability,keeps-overall,other-language,hint-insertion,possible-changes}*',
      'test/rules/{check,kept-programme}.test.ts',
      'test/analysis/{variant,gap-map}.test.ts',
      'test/text/display.test.ts',
      'test/merge/merge.test.ts',
    ],
    isolate: false,
    setupFiles: ['test/seed.ts'],
    testTimeout: 90_000,
    maxWorkers: 2,
  },
});
