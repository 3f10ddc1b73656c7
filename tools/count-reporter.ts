import type { Reporter, SerializedError, TestModule } from 'vitest/node'

/** Closes the output with the runner's own count in one plain line, after everything that other reporters print. */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly SerializedError[]): void {
    const tests = modules.flatMap((module) => [...module.children.allTests()])
    const count = (state: string) => tests.filter((test) => test.result().state === state).length
    const brokenFiles = modules.filter((module) => module.state() === 'failed' && module.errors().length > 0).length
    const failed = count('failed') + brokenFiles + unhandledErrors.length
    const skipped = tests.length - count('passed') - count('failed')
    process.once('exit', () => {
      const checks = process.env['FAILED_CHECKS']
      if (checks) process.stdout.write(`Failed before the tests, see above: ${checks}\n`)
      process.stdout.write(`${count('passed')} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}\n`)
    })
  }
}
