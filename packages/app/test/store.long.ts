import { describe, expect, it } from 'vitest'
import { inBrowser } from './in-browser.ts'
import { killed, opened, schedules, storePage } from './store.ts'

const at = inBrowser(storePage)

describe('storage, at length', () => {
  it('loses no edit in 1,000 random orders of two devices (seeds 1001 to 2000)', { timeout: 3_600_000 }, async () => {
    const page = await opened(await (await at.browser.newContext()).newPage(), at.served.url)
    for (let first = 1001; first <= 2000; first += 50) {
      const results = await schedules(
        page,
        Array.from({ length: 50 }, (_, i) => first + i),
      )
      expect(results.filter(({ same, lost }) => !same || lost > 0)).toEqual([])
    }
  })
  it('keeps what it called saved when the page is killed, at 200 random moments', { timeout: 3_600_000 }, async () => {
    for (let i = 0; i < 200; i++) {
      const page = await (await at.browser.newContext()).newPage()
      const { promised, found } = await killed(page, at.served.url, `killed-${i}`, 20 + ((i * 379) % 900))
      expect({ i, promised, kept: found >= promised }).toEqual({ i, promised, kept: true })
      await page.context().close()
    }
  })
})
