import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { accelAt, type Limits, movedAt, restToRest, speedAt, timeOf } from './profile.ts'

describe('restToRest', () => {
  // method-cases T1, hand calculation
  it('takes 2 s for 1000 mm at 1000 mm/s2 below 1000 mm/s, as a triangle, and is half way at 1 s', () => {
    const profile = restToRest(1000, { speed: 1000, accel: 1000 })
    expect(profile.end_s).toBeCloseTo(2, 12)
    expect(movedAt(profile, 1)).toBeCloseTo(500, 9)
    expect(speedAt(profile, 1)).toBeCloseTo(1000, 9)
    expect(profile.peak).toBe(1000)
  })

  // Hand calculation: ramps of 0.5 s and 125 mm each, 1750 mm at 500 mm/s
  it('takes 4.5 s for 2000 mm at 1000 mm/s2 to 500 mm/s', () => {
    const profile = restToRest(2000, { speed: 500, accel: 1000 })
    expect([profile.end_s, profile.slowing_s]).toEqual([4.5, 4])
    expect([0.5, 4, 4.5, 9].map((t) => movedAt(profile, t))).toEqual([125, 1875, 2000, 2000])
    expect([0.25, 1, 4.25].map((t) => accelAt(profile, t))).toEqual([1000, 0, -1000])
  })

  // Hand calculation: the ramp takes 500 / 1000 + 1000 / 10000 = 0.6 s and 150 mm; 700 mm are left for 1.4 s
  it('takes 2.6 s for 1000 mm at 500 mm/s, 1000 mm/s2 and 10000 mm/s3', () => {
    const profile = restToRest(1000, { speed: 500, accel: 1000, jerk: 10_000 })
    expect(profile.end_s).toBeCloseTo(2.6, 12)
    expect(movedAt(profile, 0.6)).toBeCloseTo(150, 9)
    expect(movedAt(profile, 1.3)).toBeCloseTo(500, 9)
    expect(accelAt(profile, 0.3)).toBe(1000)
  })

  // Hand calculation: four turns of 0.5 s at 1000 mm/s3 reach 500 mm/s2 and 250 mm/s, never the allowed 1000 mm/s2
  it('takes 2 s for 250 mm where the jerk of 1000 mm/s3 leaves no time for the full acceleration', () => {
    const profile = restToRest(250, { speed: 2000, accel: 1000, jerk: 1000 })
    expect(profile.end_s).toBeCloseTo(2, 9)
    expect(profile.peak).toBeCloseTo(250, 9)
    expect(movedAt(profile, 1)).toBeCloseTo(125, 9)
  })

  it('is over at once where there is no way', () => {
    const profile = restToRest(0, { speed: 1, accel: 1 })
    expect([profile.end_s, movedAt(profile, 1), speedAt(profile, 0), timeOf(profile, 0)]).toEqual([0, 0, 0, 0])
  })

  // Laws on 2,000 random motions, seed 1
  it('never goes back, keeps its limits, is at rest at both ends, and its place, speed and acceleration belong together', () => {
    const random = randomNumbers(1)
    const broken: string[] = []
    for (let n = 0; n < 2000; n++) {
      const jerk = random.chance(0.5) ? random.between(10, 50_000) : undefined
      const limits: Limits = { speed: random.between(0.01, 3000), accel: random.between(1, 5000), jerk }
      const profile = restToRest(random.between(0.1, 10_000), limits)
      const law = (name: string, holds: boolean) => holds || broken.push(`${name}: ${n}`)
      const step_s = profile.end_s * 1e-5
      const most = limits.speed * (1 + 1e-9)
      for (let k = 0; k < 20; k++) {
        const t = random.between(2 * step_s, profile.end_s - 2 * step_s)
        const here = movedAt(profile, t)
        const [before, after] = [movedAt(profile, t - step_s), movedAt(profile, t + step_s)]
        law('never back', after >= here && here >= before)
        law('speed', speedAt(profile, t) <= most)
        law('acceleration', Math.abs(accelAt(profile, t)) <= limits.accel * (1 + 1e-9))
        // a corner of the profile within the step moves the slope by no more than the acceleration allows
        const slope = (after - before) / (2 * step_s)
        law('slope', Math.abs(slope - speedAt(profile, t)) <= limits.accel * step_s + 1e-4 * most)
        law('time of', Math.abs(movedAt(profile, timeOf(profile, here)) - here) < 1e-6 * profile.way)
      }
      law('whole way', Math.abs(movedAt(profile, profile.end_s * (1 - 1e-12)) - profile.way) < 1e-6 * profile.way)
    }
    expect(broken).toEqual([])
  })

  it('scales: lengths times k leave the times, times times k leave the ways', () => {
    const plain = restToRest(2000, { speed: 500, accel: 800, jerk: 4000 })
    const longer = restToRest(6000, { speed: 1500, accel: 2400, jerk: 12_000 })
    const slower = restToRest(2000, { speed: 250, accel: 200, jerk: 500 })
    expect(longer.end_s).toBeCloseTo(plain.end_s, 9)
    expect(slower.end_s).toBeCloseTo(2 * plain.end_s, 9)
    for (const t of [0.1, 0.4, 1, 2.2]) {
      expect(movedAt(longer, t)).toBeCloseTo(3 * movedAt(plain, t), 6)
      expect(movedAt(slower, 2 * t)).toBeCloseTo(movedAt(plain, t), 6)
    }
  })
})
