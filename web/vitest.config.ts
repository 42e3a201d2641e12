import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts'],
    environment: 'happy-dom',
    // ops/test reads the file for its closing line.
    reporters: ['default', 'json'],
    outputFile: { json: 'target/unit.json' },
  },
});
