import { describe, expect, it } from 'vitest'
import { inBrowser } from './in-browser.ts'
import { type Outcome, schedules, tabSchedules } from './schedules.ts'
import { seedsOf } from './seeds.ts'
import { killed, opened, storePage } from './store.ts'

const at = inBrowser(storePage)

const BATCH = 25
const batches = (seeds: readonly number[]) =>
  Array.from({ length: Math.ceil(seeds.length / BATCH) }, (_, i) => seeds.slice(i * BATCH, (i + 1) * BATCH))

describe('storage, at length', () => {
  it('loses no edit in 1,000 random orders of two tabs and a second device (seeds 1001 to 2000)', { timeout: 3_600_000 }, async () => {
    const seeds = seedsOf(1001, 2000)
    const page = await opened(await (await at.browser.newContext()).newPage(), at.served.url)
    const results: Outcome[] = []
    for (const batch of batches(seeds)) {
      results.push(...(await schedules(page, batch)))
      await opened(page, at.served.url) // lets go of the stores of this batch
    }
    expect(results.length).toBe(seeds.length)
    expect(results.filter(({ same, lost }) => !same || lost > 0)).toEqual([])
    const left = results.filter(({ conflicts }) => conflicts > 0).length
    process.stdout.write(`schedules of two devices: ${results.length}, with two values left: ${left}\n`)
  })
  it('loses nothing that either of two tabs called saved, one of them killed, in 1,000 random orders (seeds 1001 to 2000)', {
    timeout: 3_600_000,
  }, async () => {
    const seeds = seedsOf(1001, 2000)
    let [count, told, midst] = [0, 0, 0]
    for (const batch of batches(seeds)) {
      const found = await tabSchedules(at.browser, at.served.url, batch)
      count += found.outcomes.length
      told += found.promised
      if (found.midst) midst++
      expect(found.outcomes.filter(({ same, lost }) => !same || lost > 0)).toEqual([])
    }
    expect(count).toBe(seeds.length)
    process.stdout.write(
      `schedules of two tabs: ${count}, changes called saved before the kill: ${told}, batches killed at work: ${midst}\n`,
    )
  })
  it('keeps what it called saved when the page is killed, at 200 random moments', { timeout: 3_600_000 }, async () => {
    const kills = seedsOf(1, 200)
    let told = 0
    const page = await opened(await (await at.browser.newContext()).newPage(), at.served.url)
    for (const [n, i] of kills.entries()) {
      const { promised, found } = await killed(page, at.served.url, `killed-${i}`, 20 + ((i * 379) % 900))
      expect({ i, promised, kept: found >= promised }).toEqual({ i, promised, kept: true })
      told += promised
      if (n % 10 === 9) {
        process.stdout.write(`${n + 1} of ${kills.length} killed\n`)
        await opened(page, at.served.url) // lets go of the databases so far
      }
    }
    process.stdout.write(`kills of the store: ${kills.length}, changes called saved before: ${told}\n`)
  })
})
