import { describe, expect, it } from 'vitest'
import { inBrowser } from './in-browser.ts'
import { type Outcome, schedules, tabSchedules } from './schedules.ts'
import { opened, storePage } from './store.ts'

const at = inBrowser(storePage)

const seeds = (from: number, count: number) => Array.from({ length: count }, (_, i) => from + i)
const bad = (results: readonly Outcome[]) => results.filter(({ same, lost }) => !same || lost > 0)

describe('two tabs of one device and a second device', () => {
  it('merge what all did apart without losing an edit, and show the same, in 60 random orders (seeds 1 to 60)', async () => {
    const page = await opened(await (await at.browser.newContext()).newPage(), at.served.url)
    const results = [...(await schedules(page, seeds(1, 30))), ...(await schedules(page, seeds(31, 30)))]
    expect(results.length).toBe(60)
    expect(bad(results)).toEqual([])
    expect(results.filter(({ conflicts }) => conflicts > 0).length).toBeGreaterThan(2) // or nothing was at stake
  })
})

describe('two tabs', () => {
  it('that work on 75 doors at once lose nothing that either called saved, although one is killed (seeds 1 to 75)', async () => {
    let killedAtWork = 0
    let written = 0
    for (let from = 1; from <= 75; from += 25) {
      const { outcomes, promised, midst } = await tabSchedules(at.browser, at.served.url, seeds(from, 25))
      expect(bad(outcomes)).toEqual([])
      written += promised - 25 // the doors themselves are 25
      killedAtWork += midst ? 1 : 0
    }
    expect(killedAtWork).toBeGreaterThan(0)
    expect(written).toBeGreaterThan(25) // or the second tab never came to write
  })
})
