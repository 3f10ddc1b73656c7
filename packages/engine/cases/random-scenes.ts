import type { Posture } from '../src/model/body.ts'
import type { Door, Floor, Obstacle } from '../src/model/door.ts'
import type { BeamPlane, Field, Pose, RangingSensor, SegmentSensor } from '../src/model/sensor.ts'
import { asin, atan2, cos, hypot3, radians, sin } from '../src/space/trigonometry.ts'
import { block, bodyOf, plainDoor, plainField, plainState, plainZone, ranging } from './plain-door.ts'
import { type RandomNumbers, randomNumbers } from './random-numbers.ts'

export interface SceneSize {
  readonly columns: number
  readonly rows: number
  /** From 10 to 40 if not given. */
  readonly pitch_mm?: number
}

/**
 * A random door with one sensor, one zone of many cells and one body, made for comparing a fast map with the predicate asked at every cell: boxes
 * aligned and yawed, cylinders, floors of many pieces and slopes, fog, bodies so dark that the reach ends inside of them, fields whose near and far
 * sides, clearance and top cut bodies, beams down, level and up from above, from beside and from within the zone, segments in all directions, spots.
 * Half of the scenes have round lengths, so that bodies, beams, limits and cells meet exactly. The same seed gives the same scene.
 */
export function randomScene(seed: number, { columns, rows, pitch_mm: pitch }: SceneSize): Door {
  const dice = sceneDice(seed)
  const pitch_mm = pitch ?? (dice.round ? dice.pick([10, 20, 25, 40, 12.5]) : dice.between(10, 40))
  const extent = { width: columns * pitch_mm, depth: rows * pitch_mm }
  const x0 = dice.length(-500, 500)
  const y0 = dice.length(-1500, 0)
  const zone = plainZone({
    xMin_mm: x0,
    xMax_mm: x0 + (columns - 0.5) * pitch_mm,
    yMin_mm: y0,
    yMax_mm: y0 + (rows - 0.5) * pitch_mm,
    pitch_mm,
  })
  const posture = randomPosture(dice, extent)
  const height_mm = posture.shape === 'box' ? posture.c_mm : posture.height_mm
  const place = { x0, y0, ...extent, height_mm }
  const sensor = dice.chance(0.2) ? randomSegments(dice, place) : randomRanging(dice, place)
  return plainDoor({
    name: `random scene ${seed}`,
    states: [
      plainState({
        floor: randomFloor(dice, place),
        obstacles: Array.from({ length: dice.pick([0, 0, 1, 3, 6]) }, (_, i) => randomThing(dice, i, place)),
      }),
    ],
    sensors: [sensor],
    bodies: [bodyOf([posture], { reflectance: dice.pick([0.1, 0.1, 0.03, 0.5]) })],
    zones: [zone],
    extinction_per_mm: dice.chance(0.25) ? 3.912 / dice.between(8000, 60_000) : 0,
  })
}

interface SceneDice extends RandomNumbers {
  readonly round: boolean
  /** mm; in round scenes a multiple of 12.5 or more. */
  readonly length: (low: number, high: number) => number
  /** Often 0, sometimes a quarter turn, otherwise anything up to the largest. */
  readonly angle_rad: (largest_deg: number) => number
}

function sceneDice(seed: number): SceneDice {
  const dice = randomNumbers(seed)
  const round = dice.chance(0.5)
  const quarters = dice.chance(0.15)
  return {
    ...dice,
    round,
    length: (low, high) => {
      const step = dice.pick([100, 50, 25, 12.5])
      return round ? step * Math.round(dice.between(low, high) / step) : dice.between(low, high)
    },
    angle_rad: (largest_deg) => {
      if (dice.chance(round ? 0.4 : 0.1)) return 0
      if (quarters && dice.chance(0.5)) return radians(dice.pick([90, -90, 180, 45, 30]))
      return radians(dice.between(-largest_deg, largest_deg))
    },
  }
}

interface Place {
  readonly x0: number
  readonly y0: number
  readonly width: number
  readonly depth: number
  readonly height_mm: number // of the body
}

