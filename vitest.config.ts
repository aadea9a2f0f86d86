import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/editors/**', '**/node_modules/**'],
    // Most tests wait for a process, a browser or a clock, so there are more of them at once than a small machine has cores.
    maxWorkers: Math.max(4, availableParallelism()),
    setupFiles: ['test/seed.ts'],
    testTimeout: 180_000,
    expect: { poll: { timeout: 30_000 } },
  },
});
