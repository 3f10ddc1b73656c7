import type { BodyPart } from '../src/model/body.ts'
import type { Door, DoorState, Floor } from '../src/model/door.ts'
import type { Field, RangingSensor, SegmentSensor } from '../src/model/sensor.ts'
import { cos, sin } from '../src/space/trigonometry.ts'
import { backgroundDistance, beamsOfPlane, reachOf } from './slow-twin-beams.ts'
import { floorHeight, type Line, passageThrough, type Solid, shrunk, solidOfObstacle } from './slow-twin-solids.ts'

/** Whether a field sees a body of several parts with its middle at (x, y), beam by beam, straight from docs/method.md, "Bodies of several parts". */
export function twinSeesParts(
  door: Door,
  state: DoorState,
  { sensor, field }: { readonly sensor: RangingSensor | SegmentSensor; readonly field: Field },
  parts: readonly BodyPart[],
  yaw_rad: number,
  x: number,
  y: number,
): boolean {
  const solids = parts.map((part) => ({ solid: solidOfPart(part, yaw_rad, state.floor, x, y), reflectance: part.reflectance }))
  const runs = sensor.kind === 'segment' ? segmentRuns(sensor, field, state, solids) : rangingRuns(door, sensor, field, state, solids)
  return runs.some((seen) => {
    let run = 0
    return seen.some((sees) => {
      run = sees ? run + 1 : 0
      return run >= field.clusterBeams
    })
  })
}

interface Placed {
  readonly solid: Solid
  readonly reflectance: number
}

function solidOfPart(part: BodyPart, yaw_rad: number, floor: Floor, x: number, y: number): Solid {
  const bottom = floorHeight(floor, x, y) + part.from_mm
  const [c, s] = [cos(yaw_rad), sin(yaw_rad)]
  const place = { x: x + part.alongX_mm * c - part.alongY_mm * s, y: y + part.alongX_mm * s + part.alongY_mm * c, bottom }
  return part.shape === 'cylinder'
    ? { shape: 'cylinder', ...place, radius: part.radius_mm, top: bottom + part.height_mm }
    : { shape: 'box', ...place, halfA: part.a_mm / 2, halfB: part.b_mm / 2, yaw_rad, top: bottom + part.c_mm }
}

function rangingRuns(
  door: Door,
  sensor: RangingSensor,
  field: Field,
  state: DoorState,
  parts: readonly Placed[],
): readonly (readonly boolean[])[] {
  const learned = door.states.find(({ id }) => id === sensor.learnedIn) ?? state
  return sensor.planes
    .filter(({ id }) => field.planes.includes(id))
    .map((plane) =>
      beamsOfPlane(plane, sensor.pose).map((line) => {
        const met = parts
          .map((part) => ({ part, whole: passageThrough(line, part.solid) }))
          .filter(({ whole }) => whole !== undefined && whole.leaves > 0)
          .sort((a, b) => (a.whole?.enters ?? 0) - (b.whole?.enters ?? 0))
        const first = met[0]?.part
        if (first === undefined) return false
        const entry = passageThrough(line, shrunk(first.solid, sensor.spotRadius_mm))
        if (entry === undefined || entry.enters <= 0) return false
        if (!(entry.enters < backgroundDistance(line, learned, state) - sensor.backgroundMargin_mm)) return false
        if (entry.enters > reachOf(sensor, first.reflectance, entry.cosine, door.extinction_per_mm)) return false
        const [px, py, pz] = entry.point
        const height = pz - floorHeight(state.floor, px, py)
        const inSides = field.xMin_mm <= px && px <= field.xMax_mm && field.yMin_mm <= py && py <= field.yMax_mm
        return inSides && field.clearance_mm <= height && height <= field.top_mm
      }),
    )
}

function segmentRuns(sensor: SegmentSensor, field: Field, state: DoorState, parts: readonly Placed[]): readonly (readonly boolean[])[] {
  const obstacles = state.obstacles.map(solidOfObstacle)
  const interrupts = (solid: Solid, line: Line) => {
    const passage = passageThrough(line, solid)
    return passage !== undefined && passage.enters < 1 && passage.leaves > 0
  }
  return sensor.planes
    .filter(({ id }) => field.planes.includes(id))
    .map((plane) =>
      plane.segments.map(({ from_mm: [x, y, z], to_mm }) => {
        const line: Line = { from: [x, y, z], along: [to_mm[0] - x, to_mm[1] - y, to_mm[2] - z] }
        if (obstacles.some((obstacle) => interrupts(obstacle, line))) return false
        return parts.some(({ solid }) => interrupts(shrunk(solid, sensor.spotRadius_mm), line))
      }),
    )
}
