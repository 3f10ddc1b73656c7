import { describe, expect, it } from 'vitest'
import { bodyOf, box, plainDoor, plainState } from '../../cases/plain-door.ts'
import { laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import { leafApproach } from './leaf-approach.ts'
import { foundBefore_mm, type WaySight, waySights } from './way-sights.ts'

const standing = bodyOf([box(300, 200, 1500)])

describe('waySights', () => {
  // Hand calculation: beams from y = -2400 to 2400 see a body 200 deep while its middle is within 2500; its front then is 2400 from y = 0, and the
  // leaf 40 thick begins 20 before that
  it('finds a body 2380 mm before the leaf, from either side and at all three places across', () => {
    const door = plainDoor({ bodies: [standing], sensors: wideGrid() })
    const leaf = leafApproach(door, plainState())
    const [field] = wideGrid()[0]?.fields ?? []
    const [sensor] = wideGrid()
    if (!leaf || !field || !sensor) throw new Error('the plain door must have a leaf and a grid')
    const { sights, yawSampled } = waySights(door, plainState(), laneOf(), leaf, [{ sensor, field }])
    expect(yawSampled).toBe(false)
    expect(sights.map(({ x_mm, from }) => `${x_mm}${from}`)).toEqual(['550a', '550b', '1000a', '1000b', '1450a', '1450b'])
    for (const sight of sights) {
      expect(foundBefore_mm(sight, 0)).toBeLessThanOrEqual(2380)
      expect(foundBefore_mm(sight, 0)).toBeGreaterThan(2379)
    }
  })
})

describe('foundBefore_mm', () => {
  const sight = (...visible: readonly (readonly [number, number])[]): WaySight => ({
    ...({} as Pick<WaySight, 'counted' | 'stance'>),
    x_mm: 0,
    from: 'a',
    reach_mm: 120,
    visible: visible.map(([from_mm, to_mm]) => ({ from_mm, to_mm })),
  })

  it('counts from where the sight that reaches the leaf begins', () => {
    expect(foundBefore_mm(sight([-1000, 500]), 0)).toBe(880)
    expect(foundBefore_mm(sight([-1000, -600], [-500, -100], [-50, 300]), 0)).toBe(380)
  })
  it('bridges gaps that are no longer than the output holds', () => {
    expect(foundBefore_mm(sight([-1000, -600], [-500, -100]), 100)).toBe(880)
    expect(foundBefore_mm(sight([-1000, -600], [-500, -100]), 99)).toBe(380)
  })
  it('counts nothing that ends before the leaf, or begins behind it', () => {
    expect(foundBefore_mm(sight([-1000, -600]), 400)).toBe(0)
    expect(foundBefore_mm(sight([-1000, -600]), 480)).toBe(880)
    expect(foundBefore_mm(sight([-100, 600]), 0)).toBe(0)
    expect(foundBefore_mm(sight(), 1000)).toBe(0)
  })
})
