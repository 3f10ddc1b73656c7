import { describe, expect, it } from 'vitest'
import { inBrowser } from './in-browser.ts'
import { type Outcome, schedules, tabSchedules } from './schedules.ts'
import { killed, opened, storePage } from './store.ts'

const at = inBrowser(storePage)

const seeds = (from: number) => Array.from({ length: 25 }, (_, i) => from + i)

describe('storage, at length', () => {
  it('loses no edit in 1,000 random orders of two tabs and a second device (seeds 1001 to 2000)', { timeout: 3_600_000 }, async () => {
    const page = await opened(await (await at.browser.newContext()).newPage(), at.served.url)
    const results: Outcome[] = []
    for (let from = 1001; from <= 2000; from += 25) {
      results.push(...(await schedules(page, seeds(from))))
      await opened(page, at.served.url) // lets go of the stores of this batch
    }
    expect(results.length).toBe(1000)
    expect(results.filter(({ same, lost }) => !same || lost > 0)).toEqual([])
    process.stdout.write(
      `1,000 schedules of two devices, ${results.filter(({ conflicts }) => conflicts > 0).length} with two values left\n`,
    )
  })
  it('loses nothing that either of two tabs called saved, one of them killed, in 1,000 random orders (seeds 1001 to 2000)', {
    timeout: 3_600_000,
  }, async () => {
    let [count, told] = [0, 0]
    for (let from = 1001; from <= 2000; from += 25) {
      const { outcomes, promised } = await tabSchedules(at.browser, at.served.url, seeds(from))
      count += outcomes.length
      told += promised
      expect(outcomes.filter(({ same, lost }) => !same || lost > 0)).toEqual([])
    }
    expect(count).toBe(1000)
    process.stdout.write(`1,000 schedules of two tabs, ${told} changes called saved before the kill\n`)
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
