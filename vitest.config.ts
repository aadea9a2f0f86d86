import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/editors/**', '**/node_modules/**'],
    maxWorkers: 2,
    setupFiles: ['test/seed.ts'],
    testTimeout: 30_000,
    expect: { poll: { timeout: 10_000 } },
  },
});
