import { describe, expect, it } from 'vitest'
import { downward, level, lightGrid, plainField } from '../../cases/plain-door.ts'
import { type RandomNumbers, randomNumbers } from '../../cases/random-numbers.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { type Beams, beamsOf } from './beams.ts'
import { commonWindows, type FieldLimits, fieldWindows, limitsOf, type Windows } from './windows.ts'

const open: FieldLimits = limitsOf(plainField({ clearance_mm: -Infinity }))
const seeds = Array.from({ length: 2000 }, (_, i) => i + 1)

function randomBeams(dice: RandomNumbers): Beams {
  const point = (): [number, number, number] => [dice.between(-1000, 1000), dice.between(-1000, 1000), dice.between(0, 1000)]
  const segments = Array.from({ length: 3 }, () => {
    const [from_mm, to_mm] = [point(), point()]
    for (const axis of [0, 1] as const) if (dice.chance(0.2)) to_mm[axis] = from_mm[axis]
    return { from_mm, to_mm }
  })
  return beamsOf(lightGrid([], 0, { planes: [{ id: 'p0', segments }] }))
}

function randomLimits(dice: RandomNumbers): FieldLimits {
  const side = (low: number, high: number, otherwise: number) => (dice.chance(0.5) ? otherwise : dice.between(low, high))
  return {
    xMin_mm: side(-800, 300, -Infinity),
    xMax_mm: side(-300, 800, Infinity),
    yMin_mm: side(-800, 300, -Infinity),
    yMax_mm: side(-300, 800, Infinity),
    clearance_mm: side(-100, 500, -Infinity),
    top_mm: side(100, 900, Infinity),
  }
}

function randomFloor(dice: RandomNumbers) {
  let y = dice.between(-1000, 0)
  const points = Array.from({ length: dice.whole(1, 8) }, (): [number, number] => {
    y += dice.chance(0.2) ? 1 : dice.between(20, 400)
    return [y, dice.between(-100, 100)]
  })
  return floorPieces({ ...level(0, points), slopeX: dice.chance(0.5) ? 0 : dice.between(-0.2, 0.2) })
}

function stretches({ first, from, to }: Windows, i: number): readonly (readonly [from: number, to: number])[] {
  return Array.from({ length: (first[i + 1] as number) - (first[i] as number) }, (_, k) => {
    const w = (first[i] as number) + k
    return [from[w] as number, to[w] as number]
  })
}