function randomPosture(dice: SceneDice, { width, depth }: { readonly width: number; readonly depth: number }): Posture {
  const height_mm = Math.max(
    12.5,
    dice.chance(0.3) ? dice.length(20, 120) : dice.chance(0.8) ? dice.length(100, 1000) : dice.length(1000, 2500),
  )
  if (dice.chance(0.35)) return { shape: 'cylinder', name: 'cylinder', radius_mm: Math.max(6.25, dice.length(20, 400)), height_mm }
  const large = dice.chance(0.05)
  const yaw_rad = dice.chance(0.5) ? 0 : dice.angle_rad(180)
  return {
    shape: 'box',
    name: 'box',
    a_mm: Math.max(12.5, large ? 2 * width : dice.length(30, 900)),
    b_mm: Math.max(12.5, large ? 2 * depth : dice.length(30, 900)),
    c_mm: height_mm,
    yawFrom_rad: yaw_rad,
    yawTo_rad: yaw_rad,
  }
}

function randomFloor(dice: SceneDice, { y0, depth }: Place): Floor {
  const slopeX = dice.chance(0.6) ? 0 : dice.round ? dice.pick([1 / 64, -1 / 32, 1 / 8]) : dice.between(-0.15, 0.15)
  let y_mm = y0 + dice.length(-200, depth)
  let z_mm = dice.chance(0.5) ? 0 : dice.length(-100, 100)
  const profile = [{ y_mm, z_mm }]
  for (let more = dice.pick([0, 0, 1, 3, 6]); more > 0; more--) {
    y_mm += dice.chance(0.3) ? dice.pick([1, 2, 8]) : dice.round ? dice.pick([64, 128, 256, 512]) : dice.between(20, 600)
    z_mm += dice.chance(0.2) ? 0 : dice.round ? 16 * dice.whole(-4, 4) : dice.between(-60, 60)
    profile.push({ y_mm, z_mm })
  }
  return { profile, slopeX, tolerance_mm: 0 }
}

function randomThing(dice: SceneDice, index: number, { x0, y0, width, depth }: Place): Obstacle {
  const from_mm = dice.chance(0.3) ? dice.length(200, 1500) : dice.length(-200, 0)
  const base = {
    id: `thing ${index}`,
    name: `thing ${index}`,
    x_mm: x0 + dice.length(-300, width + 300),
    y_mm: y0 + dice.length(-300, depth + 300),
    from_mm,
    to_mm: from_mm + Math.max(12.5, dice.length(50, 1500)),
    implied: false,
  }
  if (dice.chance(0.4)) return { ...base, shape: 'post', radius_mm: Math.max(12.5, dice.length(20, 250)) }
  return block({
    ...base,
    size_mm: [Math.max(12.5, dice.length(20, 900)), Math.max(12.5, dice.length(20, 900))],
    yaw_rad: dice.angle_rad(90),
  })
}

/** Limits near the body, open or far. */
function randomField(dice: SceneDice, { x0, y0, width, depth, height_mm }: Place): Partial<Field> {
  const side = (low: number, size: number, open: number) => (dice.chance(0.85) ? open : low + dice.length(0, size))
  const height = () => (dice.chance(0.4) ? height_mm : dice.chance(0.5) ? dice.length(0, height_mm) : dice.length(0, 300))
  const yMin_mm = side(y0, depth / 2, -Infinity)
  const clearance_mm = dice.chance(0.7) ? dice.pick([-Infinity, 0]) : height()
  return {
    xMin_mm: side(x0, width / 2, -Infinity),
    xMax_mm: side(x0 + width / 2, width / 2, Infinity),
    yMin_mm,
    yMax_mm: side(y0 + depth / 2, depth / 2, Infinity),
    clearance_mm,
    top_mm: dice.chance(0.75) ? Infinity : Math.max(clearance_mm, height()),
    clusterBeams: dice.pick([1, 1, 1, 2, 3, 4, 5]),
  }
}

