import type { Door, Tolerances } from '../src/model/door.ts'
import type { Zone } from '../src/model/zone.ts'
import type { RandomNumbers } from './random-numbers.ts'

/** A door as it might be built within the tolerances. */
export function disturbed(door: Door, tolerances: Tolerances, random: RandomNumbers): Door {
  const within = (most: number) => (random.chance(0.5) ? (random.chance(0.5) ? most : -most) : random.between(-most, most))
  const floor = within(tolerances.floor_mm)
  return {
    ...door,
    states: door.states.map((state) => ({
      ...state,
      floor: { ...state.floor, profile: state.floor.profile.map((p) => ({ ...p, z_mm: p.z_mm + floor })) },
      obstacles: state.obstacles.map((o) => {
        const grow = Math.abs(within(tolerances.length_mm))
        const sign = random.chance(0.5) ? 1 : -1
        const heights = { from_mm: o.from_mm - sign * grow, to_mm: o.to_mm + sign * grow }
        if (heights.from_mm >= heights.to_mm) return o
        if (o.shape === 'post') return { ...o, ...heights, radius_mm: Math.max(1, o.radius_mm + sign * grow) }
        return {
          ...o,
          ...heights,
          size_mm: [Math.max(1, o.size_mm[0] + 2 * sign * grow), Math.max(1, o.size_mm[1] + 2 * sign * grow)] as const,
        }
      }),
    })),
    sensors: door.sensors.map((sensor) => {
      if (sensor.kind !== 'ranging') return sensor
      const range = 1 - random.between(0, tolerances.range)
      const moved = { x: within(tolerances.position_mm), y: within(tolerances.position_mm), z: within(tolerances.position_mm) }
      const { pose } = sensor
      return {
        ...sensor,
        maxRange_mm: sensor.maxRange_mm * range,
        rangeRef_mm: sensor.rangeRef_mm * range,
        pose: {
          x_mm: pose.x_mm + moved.x,
          y_mm: pose.y_mm + moved.y,
          z_mm: pose.z_mm + moved.z,
          yaw_rad: pose.yaw_rad + within(tolerances.yaw_rad),
          tilt_rad: pose.tilt_rad + within(tolerances.tilt_rad),
          roll_rad: pose.roll_rad + within(tolerances.roll_rad),
        },
        planes: sensor.planes.map((plane) =>
          plane.kind === 'row'
            ? { ...plane, places: plane.places.map((p) => ({ x_mm: p.x_mm + moved.x, y_mm: p.y_mm + moved.y, z_mm: p.z_mm + moved.z })) }
            : plane,
        ),
      }
    }),
  }
}

/** The door and a zone of one cell about one placement, for one body in one posture. */
export function alone(
  door: Door,
  zone: Zone,
  bodyId: string,
  posture: number,
  yaw_rad: number,
  x_mm: number,
  y_mm: number,
): { door: Door; zone: Zone } {
  const body = door.bodies.find((b) => b.id === bodyId)
  const chosen = body?.postures[posture]
  if (body === undefined || chosen === undefined) throw new Error(`the door must have ${bodyId} with posture ${posture}`)
  const fixed = chosen.shape === 'box' ? { ...chosen, yawFrom_rad: yaw_rad, yawTo_rad: yaw_rad } : chosen
  const half = zone.pitch_mm / 2
  return {
    door: { ...door, bodies: door.bodies.map((b) => (b.id === bodyId ? { ...b, postures: [fixed] } : b)) },
    zone: { ...zone, bodies: [bodyId], xMin_mm: x_mm - half, xMax_mm: x_mm + half, yMin_mm: y_mm - half, yMax_mm: y_mm + half },
  }
}

/** Rounding may make the zone of one cell two columns wide; the first one is meant. */
export function firstCell(sets: readonly Int32Array[]): number {
  return (sets[0]?.[0] ?? 0) & 1
}
