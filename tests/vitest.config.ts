import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const countReporter = fileURLToPath(new URL('./support/count-reporter.ts', import.meta.url));

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    pool: 'forks',
    maxWorkers: 2,
    testTimeout: 30_000,
    hookTimeout: 60_000,
    setupFiles: [fileURLToPath(new URL('./support/property-seed.ts', import.meta.url))],
    reporters: ['default', countReporter],
  },
});
