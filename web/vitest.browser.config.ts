import { defineConfig } from 'vitest/config';

/** Tests in a real browser against a real board; one file after the other, each starts its own. */
export default defineConfig({
  test: {
    include: ['browser/**/*.test.ts'],
    // `ops/test --long` has all; the small ring keeps to its 15 minutes without these.
    exclude: process.env['SUNUP_LONG']
      ? []
      : ['browser/{wall-budget,network-gone,figures}.test.ts'],
    environment: 'node',
    fileParallelism: false,
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
