import { describe, expect, it } from 'vitest'
import type { HingedLeaf } from '../model/door.ts'
import { leafCorners, type Swing, type TurningLeaf, turningEnergy_J, turningLeaf, velocityOf } from './turning-leaf.ts'

function hung(changes: Partial<HingedLeaf> = {}): TurningLeaf {
  const hinged: HingedLeaf = {
    hinge: 'at-zero',
    opensTo: 'a',
    length_mm: 1000,
    secondPanel_mm: undefined,
    openAngle_rad: Math.PI / 2,
    ...changes,
  }
  const leaf = turningLeaf({
    leaf: { travel: 'turning', thickness_mm: 40, bulge_mm: 10, hinged },
    opening: { width_mm: 2000, height_mm: 2000 },
  })
  if (!leaf) throw new Error('a hinged leaf must turn')
  return leaf
}
const middles = (leaf: TurningLeaf, angle_rad: number) =>
  leafCorners(leaf, angle_rad * leaf.arm_mm).map(({ middle }) => middle.map((mm) => Math.round(mm * 10) / 10))

describe('turningLeaf', () => {
  // Hand calculations: sine and cosine of 30 degrees
  it('swings about its hinge to the side to which it opens', () => {
    expect(middles(hung(), Math.PI / 6)).toEqual([[433, 250]])
    expect(middles(hung({ hinge: 'at-width', opensTo: 'b' }), Math.PI / 6)).toEqual([[1567, -250]])
    expect(middles(hung({ hinge: 'both' }), 0)).toEqual([
      [500, 0],
      [1500, 0],
    ])
  })

  // Hand calculation: equal panels fold like the sides of a roof, its foot at 2 cos(60) of a length
  it('folds with the end of its second panel on the line of the opening', () => {
    expect(middles(hung({ secondPanel_mm: 1000 }), Math.PI / 3)).toEqual([
      [250, 433],
      [750, 433],
    ])
  })

  it('moves no point faster than it says, and each as its place changes (a hundred angles of leaves that swing and fold)', () => {
    for (const secondPanel_mm of [undefined, 1000, 1300])
      for (let k = 1; k < 100; k++) {
        const leaf = hung({ secondPanel_mm })
        const [swing] = leaf.swings as readonly [Swing]
        const way = (k / 100) * leaf.way_mm
        const [before, after] = [leafCorners(leaf, way + 0.005), leafCorners(leaf, way - 0.005)]
        for (const [panel, { corners }] of leafCorners(leaf, way).entries())
          for (const [i, corner] of corners.entries()) {
            const [x, y] = velocityOf(swing, panel, way, 1, corner)
            const [from, to] = [before[panel]?.corners[i] ?? [0, 0], after[panel]?.corners[i] ?? [0, 0]]
            expect(Math.hypot(x - (to[0] - from[0]) / 0.01, y - (to[1] - from[1]) / 0.01)).toBeLessThan(1e-4)
            expect(Math.hypot(x, y)).toBeLessThanOrEqual(leaf.ratio * (1 + 1e-9))
          }
      }
  })

  it('has a sixth of m v^2 while it swings', () => {
    expect(turningEnergy_J(hung(), 60, 700, 500)).toBeCloseTo((60 * 0.25) / 6, 12)
  })
})
