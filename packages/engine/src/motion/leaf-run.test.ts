import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { closingAccelAt, closingFrom, closingSpeedAt, endOf, kineticEnergy_J, type LeafDrive, runOf, wayAt } from './leaf-run.ts'

/** The leaf of method-cases T2. */
const leaf: LeafDrive = {
  way: 2000,
  close: { speed: 500, accel: 1000 },
  open: { speed: 500, accel: 1000 },
  stopDelay_s: 0.1,
  stopDecel: 1000,
  reverseDelay_s: 0.2,
}
const ways = (run: ReturnType<typeof runOf>, ...times_s: readonly number[]) => times_s.map((t) => wayAt(run, t))
const close = (found: readonly number[], expected: readonly number[]) => {
  for (const [i, value] of expected.entries()) expect(found[i]).toBeCloseTo(value, 9)
}

describe('runOf', () => {
  // method-cases T2, hand calculation: 125 + 300 mm down, 125 mm braking, 20 mm up
  it('stops after the delay, dwells and opens: 1575 at 1.1 s, 1450 at 1.6 and 1.8 s, 1470 at 2.0 s', () => {
    const run = runOf(closingFrom(leaf, 2000), 1)
    close(ways(run, 1.1, 1.6, 1.8, 2), [1575, 1450, 1450, 1470])
    close([run.rest_s, run.opens_s], [1.6, 1.8])
    expect(closingSpeedAt(run, 1.05)).toBe(500)
    expect(closingAccelAt(run, 1.3)).toBe(-1000)
    expect(closingSpeedAt(run, 1.9)).toBeCloseTo(-100, 9)
    expect(endOf(run)).toBeCloseTo(1.8 + 550 / 500 + 0.5, 9)
    expect(wayAt(run, 60)).toBe(2000)
  })

  // Hand calculation: stopped at its start it speeds up for 0.1 s (5 mm, 100 mm/s), then slows within 0.1 s over 5 mm
  it('keeps its acceleration during the delay', () => {
    const run = runOf(closingFrom(leaf, 2000), 0)
    close([...ways(run, 0.1, 0.2), run.rest_s], [1995, 1990, 0.2])
  })

  it('does nothing to a leaf that is shut within the delay or was before', () => {
    for (const stop_s of [4.4, 4.5, 9, Infinity]) {
      const run = runOf(closingFrom(leaf, 2000), stop_s)
      expect([run.isShut, run.rest_s, endOf(run), wayAt(run, 30)]).toEqual([true, 4.5, 4.5, 0])
    }
  })

  // Hand calculation: from 100 mm/s at 5 mm above the floor, 200 mm/s2 need 25 mm: the floor comes at 1 - sqrt(1 - 0.2) of 0.5 s
  it('ends on the floor where braking is too weak', () => {
    const run = runOf(closingFrom({ ...leaf, stopDecel: 200 }, 2000), 4.3)
    expect(run.isShut).toBe(true)
    expect(run.rest_s).toBeCloseTo(4.4 + 0.5 * (1 - Math.sqrt(0.8)), 9)
    expect(closingSpeedAt(run, run.rest_s - 1e-9)).toBeCloseTo(100 * Math.sqrt(0.8), 4)
  })

  it('stays where it stopped if the control does not reverse', () => {
    const run = runOf(closingFrom({ ...leaf, reverseDelay_s: undefined }, 2000), 1)
    expect([run.opens_s, endOf(run)]).toEqual([Infinity, Infinity])
    close([wayAt(run, 1000), closingSpeedAt(run, 1000)], [1450, 0])
  })

  it('opens fully after a closing from a partial opening', () => {
    const run = runOf(closingFrom(leaf, 800), 0.5)
    close([wayAt(run, 0), wayAt(run, endOf(run))], [800, 2000])
  })

  // Hand calculation: the curve is read off at half of its first stretch, then at its end
  it('takes a measured stopping curve instead of delay and braking, and is shut where the curve reaches the floor', () => {
    const stoppingCurve = [
      { at_s: 0.2, way: 100 },
      { at_s: 0.6, way: 180 },
    ]
    const run = runOf(closingFrom({ ...leaf, stoppingCurve }, 2000), 1)
    close(ways(run, 1, 1.1, 1.2, 1.6, 1.8), [1625, 1575, 1525, 1445, 1445])
    close([closingSpeedAt(run, 1.3), run.rest_s, run.opens_s], [200, 1.6, 1.8])
    const late = runOf(closingFrom({ ...leaf, stoppingCurve }, 2000), 4.1)
    close([late.rest_s, wayAt(late, 5)], [4.1 + 0.2 * (80 / 100), 0])
  })

  // Laws on 3,000 random runs, seed 2
  it('has no jump of place, never leaves 0 to the full way, never closes after its rest, and holds no NaN', () => {
    const random = randomNumbers(2)
    const broken: string[] = []
    for (let n = 0; n < 3000; n++) {
      const drive: LeafDrive = {
        way: random.between(10, 6000),
        close: { speed: random.between(10, 2000), accel: random.between(50, 4000), ...(random.chance(0.3) ? { jerk: 8000 } : {}) },
        open: { speed: random.between(10, 2000), accel: random.between(50, 4000) },
        stopDelay_s: random.chance(0.2) ? 0 : random.between(0, 0.5),
        stopDecel: random.between(20, 8000),
        reverseDelay_s: random.chance(0.2) ? undefined : random.between(0, 1),
      }
      const closing = closingFrom(drive, random.chance(0.5) ? drive.way : random.between(1, drive.way))
      const run = runOf(closing, random.between(0, closing.profile.end_s * 1.2))
      const until_s = Math.min(endOf(run), 60) + 1
      const most = Math.max(drive.close.speed, drive.open.speed) + 1
      let before = wayAt(run, 0)
      for (let k = 1; k <= 200; k++) {
        const t = (until_s * k) / 200
        const way = wayAt(run, t)
        const holds =
          way >= 0 &&
          way <= drive.way + 1e-6 &&
          Math.abs(way - before) <= (most * until_s) / 200 &&
          (t <= run.rest_s || closingSpeedAt(run, t) <= 0) &&
          Number.isFinite(closingSpeedAt(run, t) + closingAccelAt(run, t))
        if (!holds) broken.push(`${n} at ${t}`)
        before = way
      }
    }
    expect(broken).toEqual([])
  })
})

describe('kineticEnergy_J', () => {
  it('is half of mass times speed squared: 100 kg at 183.8 mm/s hold 1.69 J', () => {
    expect(kineticEnergy_J(100, 183.848)).toBeCloseTo(1.69, 4)
  })
})
