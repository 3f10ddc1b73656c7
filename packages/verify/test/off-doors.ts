import type { Door, Floor, Obstacle, Sensor, Tolerances } from '@sillsight/engine'
import type { Scene, Turns } from './oracle.ts'
import type { Dice } from './random-numbers.ts'

/** A door as it may be built within the tolerances: each amount at one of its ends, or anywhere between. */
export function doorWithin(door: Door, tolerances: Tolerances, stateId: string, dice: Dice): Scene {
  const atEnds = dice.chance(0.7)
  const off = (most: number) => (atEnds ? dice.pick([-most, most]) : dice.between(-most, most))
  const turns = new Map<Sensor, Turns>()
  const sensors = door.sensors.map((sensor) => {
    const moved = sensorWithin(sensor, tolerances, off, dice)
    turns.set(moved, { yaw: off(tolerances.yaw_rad), tilt: off(tolerances.tilt_rad), roll: off(tolerances.roll_rad) })
    return moved
  })
  const states = door.states.map((state) => ({
    ...state,
    floor: floorWithin(state.floor, tolerances.floor_mm, off),
    obstacles: state.obstacles.map((obstacle) => obstacleWithin(obstacle, tolerances.length_mm, off)),
  }))
  const built = { ...door, sensors, states }
  const state = states.find(({ id }) => id === stateId)
  if (state === undefined) throw new Error(`stateId must be a state, got ${stateId}`)
  return { door: built, state, turns }
}

type Off = (most: number) => number

function sensorWithin(sensor: Sensor, { position_mm, range }: Tolerances, off: Off, dice: Dice): Sensor {
  if (sensor.kind === 'zone-only') return sensor
  if (sensor.kind === 'segment') {
    const end = ([x, y, z]: readonly [number, number, number]) =>
      [x + off(position_mm), y + off(position_mm), z + off(position_mm)] as const
    const planes = sensor.planes.map((plane) => ({
      ...plane,
      segments: plane.segments.map(({ from_mm, to_mm }) => ({ from_mm: end(from_mm), to_mm: end(to_mm) })),
    }))
    return { ...sensor, planes }
  }
  const share = 1 - dice.pick([0, range, range])
  const [x, y, z] = [off(position_mm), off(position_mm), off(position_mm)]
  const { pose } = sensor
  return {
    ...sensor,
    maxRange_mm: sensor.maxRange_mm * share,
    rangeRef_mm: sensor.rangeRef_mm * share,
    pose: { ...pose, x_mm: pose.x_mm + x, y_mm: pose.y_mm + y, z_mm: pose.z_mm + z },
    planes: sensor.planes.map((plane) =>
      plane.kind === 'fan'
        ? plane
        : { ...plane, places: plane.places.map((at) => ({ x_mm: at.x_mm + x, y_mm: at.y_mm + y, z_mm: at.z_mm + z })) },
    ),
  }
}

function floorWithin(floor: Floor, most: number, off: Off): Floor {
  return { ...floor, profile: floor.profile.map(({ y_mm, z_mm }) => ({ y_mm, z_mm: z_mm + off(most) })) }
}

/** Each face on its own; a post keeps its axis. */
function obstacleWithin(obstacle: Obstacle, most: number, off: Off): Obstacle {
  const heights = { from_mm: obstacle.from_mm + off(most), to_mm: obstacle.to_mm + off(most) }
  if (obstacle.shape === 'post') return { ...obstacle, ...heights, radius_mm: obstacle.radius_mm + off(most) }
  const [a, b] = [
    [off(most), off(most)],
    [off(most), off(most)],
  ] as const
  const [c, s] = [Math.cos(obstacle.yaw_rad), Math.sin(obstacle.yaw_rad)]
  const [u, v] = [(a[0] + a[1]) / 2, (b[0] + b[1]) / 2]
  return {
    ...obstacle,
    ...heights,
    x_mm: obstacle.x_mm + u * c - v * s,
    y_mm: obstacle.y_mm + u * s + v * c,
    size_mm: [obstacle.size_mm[0] + a[1] - a[0], obstacle.size_mm[1] + b[1] - b[0]],
  }
}
