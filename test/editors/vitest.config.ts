import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

// Each file starts a real editor of its own: one at a time, and with time enough for a first installation.
export default defineConfig({
  test: {
    root: fileURLToPath(new URL('../..', import.meta.url)),
    include: ['test/editors/*.test.ts'],
    globalSetup: ['test/editors/installed-once.ts'],
    fileParallelism: false,
    maxWorkers: 1,
    testTimeout: 120_000,
    hookTimeout: 900_000,
  },
});
