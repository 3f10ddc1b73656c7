import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseDocument, toDoor } from '@sillsight/document'
import { type Course, type Door, judge, type Leaf } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { type Moment, movingSolids } from './moving-solids.ts'

const text = readFileSync(join(import.meta.dirname, '../../../cli/demo/box-hatch.json'), 'utf8')
const parsed = parseDocument(text)
if (!parsed.ok) throw new Error('the demo door must be read')
const door: Door = toDoor(parsed.document, parsed.catalogue)
const course = judge(door, { depth: 'grid' }).findings.find(({ rule }) => rule === 'struck-by-leaf')?.course as Course

function boxes(of: Door, moment: Partial<Moment>) {
  const at = { finding: 'struck-by-leaf:boxes', course, state: undefined, at_s: 0, ...moment }
  return movingSolids(of, at).map(({ name, at: shape }) => {
    if (shape.shape !== 'box') throw new Error('a box must be drawn as a box')
    const [x, y, z] = shape.middle
    const [a, b, c] = shape.size_mm
    return { name, x: [x - a / 2, x + a / 2], y: [y - b / 2, y + b / 2], z: [z - c / 2, z + c / 2] }
  })
}
const leaf = (travel: Leaf['travel']): Door => ({ ...door, leaf: { travel, thickness_mm: 22, bulge_mm: 5 } })
const fixed = (way_mm: number): Course => ({ ...course, leaf: [[0, way_mm]], opening_mm: way_mm })

describe('what moves at an instant', () => {
  it('has its edge as high as it has way to go, and in the body at contact: there its edge is lower than the box of 300 is high', () => {
    const [slab] = boxes(door, { course: fixed(1000) })
    expect(slab?.z).toEqual([1000, 1470])
    const [met, body] = boxes(door, { at_s: course.at_s })
    expect(met?.z[0]).toBeLessThan(300)
    expect(body?.z).toEqual([0, 300])
  })
  it('stands at the side to which it opens, both halves of a leaf that meets in the middle', () => {
    expect(boxes(leaf('toward-zero'), { course: fixed(400) })[0]?.x).toEqual([400, 1130])
    expect(boxes(leaf('toward-width'), { course: fixed(400) })[0]?.x).toEqual([0, 730])
    const halves = boxes(leaf('both-inward'), { course: fixed(200) }).filter(({ name }) => name === 'leaf')
    expect(halves.map(({ x }) => x)).toEqual([
      [0, 365],
      [765, 1130],
    ])
  })
  // Hand calculation: a leaf of 1130 that hangs at x = 0 and is open by a right angle has its middle 565 mm out
  it('turns about its hinge by the way of its edge over its length', () => {
    const hinged = { hinge: 'at-zero', opensTo: 'a', length_mm: 1130, secondPanel_mm: undefined, openAngle_rad: Math.PI / 2 } as const
    const swinging: Door = { ...door, leaf: { travel: 'turning', thickness_mm: 22, bulge_mm: 5, hinged } }
    const moment = { finding: '', course: fixed((1130 * Math.PI) / 2), state: undefined, at_s: 0 }
    const [slab] = movingSolids(swinging, moment)
    if (slab?.at.shape !== 'box') throw new Error('a panel must be drawn as a box')
    expect(slab.at.middle.map((mm) => Math.round(mm))).toEqual([0, 565, 735])
    expect(slab.at.yaw_rad).toBeCloseTo(Math.PI / 2, 9)
  })
  it('touches the plane of the leaf with its front when it enters it: 11 mm of leaf and 5 of bulge', () => {
    const [, body] = boxes(door, { at_s: course.enters_s ?? Number.NaN })
    expect(Math.min(...(body?.y ?? []).map(Math.abs))).toBeCloseTo(16, 6)
  })
})
