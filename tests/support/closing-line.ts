import type { Reporter, TestModule } from 'vitest/node'

/** Prints one plain line with the counts at the very end of a run, for machines that read test output. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly unknown[]): void {
    const counts = { passed: 0, failed: unhandled.length, skipped: 0 }
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const state = test.result().state
        if (state !== 'pending') counts[state] += 1
      }
      if (module.state() === 'failed' && module.children.size === 0) counts.failed += 1
    }
    process.stdout.write(`\n${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped\n`)
  }
}
