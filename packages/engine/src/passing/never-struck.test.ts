import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { closingFrom, type LeafDrive, runOf, wayAt } from '../motion/leaf-run.ts'
import { neverStruck, type Way } from './never-struck.ts'
import type { View } from './output.ts'
import { leastWay, overAt_s, restsAfter_s } from './stop-bounds.ts'
import { newTally, worstOfPassage } from './worst-passage.ts'

/** Stops are weak where the leaf brakes more weakly than it speeds up, or goes on along a measured curve. */
function randomWay(
  seed: number,
  stops: 'strong' | 'weak' | 'measured' = 'strong',
): { readonly way: Way; readonly speeds: readonly [number, number] } {
  const random = randomNumbers(seed)
  const way = random.between(300, 3000)
  const accel = random.between(300, 3000)
  const drive: LeafDrive = {
    way,
    close: { speed: random.between(100, 1500), accel, ...(random.chance(0.3) ? { jerk: random.between(1000, 50_000) } : {}) },
    open: { speed: 500, accel: 1000 },
    stopDelay_s: random.chance(0.2) ? 0 : random.between(0, 0.3),
    stopDecel: accel * (stops === 'weak' ? random.between(0.2, 1) : random.between(1, 5)),
    reverseDelay_s: random.chance(0.3) ? undefined : random.between(0, 0.5),
  }
  const measured = stops === 'measured' ? { ...drive, stoppingCurve: randomCurve(randomNumbers(seed + 1e6)) } : drive
  const half = random.between(50, 500)
  const views: View[] = Array.from({ length: random.whole(1, 2) }, () => {
    let at = -half - random.between(0, 2500)
    const visible = Array.from({ length: random.whole(1, 3) }, () => {
      const stretch = { from_mm: at, to_mm: at + random.between(50, 4000) }
      at = stretch.to_mm + random.between(5, 300)
      return stretch
    })
    return { visible, response_s: random.between(0, 0.3), hold_s: random.chance(0.5) ? 0 : random.between(0, 1) }
  })
  const slowest = random.between(50, 800)
  const closing = closingFrom(measured, random.chance(0.3) ? way * random.between(0.3, 1) : way)
  const clear = way * random.between(0.05, random.chance(0.2) ? 1.02 : 0.7)
  return { way: { closing, enter_mm: -half, leave_mm: half, clear, views }, speeds: [slowest, slowest * random.between(1, 4)] }
}

function randomCurve(random: ReturnType<typeof randomNumbers>): LeafDrive['stoppingCurve'] {
  let point = { at_s: 0, way: 0 }
  return Array.from({ length: random.whole(1, 5) }, () => {
    point = { at_s: point.at_s + random.between(0.01, 0.2), way: point.way + random.between(0, 60) }
    return point
  })
}

describe('neverStruck', () => {
  // Law: seeds 1 to 400
  it('proves nothing that the search for the fastest contact contradicts, and nearly all of what it finds clear', () => {
    const contradicted: number[] = []
    const missed: number[] = []
    let proved = 0
    for (let seed = 1; seed <= 400; seed++) {
      const { way, speeds } = randomWay(seed)
      const tally = newTally()
      const standing = way.views.flatMap(({ visible }) => visible).sort((a, b) => a.from_mm - b.from_mm)
      worstOfPassage(way.closing, { ...way, standing }, speeds, tally)
      const parts = neverStruck(way, [1 / speeds[1], 1 / speeds[0]])
      if (parts) proved++
      if (parts && tally.struck) contradicted.push(seed)
      if (!parts && !tally.struck && tally.unproved.struck === 0) missed.push(seed)
    }
    expect({ contradicted, missed: missed.length < 0.02 * proved }).toEqual({ contradicted: [], missed: true })
    expect(proved).toBeGreaterThan(60)
  })

  // Law: seeds 1 to 150 each. What the engine leaves out of a proof may have stopped the leaf sooner, which is worse here
  it.each(['weak', 'measured'] as const)(
    'proves nothing of a leaf with %s stops that the search contradicts, and most of what it finds clear',
    (stops) => {
      const contradicted: number[] = []
      let [proved, missed] = [0, 0]
      for (let seed = 1; seed <= 150; seed++) {
        const { way, speeds } = randomWay(seed, stops)
        const tally = newTally()
        const standing = way.views.flatMap(({ visible }) => visible).sort((a, b) => a.from_mm - b.from_mm)
        worstOfPassage(way.closing, { ...way, standing }, speeds, tally)
        const parts = neverStruck(way, [1 / speeds[1], 1 / speeds[0]])
        if (parts) proved++
        if (parts && tally.struck) contradicted.push(seed)
        if (!parts && !tally.struck && tally.unproved.struck === 0) missed++
      }
      expect({ contradicted, most: missed < 0.2 * proved }).toEqual({ contradicted: [], most: true })
      expect(proved).toBeGreaterThan(15)
    },
  )
})

describe('leastWay', () => {
  // Law: seeds 1 to 300, each with 40 earlier stops
  it('is nowhere above the leaf that was stopped any sooner, where stops are weak', () => {
    const above: string[] = []
    for (const stops of ['weak', 'measured'] as const)
      for (let seed = 1; seed <= 300; seed++) {
        const random = randomNumbers(seed)
        const { closing } = randomWay(seed, stops).way
        const ran_s = closing.profile.end_s * random.between(0, 1)
        const at_s = ran_s + random.between(0, 1)
        const least = leastWay(closing, ran_s, at_s)
        const rests_s = restsAfter_s(closing, ran_s, ran_s)
        for (let k = 0; k <= 40; k++) {
          const run = runOf(closing, (ran_s * k) / 40)
          if (wayAt(run, Math.min(at_s, run.rest_s)) < least - 1e-9) above.push(`${stops} ${seed}`)
          if (run.rest_s > (ran_s * k) / 40 + rests_s + 1e-9 || run.rest_s > overAt_s(closing) + 1e-9) above.push(`${stops} ${seed} rests`)
        }
      }
    expect(above).toEqual([])
  })
})
