import type { Reporter, TestModule } from 'vitest/node';

const testsOf = (modules: readonly TestModule[], state: 'passed' | 'failed'): number =>
  modules.reduce((sum, module) => sum + [...module.children.allTests(state)].length, 0);

/** A file that cannot be loaded and a suite whose hook throws run no test, and yet something failed. */
const faultsOutsideTests = (modules: readonly TestModule[]): number =>
  modules.reduce((sum, module) => {
    const suites = [...module.children.allSuites()].filter((suite) => suite.errors().length > 0);
    return sum + (module.errors().length > 0 ? 1 : 0) + suites.length;
  }, 0);

/** Ends the run with one plain line, `N passed, N failed`, for readers that do not know this test runner. */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], faults: readonly unknown[]): void {
    const failed = testsOf(modules, 'failed') + faultsOutsideTests(modules) + faults.length;
    // On exit, so that it is the last line, after the summary of the reporter for people.
    process.once('exit', () => process.stdout.write(`${testsOf(modules, 'passed')} passed, ${failed} failed\n`));
  }
}
