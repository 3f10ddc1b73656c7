import { judge, type ZoneCoverage } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { loadingDoor } from '../test/doors.ts'
import { unseenGround } from './unseen-ground.ts'

const grid = { x0_mm: 0, y0_mm: 0, pitch_mm: 10, columns: 4, rows: 4 }
const of = (changes: Partial<ZoneCoverage>): readonly object[] =>
  unseenGround({
    zone: 'z',
    state: 's',
    grid,
    postures: [],
    yawSampled: false,
    counts: { seen: 0, blind: 0, notFree: 0 },
    blindRuns: [[1, 2, 3]],
    notFreeRuns: [],
    pockets: [],
    countedFields: [],
    ...changes,
  })

describe('the ground that is hatched', () => {
  it('is that of blind cells where only the grid was asked', () => {
    expect(of({})).toEqual([{ xMin_mm: 20, xMax_mm: 40, yMin_mm: 10, yMax_mm: 20 }])
  })

  it('is cut out of the exact outline, around its holes, with the area that the engine tells', () => {
    const regions = judge(loadingDoor).coverages.flatMap(({ exact }) => (exact ? [exact] : []))
    expect(regions.length).toBeGreaterThan(0)
    for (const exact of regions) {
      const cut = unseenGround({ exact, blindRuns: [], grid } as unknown as ZoneCoverage)
      const area_mm2 = cut.reduce((sum, { xMin_mm, xMax_mm, yMin_mm, yMax_mm }) => sum + (xMax_mm - xMin_mm) * (yMax_mm - yMin_mm), 0)
      expect(Math.abs(area_mm2 - exact.asWritten.area_mm2)).toBeLessThan(1e-6 * Math.max(1, area_mm2))
    }
    const frame = [
      [
        [0, 0],
        [9, 0],
        [9, 9],
        [0, 9],
      ],
      [
        [3, 3],
        [3, 6],
        [6, 6],
        [6, 3],
      ],
    ] as const
    const exact = { regions: [{ area_mm2: 72, rings: frame, circle: { x_mm: 0, y_mm: 0, radius_mm: 0 } }] }
    expect(of({ exact: exact as unknown as NonNullable<ZoneCoverage['exact']> })).toEqual([
      { xMin_mm: 0, xMax_mm: 9, yMin_mm: 0, yMax_mm: 3 },
      { xMin_mm: 0, xMax_mm: 3, yMin_mm: 3, yMax_mm: 6 },
      { xMin_mm: 6, xMax_mm: 9, yMin_mm: 3, yMax_mm: 6 },
      { xMin_mm: 0, xMax_mm: 9, yMin_mm: 6, yMax_mm: 9 },
    ])
  })
})
