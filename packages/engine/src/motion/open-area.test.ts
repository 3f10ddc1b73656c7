import { describe, expect, it } from 'vitest'
import { radians } from '../space/trigonometry.ts'
import { openArea } from './open-area.ts'

const opening = { width_mm: 2000, height_mm: 2500 }
const leafOf = (secondPanel_mm: number | undefined, hinge: 'at-zero' | 'both' = 'at-zero') => {
  const length_mm = (hinge === 'both' ? 1000 : 2000) / (secondPanel_mm === undefined ? 1 : 2)
  const hinged = { hinge, opensTo: 'a' as const, length_mm, secondPanel_mm, openAngle_rad: radians(90) }
  return { travel: 'turning' as const, thickness_mm: 40, bulge_mm: 0, hinged }
}
const open = (leaf: ReturnType<typeof leafOf>, angle_deg: number) =>
  openArea({ leaf, opening }, radians(90) * leaf.hinged.length_mm)(radians(angle_deg) * leaf.hinged.length_mm)

describe('what is open', () => {
  // Hand calculation: an edge 2000 from its hinge is 2 * 2000 * sin(30 / 2 degrees) = 1035.3 from where it shuts; at 90 degrees farther than the opening is wide
  it('is as wide as the edge of a swinging leaf is away from where it shuts, and no wider than the opening', () => {
    expect(open(leafOf(undefined), 0)).toEqual([0, 2500])
    expect(open(leafOf(undefined), 30)[0]).toBeCloseTo(1035.28, 1)
    expect(open(leafOf(undefined), 90)).toEqual([2000, 2500])
    expect(open(leafOf(undefined, 'both'), 30)[0]).toBeCloseTo(1035.28, 1)
  })

  // Hand calculation: two panels of 1000 at 60 degrees leave 2000 (1 - cos 60) = 1000
  it('is what the guided end of a folding leaf has left free', () => {
    expect(open(leafOf(1000), 60)[0]).toBeCloseTo(1000, 6)
    expect(open(leafOf(1000), 90)[0]).toBeCloseTo(2000, 6)
  })

  it('is what a leaf that goes down or along has left', () => {
    expect(openArea({ leaf: { travel: 'down', thickness_mm: 40, bulge_mm: 0 }, opening }, 2500)(700)).toEqual([2000, 700])
    expect(openArea({ leaf: { travel: 'both-inward', thickness_mm: 40, bulge_mm: 0 }, opening }, 1000)(500)).toEqual([1000, 2500])
  })
})
