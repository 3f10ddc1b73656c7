import { parseDocument, toDoor } from '@sillsight/document'
import { judge } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { type Point, type Solid, solidsOf } from './solids.ts'

const file = {
  sillsight: 1,
  sides: { a: 'yard', b: 'hall' },
  survey: {
    opening: { width_mm: 3000, height_mm: 2500 },
    leaf: { travel: 'down', thickness_mm: 40, bulge_mm: 0 },
    floor: {
      profile_mm: [
        [0, 0],
        [1000, 100],
      ],
      slopeX_percent: 0,
      tolerance_mm: 5,
    },
    obstacles: [{ id: 'bollard', name: 'bollard', shape: 'post', x_mm: 300, y_mm: 900, radius_mm: 60, from_mm: 0, to_mm: 900 }],
  },
  sensors: [{ id: 'one', name: 'scanner', use: 'demo-header-scanner', side: 'a', mountingHeight_mm: 2600, offset_mm: 200, x_mm: 1500 }],
}
const parsed = parseDocument(JSON.stringify(file))
if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
const door = toDoor(parsed.document, parsed.catalogue)
const judgement = judge(door)
const solids = solidsOf(door, judgement, {})
const of = (kind: Solid['kind']) => solids.filter((solid) => solid.kind === kind)
const linesOf = (solid: Solid | undefined) => (solid?.at.shape === 'lines' ? solid.at.lines : [])

describe('the door in space', () => {
  it('has what the survey lists and implies, under its names', () => {
    expect(of('thing').map(({ name }) => name)).toEqual(['bollard'])
    expect(of('thing')[0]?.at).toEqual({ shape: 'post', middle: [300, 900, 450], radius_mm: 60, height_mm: 900 })
    expect(of('sensor').map(({ name }) => name)).toEqual(['scanner'])
    expect(of('zone').map(({ name }) => name)).toEqual(door.zones.map(({ name }) => name))
  })
  it('has a floor that follows its profile, without gaps between its strips', () => {
    const [floor] = of('floor')
    const quads = floor?.at.shape === 'quads' ? floor.at.quads : []
    expect(quads.length).toBe(3)
    for (const [i, quad] of quads.slice(1).entries()) expect([quad[0], quad[1]]).toEqual([quads[i]?.[3], quads[i]?.[2]])
    expect(quads[0]?.every(([, , z]: Point) => z === 0)).toBe(true)
    expect(quads[2]?.every(([, , z]: Point) => z === 100)).toBe(true)
  })
  it('has the outline of what goes unseen on the floor, and a body for each worst case', () => {
    const regions = judgement.coverages.flatMap(({ exact }) => exact?.regions ?? [])
    expect(regions.length).toBeGreaterThan(0)
    const shown = of('unseen').map(({ at }) => (at.shape === 'area' ? at.rings.map((ring) => ring.map(([x, y]) => [x, y])) : []))
    expect(regions.map(({ rings }) => rings)).toEqual(expect.arrayContaining(shown))
    expect(of('body').length).toBeGreaterThan(0)
  })
  it('has beams that start at their sensor and end within the floor that is shown', () => {
    const floor = of('floor').flatMap(({ at }) => (at.shape === 'quads' ? at.quads.flat() : []))
    const xs = floor.map(([x]) => x)
    for (const [from, to] of linesOf(of('beams')[0])) {
      expect(from).toEqual([1500, 200, 2600])
      expect(to[0]).toBeGreaterThanOrEqual(Math.min(...xs) - 1e-6)
      expect(to[0]).toBeLessThanOrEqual(Math.max(...xs) + 1e-6)
    }
    expect(linesOf(of('beams')[0]).length).toBeGreaterThan(50)
  })
})
