import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['test/**/*.test.ts'],
    exclude: ['test/editors/**', '**/node_modules/**'],
    maxWorkers: 2,
    setupFiles: ['test/seed.ts'],
    testTimeout: 90_000,
    expect: { poll: { timeout: 10_000 } },
  },
});