function randomRanging(dice: SceneDice, place: Place): RangingSensor {
  const { x0, y0, width, depth, height_mm } = place
  const z_mm = dice.chance(0.25) ? dice.length(50, 1.2 * height_mm) : dice.chance(0.3) ? dice.length(300, 1500) : dice.length(1500, 5000)
  const at = {
    x_mm: x0 + dice.length(dice.chance(0.2) ? -600 : 0, width),
    y_mm: y0 + dice.length(dice.chance(0.2) ? -600 : 0, depth),
    z_mm,
    yaw_rad: dice.angle_rad(180),
  }
  const target = [x0 + dice.length(0, width), y0 + dice.length(0, depth), dice.length(0, height_mm)] as const
  const pose = { ...at, ...(dice.chance(0.8) ? aimedAt(at, target) : turned(dice)) }
  const away_mm = Math.sqrt(width * width + depth * depth + z_mm * z_mm)
  const planes = Array.from({ length: dice.pick([1, 2]) }, (_, k) => randomPlane(dice, k, pose))
  return ranging(
    planes,
    {
      pose,
      maxRange_mm: dice.chance(0.85) ? 50_000 : dice.length(0.3 * away_mm, away_mm),
      rangeRef_mm: dice.chance(0.5) ? 30_000 : Math.max(100, dice.length(0.6 * away_mm, 4 * away_mm)),
      backgroundMargin_mm: dice.chance(0.6) ? 0 : dice.length(0, 200),
      spotRadius_mm: dice.chance(0.6) ? 0 : dice.pick([5, 12.5, dice.between(1, 30)]),
    },
    randomField(dice, place),
  )
}

function turned(dice: SceneDice): Pick<Pose, 'tilt_rad' | 'roll_rad'> {
  return { tilt_rad: dice.chance(0.15) ? radians(90) : dice.angle_rad(dice.chance(0.3) ? 120 : 40), roll_rad: dice.angle_rad(40) }
}

/** Tilt and roll with which the beam at 0 degrees goes through a point. */
function aimedAt(
  { x_mm, y_mm, z_mm, yaw_rad }: Omit<Pose, 'tilt_rad' | 'roll_rad'>,
  [x, y, z]: readonly [number, number, number],
): Pick<Pose, 'tilt_rad' | 'roll_rad'> {
  const across = (x - x_mm) * cos(yaw_rad) + (y - y_mm) * sin(yaw_rad)
  const outward = (y - y_mm) * cos(yaw_rad) - (x - x_mm) * sin(yaw_rad)
  const away = Math.max(1, hypot3(across, outward, z - z_mm))
  return { tilt_rad: atan2(outward, z_mm - z), roll_rad: asin(across / away) }
}

function randomPlane(
  dice: SceneDice,
  k: number,
  { x_mm, y_mm, z_mm }: { readonly x_mm: number; readonly y_mm: number; readonly z_mm: number },
): BeamPlane {
  const id = `p${k}`
  if (dice.chance(0.15)) {
    const step_mm = dice.length(12.5, 100)
    const places = Array.from({ length: dice.whole(1, 8) }, (_, i) => ({ x_mm: x_mm + i * step_mm, y_mm, z_mm }))
    return { kind: 'row', id, places, tilt_rad: dice.angle_rad(60) }
  }
  const wide_deg = dice.pick([2, 20, 90, 270])
  const side = dice.whole(0, 6)
  // an odd number of beams, the middle one at 0 in half of the fans
  const half_rad = side === 0 ? 0 : radians(wide_deg / 2)
  const middle_rad = dice.chance(0.7) ? 0 : dice.angle_rad(60)
  return {
    kind: 'fan',
    id,
    offset_rad: k === 0 ? 0 : dice.angle_rad(20),
    fovMin_rad: middle_rad - half_rad,
    fovMax_rad: middle_rad + half_rad,
    beamCount: 2 * side + 1,
  }
}

function randomSegments(dice: SceneDice, { x0, y0, width, depth, height_mm }: Place): SegmentSensor {
  const point = (): [number, number, number] => [
    x0 + dice.length(-200, width + 200),
    y0 + dice.length(-200, depth + 200),
    dice.length(0, 1.3 * height_mm),
  ]
  const segment = () => {
    const from_mm = point()
    const to_mm = point()
    for (const axis of [0, 1, 2] as const) if (dice.chance(0.35)) to_mm[axis] = from_mm[axis]
    if (to_mm.every((end, axis) => end === from_mm[axis])) to_mm[0] += 500
    return { from_mm, to_mm }
  }
  return {
    kind: 'segment',
    id: 'grid',
    name: 'grid',
    source: { basis: 'invented' },
    planes: [{ id: 'p0', segments: Array.from({ length: dice.whole(1, 8) }, segment) }],
    spotRadius_mm: dice.chance(0.6) ? 0 : dice.pick([5, 12.5]),
    fields: [plainField({ clusterBeams: dice.pick([1, 1, 2, 3]) })],
  }
}
