import type { Door } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { loadingDoor } from '../../test/doors.ts'
import { lightGrids } from './light-grid.ts'
import type { Mark } from './model.ts'
import { viewAt } from './view.ts'

const window = { uMin_mm: -500, uMax_mm: 4500, vMin_mm: -200, vMax_mm: 3000 }
const at25 = viewAt(window, 25, { x_mm: 0, y_mm: 0 })

/** A level grid of so many beams, one every so many mm out. */
function withGrid(count: number, every_mm: number): Door {
  const segments = Array.from({ length: count }, (_, i) => ({
    from_mm: [0, i * every_mm, 70] as const,
    to_mm: [4000, i * every_mm, 70] as const,
  }))
  const grid = {
    kind: 'segment' as const,
    id: 'grid',
    name: 'grid',
    source: { basis: 'invented' as const },
    spotRadius_mm: 0,
    planes: [{ id: 'level', segments }],
    fields: [],
  }
  return { ...loadingDoor, sensors: [grid] }
}

const drawn = (door: Door) => lightGrids(door, at25, ([u_mm, v_mm]) => ({ u_mm, v_mm }))
const heights = (marks: readonly Mark[]) => marks.flatMap((mark) => (mark.kind === 'line' ? [mark.points[0]?.y_mm ?? 0] : []))

describe('a light grid', () => {
  it('is drawn beam by beam, with a block at each end, where its beams lie 2 mm apart on the paper', () => {
    const { beams, bars, ends } = drawn(withGrid(10, 50))
    expect([beams.length, bars.length, ends.length]).toEqual([10, 0, 20])
  })

  // Hand calculation: 0.8 mm apart on the paper, so that every third one is drawn: 2.4 mm
  it('is drawn as some of its beams, the first and the last among them, and two bars where they lie closer', () => {
    const { beams, bars, ends, boxes } = drawn(withGrid(31, 20))
    expect(bars).toHaveLength(2)
    expect([ends.length, boxes.length]).toEqual([4, 2])
    const at = heights(beams)
    expect(at).toHaveLength(11)
    expect([at[0], at[at.length - 1]].map((y_mm) => Math.round((y_mm ?? 0) * 10) / 10)).toEqual([120, 96])
    const gaps = at.slice(1).map((y_mm, i) => (at[i] ?? 0) - y_mm)
    expect(Math.min(...gaps)).toBeGreaterThanOrEqual(2)
  })

  it('is one beam where its beams lie above each other as it is looked at', () => {
    const { beams, bars, ends } = drawn(withGrid(5, 0))
    expect([beams.length, bars.length, ends.length]).toEqual([1, 0, 2])
  })
})
