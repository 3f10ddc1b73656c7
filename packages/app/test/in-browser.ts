import type { Browser } from 'playwright-core'
import { afterAll, beforeAll } from 'vitest'
import type { Serving } from '../serve.ts'
import { launch } from './browser.ts'

/** A browser and something served to it for the tests of a file; there from the first test on, and gone after the last. */
export function inBrowser<S extends Serving>(serve: () => Promise<S>): { readonly browser: Browser; readonly served: S } {
  const at: { browser?: Browser; served?: S } = {}
  beforeAll(async () => {
    at.served = await serve()
    at.browser = await launch()
  })
  afterAll(async () => {
    await at.browser?.close()
    await at.served?.close()
  })
  return at as { browser: Browser; served: S }
}
