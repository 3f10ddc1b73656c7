import { describe, expect, it } from 'vitest'
import { builtApp } from './built.ts'
import { writtenEverywhere } from './hostile.ts'
import { HOSTILE } from './hostile-strings.ts'
import { inBrowser } from './in-browser.ts'

const at = inBrowser(builtApp)

describe('hostile strings, at length', () => {
  it('run nowhere in any text field of the app: all 500', { timeout: 3_600_000 }, async () => {
    const { count, found } = await writtenEverywhere(at.browser, at.served.url, HOSTILE)
    expect(count).toBeGreaterThan(16 * 500)
    expect(found).toEqual([])
  })
})
