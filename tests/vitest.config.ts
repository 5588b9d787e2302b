import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

const countReporter = fileURLToPath(new URL('./support/count-reporter.ts', import.meta.url));

/** Files that put something in the place of a module: nobody else may be given that. */
const ALONE = ['tests/http/live-question.test.ts'];

/** What takes longest, though it is not written at length: begun last, it would go on alone while the other process has nothing to do. */
const LONG = [
  'tests/bench/season.test.ts',
  'tests/usecases/orders/told-is-taken.test.ts',
  'tests/bench/torture.test.ts',
];

class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const isLong = ({ moduleId }: TestSpecification) => LONG.some((name) => moduleId.endsWith(name));
    const rest = await super.sort(files);
    return [...rest.filter(isLong), ...rest.filter((file) => !isLong(file))];
  }
}

export default defineConfig({
  test: {
    globalSetup: fileURLToPath(new URL('./support/build-first.mjs', import.meta.url)),
    pool: 'forks',
    maxWorkers: 2,
    sequence: { sequencer: LongFirst },
    // For a busy machine: nothing takes half of it on a free one but what says so itself.
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // The driver's own log of a server that is away.
    env: { RUST_LOG: 'off' },
    setupFiles: [fileURLToPath(new URL('./support/property-seed.ts', import.meta.url))],
    reporters: ['default', countReporter],
    projects: [
      // Two processes take all these files in turn: to load the program anew for each was a fifth of the whole run.
      {
        extends: true,
        test: { name: 'together', isolate: false, include: ['tests/**/*.test.{ts,tsx}'], exclude: ALONE },
      },
      { extends: true, test: { name: 'alone', include: ALONE } },
    ],
  },
});
