import { describe, expect, it } from 'vitest'
import { block, plainDoor, plainState } from '../../cases/plain-door.ts'
import type { Leaf, Obstacle } from '../model/door.ts'
import { radians } from '../space/trigonometry.ts'
import { sweepGaps } from './leaf-sweep.ts'

// Opening 2000 wide. All gaps worked on paper.
const leaf = (travel: Leaf['travel'], bulge_mm = 0): Leaf => ({ travel, thickness_mm: 40, bulge_mm })
const parked = (x_mm: number, y_mm: number, length_mm: number, yaw_deg = 0): Obstacle =>
  block({ id: 'parked-leaf', name: 'parked leaf', implied: true, x_mm, y_mm, size_mm: [length_mm, 40], yaw_rad: radians(yaw_deg) })

function gaps(of: Leaf, obstacles: readonly Obstacle[]) {
  return sweepGaps(plainDoor({ leaf: of }), plainState({ obstacles }))?.map(({ obstacle, gap_mm }) => [
    obstacle.id,
    Math.round(gap_mm * 1e6) / 1e6,
  ])
}

describe('the tail of a leaf that runs back', () => {
  // parked from 2000 to 4100: the tail goes from 2100 to 4100
  const open = parked(3050, 0, 2100)
  it('is measured to what stands ahead, beside its path with the bulge, and not to what the leaf passes before', () => {
    const ahead = block({ id: 'ahead', x_mm: 4500, size_mm: [100, 100] }) // from 4450
    const beside = block({ id: 'beside', x_mm: 3000, y_mm: 300, size_mm: [100, 100] }) // from y 250
    const guide = block({ id: 'guide', x_mm: 2050, size_mm: [80, 200] }) // ends at 2090
    expect(gaps(leaf('toward-zero', 30), [open, ahead, beside, guide])).toEqual([
      ['ahead', 350],
      ['beside', 200],
    ])
    const other = { ...beside, y_mm: -300 }
    expect(gaps(leaf('toward-zero', 30), [open, other])).toEqual([['beside', 200]])
  })
  it('goes the other way when the door closes toward the width', () => {
    const ahead = block({ id: 'ahead', x_mm: -2500, size_mm: [100, 100] })
    expect(gaps(leaf('toward-width'), [parked(-1050, 0, 2100), ahead])).toEqual([['ahead', 350]])
  })
  it('has a twin where two leaves meet', () => {
    const obstacles = [parked(2525, 0, 1050), block({ id: 'right', x_mm: 3300 }), block({ id: 'left', x_mm: -1400 })]
    expect(gaps(leaf('both-inward'), obstacles)).toEqual([
      ['right', 200],
      ['left', 300],
    ])
  })
  it('is 0 for something listed in its way; a wall around it is its pocket', () => {
    const wall = block({ id: 'wall-at-width', implied: true, x_mm: 3000, size_mm: [2000, 300] })
    expect(gaps(leaf('toward-zero'), [open, block({ id: 'rock', x_mm: 3000 }), wall])).toEqual([['rock', 0]])
  })
  it('does not meet what ends below it or begins above', () => {
    const low = block({ id: 'low', x_mm: 4500, to_mm: 0, from_mm: -100 })
    expect(gaps(leaf('toward-zero'), [open, low])).toEqual([])
  })
})

describe('the sweep of a leaf that swings', () => {
  // hinge at x = 0, open at 90 degrees toward side A: parked along y from 0 to 2000
  const open = parked(0, 1000, 2000, 90)
  it('is measured from the open leaf to a wall beside it, and from the circle of its tip', () => {
    const wall = block({ id: 'wall', x_mm: -300, y_mm: 1000, size_mm: [100, 3000] }) // its face at x = -250
    const post = { ...block({ id: 'post' }), shape: 'post', x_mm: 1800, y_mm: 2400, radius_mm: 100 } as Obstacle // 3000 from the hinge
    expect(gaps(leaf('turning'), [open, wall, post])).toEqual([
      ['wall', 230],
      ['post', 880],
    ])
  })
  it('leaves alone what it only moves away from', () => {
    const behind = block({ id: 'behind', x_mm: 1000, y_mm: -300, size_mm: [3000, 100] })
    expect(gaps(leaf('turning'), [open, behind])).toEqual([])
  })
  it('meets the wall on which it folds back flat, to either side', () => {
    for (const y_mm of [60, -60]) {
      const wall = block({ id: 'wall', x_mm: -1000, y_mm: -y_mm, size_mm: [2000, 40] })
      expect(gaps(leaf('turning'), [parked(-1000, y_mm, 2000), wall])).toEqual([['wall', 80]])
    }
  })
  it('has a twin where two leaves of half the width meet', () => {
    const wall = block({ id: 'wall', x_mm: 2300, y_mm: 500, size_mm: [100, 3000] })
    expect(gaps(leaf('turning'), [parked(0, 500, 1000, 90), wall])).toEqual([['wall', 230]])
  })
  it('is not computed for a leaf that folds, hangs elsewhere, or was not parked', () => {
    for (const away of [parked(0, 700, 1400, 90), parked(900, 1000, 2000, 90)]) expect(gaps(leaf('turning'), [away])).toBeUndefined()
    expect(gaps(leaf('turning'), [])).toBeUndefined()
    expect(gaps(leaf('down'), [open])).toBeUndefined()
  })
})
