import type { Door, Finding } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { judgementOf, loadingDoor } from '../../test/doors.ts'
import { METRIC } from '../../test/readers.ts'
import { drawOnScreen, type ProjectionName } from './screen.ts'
import { onSheet } from './view.ts'

type Point = NonNullable<Door['dangers']>['points'][number]
const nothing = { obstacle: undefined, gap_mm: 40, part: undefined, guards: [] } as const
const placed: Point = { ...nothing, id: 'in', name: 'leaf and post', kind: 'draw-in', from_mm: 700, place: { x_mm: 900, y_mm: 400 } }
const unplaced: Point = { ...nothing, id: 'ride', name: 'bottom rail', kind: 'lifting', from_mm: undefined, place: undefined }

function drawn(points: readonly Point[], projection: ProjectionName) {
  const door = { ...loadingDoor, dangers: { points, none: [] } }
  return drawOnScreen(door, judgementOf(door, []), { ...METRIC, projection, width_mm: 240, height_mm: 150 })
}

describe('a danger point', () => {
  it.each(['plan', 'elevation', 'section'] as const)('is marked and named where somebody said that it is: %s', (projection) => {
    const { marks, view } = drawn([placed], projection)
    const place = { plan: { u_mm: 900, v_mm: 400 }, elevation: { u_mm: 900, v_mm: 700 }, section: { u_mm: -400, v_mm: 700 } }[projection]
    const { x_mm, y_mm } = onSheet(view, place)
    const triangles = marks.flatMap((mark) => (mark.kind === 'area' && mark.rings[0]?.length === 3 ? mark.rings : []))
    expect(triangles).toHaveLength(1)
    const middle = triangles[0]?.map((spot) => spot.x_mm).reduce((sum, x) => sum + x / 3, 0)
    expect(middle).toBeCloseTo(x_mm, 6)
    expect(triangles[0]?.some((spot) => spot.y_mm < y_mm) && triangles[0]?.some((spot) => spot.y_mm > y_mm)).toBe(true)
    expect(marks.some((mark) => mark.kind === 'text' && mark.text.includes('leaf and'))).toBe(true)
  })
  it('is marked where its gap was computed to be smallest, and says in words that it is', () => {
    const gap: Finding = {
      id: 'danger-point:tail/post@level',
      rule: 'danger-point',
      subject: { kind: 'danger', id: 'tail/post' },
      edition: '2026-11',
      state: loadingDoor.states[0]?.id ?? '',
      verdict: 'fail',
      measured: { value: 320, unit: 'mm' },
      limit: { value: 500, unit: 'mm' },
      steps: [],
      basis: [],
      facts: { kind: 'tail', by: 'nothing', gap_mm: 320, height_mm: 0, gapX_mm: 900, gapY_mm: 400 },
    }
    const judgement = judgementOf(loadingDoor, [], [gap])
    const { marks, view } = drawOnScreen(loadingDoor, judgement, { ...METRIC, projection: 'plan', width_mm: 240, height_mm: 150 })
    const triangle = marks.find((mark) => mark.kind === 'area' && mark.rings[0]?.length === 3)
    const corners = triangle?.kind === 'area' ? (triangle.rings[0] ?? []) : []
    expect(corners.reduce((sum, { x_mm }) => sum + x_mm / 3, 0)).toBeCloseTo(onSheet(view, { u_mm: 900, v_mm: 400 }).x_mm, 6)
    expect(marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join()).toContain('320 mm, computed')
  })
  it('is not drawn where nobody said where it is', () => {
    expect(drawn([unplaced], 'plan').marks).toEqual(drawn([], 'plan').marks)
  })
})
