import { describe, expect, it } from 'vitest'
import { bodyOf, box, cylinder, plainDoor, plainState } from '../../cases/plain-door.ts'
import { laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import type { Stance } from '../coverage/scene.ts'
import type { HingedLeaf } from '../model/door.ts'
import { isUnhung, type LeafApproach, leafApproach } from './leaf-approach.ts'
import { waySights } from './way-sights.ts'

const QUARTER = Math.PI / 2
const hung = (changes: Partial<HingedLeaf> = {}) => ({
  travel: 'turning' as const,
  thickness_mm: 40,
  bulge_mm: 0,
  hinged: {
    hinge: 'at-zero' as const,
    opensTo: 'a' as const,
    length_mm: 2000,
    secondPanel_mm: undefined,
    openAngle_rad: QUARTER,
    ...changes,
  },
})
const approachOf = (changes: Partial<HingedLeaf> = {}): LeafApproach => {
  const found = leafApproach(plainDoor({ leaf: hung(changes) }), plainState())
  if (found === undefined) throw new Error('the door must have a leaf that is hung')
  return found
}
const standing = (posture: Stance['posture']): Stance => ({ body: bodyOf([posture]), posture, index: 0, yaw_rad: 0 })
const thin = standing(cylinder(1, 1700))

describe('where a leaf comes to whoever approaches', () => {
  // Hand calculation: the corner of a leaf 2000 long and 40 thick passes x = 1000 at sqrt(2000^2 + 20^2 - 1000^2) = 1732.2; from side B it comes no nearer than its half
  it('is as far out as a swinging leaf ever is at this x, and half its thickness on the other side', () => {
    const { reach_mm } = approachOf()
    expect(reach_mm(thin, 1000, 'a')).toBeGreaterThan(1732)
    expect(reach_mm(thin, 1000, 'a')).toBeLessThan(1735)
    expect(reach_mm(thin, 1000, 'b')).toBeGreaterThan(20)
    expect(reach_mm(thin, 1000, 'b')).toBeLessThan(23)
    expect(reach_mm(thin, 2100, 'a')).toBeUndefined()
  })

  // Hand calculation: its middle is seen from 2500 on (method-cases: beams to 2400, a body 200 deep)
  it('is what a sight is measured to', () => {
    const door = plainDoor({ leaf: hung(), bodies: [bodyOf([box(300, 200, 1500)])], sensors: wideGrid() })
    const [sensor] = wideGrid()
    const [field] = sensor?.fields ?? []
    if (!sensor || !field) throw new Error('a grid must have a field')
    const { sights } = waySights(door, plainState(), laneOf({ xMin_mm: 850, xMax_mm: 1150 }), approachOf(), [{ sensor, field }])
    // the corner nearer to the hinge is met first: sqrt(2000^2 + 20^2 - 850^2) = 1810.4, and half of 200
    const [fromA] = sights.filter(({ from }) => from === 'a')
    expect(fromA?.reach_mm).toBeGreaterThan(1910)
    expect(fromA?.reach_mm).toBeLessThan(1912)
  })

  // Hand calculation: at x = 1000 the far face of the leaf is past it from cos(angle) = 1000 / 2000 on, less the thickness: 60 degrees and a little, 2094 mm of arc and a little
  it('is left by an opening leaf when it has passed all of the way of the body', () => {
    const clear = approachOf().clear_mm(thin, 1000)
    expect(clear).toBeGreaterThan(2094)
    expect(clear).toBeLessThan(2150)
    // 30 degrees open, it is never past x = 1000
    const narrow = approachOf({ openAngle_rad: QUARTER / 3 })
    expect(narrow.clear_mm(thin, 1000)).toBeGreaterThan(narrow.way_mm)
  })

  it('asks how a leaf is hung only where it turns', () => {
    expect(isUnhung({ travel: 'turning', thickness_mm: 40, bulge_mm: 0 })).toBe(true)
    expect([isUnhung(hung()), isUnhung({ travel: 'down', thickness_mm: 40, bulge_mm: 0 })]).toEqual([false, false])
  })
})
