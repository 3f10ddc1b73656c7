import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { closingFrom, type LeafDrive } from '../motion/leaf-run.ts'
import { neverStruck, unprovable, type Way } from './never-struck.ts'
import type { View } from './output.ts'
import { newTally, worstOfPassage } from './worst-passage.ts'

function randomWay(seed: number): { readonly way: Way; readonly speeds: readonly [number, number] } {
  const random = randomNumbers(seed)
  const way = random.between(300, 3000)
  const accel = random.between(300, 3000)
  const drive: LeafDrive = {
    way,
    close: { speed: random.between(100, 1500), accel, ...(random.chance(0.3) ? { jerk: random.between(1000, 50_000) } : {}) },
    open: { speed: 500, accel: 1000 },
    stopDelay_s: random.chance(0.2) ? 0 : random.between(0, 0.3),
    stopDecel: accel * random.between(1, 5),
    reverseDelay_s: random.chance(0.3) ? undefined : random.between(0, 0.5),
  }
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
  const closing = closingFrom(drive, random.chance(0.3) ? way * random.between(0.3, 1) : way)
  const clear = way * random.between(0.05, random.chance(0.2) ? 1.02 : 0.7)
  return { way: { closing, enter_mm: -half, leave_mm: half, clear, views }, speeds: [slowest, slowest * random.between(1, 4)] }
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

  it('refuses to argue about a leaf that brakes more weakly than it slows, where a later stop can be the better one', () => {
    const { way } = randomWay(1)
    const { drive } = way.closing
    expect(unprovable(closingFrom({ ...drive, stopDecel: drive.close.accel * 0.99 }, drive.way))).toBe(true)
    expect(unprovable(closingFrom({ ...drive, stopDecel: drive.close.accel }, drive.way))).toBe(false)
  })
})
