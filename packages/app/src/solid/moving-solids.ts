import { type Course, type Door, floorHeight, floorPieces, leafCorners, readingAt, turningLeaf } from '@sillsight/engine'
import { bodyAt, solidsOfBody } from '@sillsight/report'
import { type Shape, type Solid, shapeOf } from './solids.ts'

/** One instant of a course: what moves, and where it then is. */
export interface Moment {
  readonly finding: string
  readonly course: Course
  readonly state: string | undefined
  readonly at_s: number
}

/** Leaf and body as they are at an instant, for eyes alone. */
export function movingSolids(door: Door, { course, state, at_s }: Moment): readonly Solid[] {
  return [...leafAt(door, course, state, at_s), ...bodySolids(door, course, state, at_s)]
}

function leafAt(door: Door, course: Course, stateId: string | undefined, at_s: number): readonly Solid[] {
  const { leaf, opening } = door
  const state = door.states.find(({ id }) => id === stateId) ?? door.states[0]
  if (leaf === undefined || state === undefined) return []
  const { width_mm, height_mm } = opening
  const way_mm = readingAt(course.leaf, at_s)
  const floor = floorPieces(state.floor)
  const slab = (from_mm: number, to_mm: number, low_mm: number): Solid[] => {
    const size = [to_mm - from_mm, Math.max(4, leaf.thickness_mm), height_mm - low_mm] as const
    if (!(size[0] > 0 && size[2] > 0)) return []
    const at: Shape = { shape: 'box', middle: [(from_mm + to_mm) / 2, 0, (low_mm + height_mm) / 2], size_mm: size, yaw_rad: 0 }
    return [{ kind: 'moving', name: 'leaf', at }]
  }
  switch (leaf.travel) {
    case 'down':
      return slab(0, width_mm, Math.max(floorHeight(floor, 0, 0), floorHeight(floor, width_mm, 0)) + way_mm)
    case 'toward-zero':
      return slab(way_mm, width_mm, 0)
    case 'toward-width':
      return slab(0, width_mm - way_mm, 0)
    case 'both-inward':
      return [...slab(0, width_mm / 2 - way_mm, 0), ...slab(width_mm / 2 + way_mm, width_mm, 0)]
    default:
      return turningPanels(door, way_mm)
  }
}

/** The panels of a leaf that turns. */
function turningPanels(door: Door, way_mm: number): readonly Solid[] {
  const turning = turningLeaf(door)
  if (turning === undefined) return []
  const thickness_mm = Math.max(4, door.leaf?.thickness_mm ?? 0)
  const { height_mm } = door.opening
  return leafCorners(turning, way_mm).map(({ middle: [x_mm, y_mm], length_mm, yaw_rad }) => {
    const at: Shape = { shape: 'box', middle: [x_mm, y_mm, height_mm / 2], size_mm: [length_mm, thickness_mm, height_mm], yaw_rad }
    return { kind: 'moving', name: 'leaf', at }
  })
}

function bodySolids(door: Door, course: Course, state: string | undefined, at_s: number): readonly Solid[] {
  const body = bodyAt(door, course, state, at_s)
  if (body === undefined) return []
  return solidsOfBody(body.posture, body.worstCase).map((solid) => ({ kind: 'moving', name: 'body', at: shapeOf(solid) }))
}
