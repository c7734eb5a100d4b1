import type { Reporter, TestModule } from 'vitest/node'

/** Ends a run with one plain line: `N passed, N failed, N skipped`. A file that fails outside its tests counts as failed. */
export default class PlainReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly unknown[]): void {
    const count = { passed: 0, failed: unhandledErrors.length, skipped: 0, pending: 0 }
    for (const module of modules) {
      const states = [...module.children.allTests()].map(test => test.result().state)
      for (const state of states) count[state] += 1
      if (module.state() === 'failed' && !states.includes('failed')) count.failed += 1
    }
    // Printed last of all, after what other reporters say of the run.
    process.once('exit', () =>
      console.log(`${count.passed} passed, ${count.failed} failed, ${count.skipped + count.pending} skipped`),
    )
  }
}
