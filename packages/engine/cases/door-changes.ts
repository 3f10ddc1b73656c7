import type { Body } from '../src/model/body.ts'
import type { Door, DoorState, Floor, Obstacle } from '../src/model/door.ts'
import type { BeamPlane, Field, RangingSensor, SegmentSensor, Sensor } from '../src/model/sensor.ts'

/* Doors made from doors, for the laws that every coverage map has to keep. */

export function withFields(door: Door, change: (field: Field) => Field): Door {
  return {
    ...door,
    sensors: door.sensors.map((sensor) => (sensor.kind === 'zone-only' ? sensor : { ...sensor, fields: sensor.fields.map(change) })),
  }
}

export function withRanging(door: Door, change: (sensor: RangingSensor) => RangingSensor): Door {
  return { ...door, sensors: door.sensors.map((sensor) => (sensor.kind === 'ranging' ? change(sensor) : sensor)) }
}

export function withBodies(door: Door, change: (body: Body) => Body): Door {
  return { ...door, bodies: door.bodies.map(change) }
}

export function withStates(door: Door, change: (state: DoorState) => DoorState): Door {
  return { ...door, states: door.states.map(change) }
}

/** Left and right changed over: x becomes `about` - x, and every angle that turns toward +x or from +x to +y turns round. */
export function mirrored(door: Door, about_mm: number): Door {
  const x = (x_mm: number) => about_mm - x_mm
  const span = <T extends { readonly xMin_mm: number; readonly xMax_mm: number }>(each: T): T => ({
    ...each,
    xMin_mm: x(each.xMax_mm),
    xMax_mm: x(each.xMin_mm),
  })
  return {
    ...door,
    states: door.states.map((state) => ({
      ...state,
      floor: mirroredFloor(state.floor, about_mm),
      obstacles: state.obstacles.map((obstacle) => mirroredObstacle(obstacle, x)),
    })),
    sensors: door.sensors.map((sensor) => {
      if (sensor.kind === 'zone-only') return span(sensor)
      const fields = sensor.fields.map(span)
      if (sensor.kind === 'segment') return { ...sensor, fields, planes: movedSegments(sensor, ([px, py, pz]) => [x(px), py, pz]) }
      const { pose } = sensor
      const turned = { ...pose, x_mm: x(pose.x_mm), yaw_rad: -pose.yaw_rad, roll_rad: -pose.roll_rad }
      return { ...sensor, fields, pose: turned, planes: sensor.planes.map((plane) => mirroredPlane(plane, x)) }
    }),
    bodies: door.bodies.map(mirroredBody),
    zones: door.zones.map(span),
  }
}

function mirroredFloor(floor: Floor, about_mm: number): Floor {
  return {
    ...floor,
    slopeX: -floor.slopeX,
    profile: floor.profile.map(({ y_mm, z_mm }) => ({ y_mm, z_mm: z_mm + floor.slopeX * about_mm })),
  }
}

function mirroredObstacle(obstacle: Obstacle, x: (x_mm: number) => number): Obstacle {
  const x_mm = x(obstacle.x_mm)
  return obstacle.shape === 'post' ? { ...obstacle, x_mm } : { ...obstacle, x_mm, yaw_rad: -obstacle.yaw_rad }
}

function mirroredPlane(plane: BeamPlane, x: (x_mm: number) => number): BeamPlane {
  if (plane.kind === 'row') return { ...plane, places: plane.places.map((place) => ({ ...place, x_mm: x(place.x_mm) })) }
  // one beam looks along fovMin alone
  const { fovMin_rad, fovMax_rad, beamCount } = plane
  return { ...plane, fovMin_rad: -(beamCount === 1 ? fovMin_rad : fovMax_rad), fovMax_rad: -fovMin_rad }
}

function mirroredBody(body: Body): Body {
  const postures = body.postures.map((posture) =>
    posture.shape === 'box' ? { ...posture, yawFrom_rad: -posture.yawTo_rad, yawTo_rad: -posture.yawFrom_rad } : posture,
  )
  return { ...body, postures }
}

type Point = readonly [number, number, number]

function movedSegments(sensor: SegmentSensor, move: (point: Point) => Point): SegmentSensor['planes'] {
  return sensor.planes.map((plane) => ({
    ...plane,
    segments: plane.segments.map(({ from_mm, to_mm }) => ({ from_mm: move(from_mm), to_mm: move(to_mm) })),
  }))
}

/** Everything moved together: along x, y and z. The floor moves with it. */
export function shifted(
  door: Door,
  { x_mm: dx, y_mm: dy, z_mm: dz }: { readonly x_mm: number; readonly y_mm: number; readonly z_mm: number },
): Door {
  const place = <T extends { readonly x_mm: number; readonly y_mm: number }>(each: T): T => ({
    ...each,
    x_mm: each.x_mm + dx,
    y_mm: each.y_mm + dy,
  })
  const raised = <T extends { readonly x_mm: number; readonly y_mm: number; readonly z_mm: number }>(each: T): T => ({
    ...place(each),
    z_mm: each.z_mm + dz,
  })
  const limits = <T extends Limits>(each: T): T => ({
    ...each,
    xMin_mm: each.xMin_mm + dx,
    xMax_mm: each.xMax_mm + dx,
    yMin_mm: each.yMin_mm + dy,
    yMax_mm: each.yMax_mm + dy,
  })
  const sensors = door.sensors.map((sensor): Sensor => {
    if (sensor.kind === 'zone-only') return limits(sensor)
    const fields = sensor.fields.map(limits)
    if (sensor.kind === 'segment') return { ...sensor, fields, planes: movedSegments(sensor, ([x, y, z]) => [x + dx, y + dy, z + dz]) }
    const planes = sensor.planes.map((plane) => (plane.kind === 'row' ? { ...plane, places: plane.places.map(raised) } : plane))
    return { ...sensor, fields, planes, pose: raised(sensor.pose) }
  })
  const states = door.states.map((state) => ({
    ...state,
    // z = profile(y) + slopeX x: the new x is larger by dx
    floor: {
      ...state.floor,
      profile: state.floor.profile.map(({ y_mm, z_mm }) => ({ y_mm: y_mm + dy, z_mm: z_mm + dz - state.floor.slopeX * dx })),
    },
    obstacles: state.obstacles.map((obstacle) => ({ ...place(obstacle), from_mm: obstacle.from_mm + dz, to_mm: obstacle.to_mm + dz })),
  }))
  return { ...door, sensors, states, zones: door.zones.map(limits) }
}

interface Limits {
  readonly xMin_mm: number
  readonly xMax_mm: number
  readonly yMin_mm: number
  readonly yMax_mm: number
}