describe('where an entry point counts', () => {
  it('is exactly where x, y and the height above the floor under it are within the limits, between origin and end: sampled, seeds 1 to 2000', () => {
    let inside = 0
    let several = 0
    const wrong: string[] = []
    for (const seed of seeds) {
      const dice = randomNumbers(seed)
      const [beams, limits, floor] = [randomBeams(dice), randomLimits(dice), randomFloor(dice)]
      const ends = Float64Array.from({ length: beams.count }, () => dice.between(-50, 3000))
      const maxRange_mm = dice.between(500, 5000)
      const windows = fieldWindows(beams, floor, limits, ends, maxRange_mm)
      for (let i = 0; i < beams.count; i++) {
        const found = stretches(windows, i)
        if (found.length > 1) several++
        for (let k = 0; k < 300; k++) {
          const t = 10 * k + 0.123
          if (found.some(([from, to]) => Math.abs(t - from) < 1e-6 || Math.abs(t - to) < 1e-6)) continue
          const expected = t <= (ends[i] as number) && t <= maxRange_mm && liesWithin(limits, floor, beams, i, t)
          if (expected) inside++
          if (found.some(([from, to]) => from <= t && t <= to) !== expected) wrong.push(`seed ${seed}, beam ${i}, ${t}`)
        }
        found.forEach(([from, to], k) => {
          if (!(0 <= from && from <= to && (k === 0 || from > (found[k - 1]?.[1] ?? 0))))
            wrong.push(`seed ${seed}, beam ${i}: ${found.join(' ')}`)
        })
      }
    }
    expect(wrong).toEqual([])
    expect(inside).toBeGreaterThan(20_000)
    expect(several).toBeGreaterThan(20)
  })

  it('includes the limits themselves (hand calculation: straight down from 2000, clearance 50 and top 500)', () => {
    const beams = beamsOf(downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }]))
    const limits = { ...open, xMin_mm: 500, xMax_mm: 500, yMin_mm: 0, yMax_mm: 0, clearance_mm: 50, top_mm: 500 }
    expect(stretches(fieldWindows(beams, floorPieces(level()), limits, Float64Array.of(2000), 10_000), 0)).toEqual([[1500, 1950]])
    expect(stretches(fieldWindows(beams, floorPieces(level()), { ...limits, xMin_mm: 501 }, Float64Array.of(2000), 10_000), 0)).toEqual([])
  })

  it('is the whole of a level beam that runs along a limit, or none of it beyond (hand calculation)', () => {
    const beams = beamsOf(lightGrid([200]))
    const from = (limits: Partial<FieldLimits>) =>
      stretches(fieldWindows(beams, floorPieces(level()), { ...open, ...limits }, Float64Array.of(2000), 10_000), 0)
    expect(from({ clearance_mm: 200, top_mm: 200, yMin_mm: 0, yMax_mm: 0 })).toEqual([[0, 2000]])
    expect(from({ clearance_mm: 200.001 })).toEqual([])
    expect(from({ top_mm: 199.999 })).toEqual([])
    expect(from({ yMin_mm: 0.001 })).toEqual([])
  })

  it('follows the floor under the beam, not under the body (hand calculation: a level beam at 300 over ramps of 1 in 4)', () => {
    const floor = floorPieces(
      level(0, [
        [0, 0],
        [400, 100],
        [800, 100],
        [1200, 0],
      ]),
    )
    const beams = beamsOf(lightGrid([], 0, { planes: [{ id: 'p0', segments: [{ from_mm: [0, -500, 300], to_mm: [0, 1500, 300] }] }] }))
    // 300 above the level floor; 250 and less above it where the ramp has risen by 50: from y = 200 to y = 1000
    expect(stretches(fieldWindows(beams, floor, { ...open, top_mm: 250 }, Float64Array.of(2000), 10_000), 0)).toEqual([[700, 1500]])
    expect(stretches(fieldWindows(beams, floor, { ...open, clearance_mm: 250 }, Float64Array.of(2000), 10_000), 0)).toEqual([
      [0, 700],
      [1500, 2000],
    ])
  })

  it('is nothing for a beam that ends before it starts', () => {
    const beams = beamsOf(lightGrid([200]))
    for (const end of [-1, -Infinity])
      expect(fieldWindows(beams, floorPieces(level()), open, Float64Array.of(end), 10_000).first).toEqual(Int32Array.of(0, 0))
  })
})

describe('what two sets of stretches have in common', () => {
  it('is where both hold: sampled, seeds 1 to 150', () => {
    const wrong: string[] = []
    for (const seed of seeds.slice(0, 150)) {
      const dice = randomNumbers(seed)
      const [beams, floor] = [randomBeams(dice), randomFloor(dice)]
      const ends = new Float64Array(beams.count).fill(2000)
      const [a, b] = [0, 1].map(() => fieldWindows(beams, floor, randomLimits(dice), ends, 3000)) as [Windows, Windows]
      const both = commonWindows(a, b)
      for (let i = 0; i < beams.count; i++)
        for (let t = 0.5; t < 2000; t += 7) {
          const has = (windows: Windows) => stretches(windows, i).some(([from, to]) => from <= t && t <= to)
          if (has(both) !== (has(a) && has(b))) wrong.push(`seed ${seed}, beam ${i}, ${t}`)
        }
    }
    expect(wrong).toEqual([])
  })
})

function liesWithin(limits: FieldLimits, floor: ReturnType<typeof floorPieces>, beams: Beams, i: number, t: number): boolean {
  const x = (beams.originX[i] as number) + t * (beams.directionX[i] as number)
  const y = (beams.originY[i] as number) + t * (beams.directionY[i] as number)
  const height = (beams.originZ[i] as number) + t * (beams.directionZ[i] as number) - floorHeight(floor, x, y)
  return (
    limits.xMin_mm <= x &&
    x <= limits.xMax_mm &&
    limits.yMin_mm <= y &&
    y <= limits.yMax_mm &&
    limits.clearance_mm <= height &&
    height <= limits.top_mm
  )
}
