import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    include: ['*.test.ts', 'packages/**/*.test.ts', 'tools/**/*.test.ts'],
    testTimeout: 120_000, // no timed assertions: these only end what hangs
    expect: { poll: { timeout: 60_000 } },
    hookTimeout: 120_000,
    maxWorkers: 2,
    isolate: false, // nothing here changes what another file reads: a worker starts once, and builds the app once
    reporters: ['default', './tools/count-reporter.ts'],
  },
})
