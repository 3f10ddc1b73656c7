import { describe, expect, it } from 'vitest'
import { boxCorners, gapToPolygon, gapToSector, type PlanPoint, type PlanSector, type PlanShape } from './plan-distance.ts'
import { cos, hypot2, PI, radians, sin, turnOf } from './trigonometry.ts'

const square: readonly PlanPoint[] = [
  [0, 0],
  [1000, 0],
  [1000, 200],
  [0, 200],
]
const box = (middle: PlanPoint, size: PlanPoint, yaw_deg = 0): PlanShape => ({
  kind: 'polygon',
  corners: boxCorners(middle, size, turnOf(radians(yaw_deg))),
})
const disc = (middle: PlanPoint, radius_mm: number): PlanShape => ({ kind: 'disc', middle, radius_mm })

// All worked on paper
describe('the gap to a polygon', () => {
  it('is the shortest way to a box beside, ahead, and off a corner (3-4-5)', () => {
    expect(gapToPolygon(square, box([1400, 100], [200, 100])).gap_mm).toBe(300)
    expect(gapToPolygon(square, box([500, 450], [100, 100]))).toMatchObject({ gap_mm: 200 })
    expect(gapToPolygon(square, box([1350, 650], [100, 100]))).toEqual({ gap_mm: 500, at: [1300, 600] })
  })
  it('is measured to a round post along its radius', () => {
    expect(gapToPolygon(square, disc([1360, 680], 60)).gap_mm).toBe(540)
    expect(gapToPolygon(square, disc([500, 300], 60)).gap_mm).toBe(40)
  })
  it('is 0 where both overlap, also where no corner of either lies in the other', () => {
    expect(gapToPolygon(square, box([500, 100], [50, 1000])).gap_mm).toBe(0)
    expect(gapToPolygon(square, box([500, 100], [50, 50])).gap_mm).toBe(0)
    expect(gapToPolygon(square, box([500, 100], [9000, 9000])).gap_mm).toBe(0)
  })
})

const quarter: PlanSector = { hinge: [0, 0], inner_mm: 500, outer_mm: 1000, from_rad: 0, turn_rad: PI / 2 }

describe('the gap to what a bar sweeps', () => {
  it('is measured from the rim outside, from either end, and from the inner rim', () => {
    expect(gapToSector(quarter, disc([900, 1200], 100)).gap_mm).toBe(400) // 1500 out, less 1000 and 100
    expect(gapToSector(quarter, box([700, -300], [100, 200])).gap_mm).toBe(200)
    expect(gapToSector(quarter, box([0, 0], [100, 100], 45)).gap_mm).toBeCloseTo(500 - 50 * Math.SQRT2, 9)
  })
  it('is 0 for a wall that crosses it or that it surrounds, and for what surrounds it', () => {
    expect(gapToSector(quarter, box([0, 800], [4000, 10])).gap_mm).toBe(0)
    expect(gapToSector(quarter, disc([540, 540], 10)).gap_mm).toBe(0)
    expect(gapToSector(quarter, box([500, 500], [4000, 4000])).gap_mm).toBe(0)
    expect(gapToSector(quarter, box([0, 0], [5000, 10], 45)).gap_mm).toBeCloseTo(0, 9) // in by the outer rim, out by the inner one
  })
  it('goes to the foot on a long wall before the rim', () => {
    expect(gapToSector(quarter, box([600, 1250], [9000, 100])).gap_mm).toBe(200)
  })

  // Second method: the bar in 500 directions, the edge of the box in 160 points
  it('is what a bar finds that is turned step by step (seeds 1 to 40)', () => {
    let state = 7
    const random = () => {
      state = (state * 48271) % 2147483647
      return state / 2147483647
    }
    let apart = 0
    for (let seed = 1; seed <= 40; seed++) {
      const sector: PlanSector = {
        hinge: [random() * 200, random() * 200],
        inner_mm: 100 + 300 * random(),
        outer_mm: 500 + 800 * random(),
        from_rad: 6 * random(),
        turn_rad: PI * random(),
      }
      const corners = boxCorners(
        [2400 * random() - 1200, 2400 * random() - 1200],
        [600 * random() + 5, 300 * random() + 5],
        turnOf(6 * random()),
      )
      const found = gapToSector(sector, { kind: 'polygon', corners }).gap_mm
      const stepped = steppedGap_mm(sector, corners)
      if (found > 0) apart++
      expect({ seed, off: stepped < found - 1e-6 || stepped > found + 12 }).toEqual({ seed, off: false })
    }
    expect(apart).toBeGreaterThan(15)
  })
})

/** Never below the true gap; above it by at most one step of either. */
function steppedGap_mm({ hinge, inner_mm, outer_mm, from_rad, turn_rad }: PlanSector, corners: readonly PlanPoint[]): number {
  const rim = corners.flatMap((a, i) => {
    const b = corners[(i + 1) % corners.length] as PlanPoint
    return Array.from({ length: 40 }, (_, k): PlanPoint => [a[0] + ((b[0] - a[0]) * k) / 40, a[1] + ((b[1] - a[1]) * k) / 40])
  })
  let least = Infinity
  for (let k = 0; k <= 500; k++) {
    const angle = from_rad + (turn_rad * k) / 500
    const [c, s] = [cos(angle), sin(angle)]
    for (const [x, y] of rim) {
      const along = (x - hinge[0]) * c + (y - hinge[1]) * s
      const on = Math.min(outer_mm, Math.max(inner_mm, along))
      least = Math.min(least, hypot2(x - hinge[0] - on * c, y - hinge[1] - on * s))
    }
  }
  return least
}
