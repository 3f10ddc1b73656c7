import { defineConfig } from 'vitest/config'

/** Long hunts, `npm run test:long`: not part of `npm test`, whose shorter runs begin with other seeds. */
export default defineConfig({
  test: {
    include: ['packages/**/*.long.ts', 'tools/**/*.long.ts'],
    maxWorkers: 2,
    testTimeout: 120_000, // what takes longer says so; no timed assertions: these only end what hangs
    hookTimeout: 120_000, // the app is built in one
    expect: { poll: { timeout: 60_000 } },
    reporters: ['verbose', './tools/count-reporter.ts'],
  },
})
