import type { Beam, Field, Floor, Obstacle, Sensor, State, Vector } from './plain.ts'
import { cosineOf, sineOf } from './sine.ts'
import { lengthOf } from './tolerances.ts'

/** Two things that come this close only touch: a sensor on a wall's face is not inside of the wall, whatever rounding makes of 2000.7 mm. */
export const TOUCH = 1e-6

/** Limits of a field are included: a beam that runs along one must not fall out of it by rounding. */
const TIE = 1e-9

/** Distances along a beam, from one to another. */
export interface Stretch {
  readonly from: number
  readonly to: number
}
/** value + slope * t, along a beam. */
type Course = readonly [value: number, slope: number]

/** How far the points of the beam (`off`), the faces of obstacles and the floor may be off. */
export interface Give {
  readonly off: Vector
  readonly length: number
  readonly floor: number
}

/** The maximal stretches of t >= 0 in which a point of the beam counts, in rising order: docs/evidence.md, "A seen leaf" and "Tolerances". */
export function windowsOf(
  beam: Beam,
  field: Field,
  sensor: Sensor,
  states: { readonly learned: State; readonly present: State },
  give: Give,
): readonly Stretch[] {
  const { off } = give
  const background = Math.min(backgroundOf(beam, states.learned, give), backgroundOf(beam, states.present, give))
  const within = stretchWhere([
    [0, 1],
    [Math.min(background - sensor.margin, sensor.maxRange), -1],
    ...[0, 1].flatMap((axis): Course[] => {
      const [[least, most], o, d, shrunk] = [axis === 0 ? field.x : field.y, beam.from[axis] ?? 0, beam.along[axis] ?? 0, off[axis] ?? 0]
      return [
        [o - least - shrunk + TIE, d],
        [most - shrunk - o + TIE, -d],
      ]
    }),
  ])
  if (within === undefined) return []
  const { floor } = states.present
  const rise = riseOf(floor, give)
  const barred = [
    ...floorStretches(beam, floor, { side: 1, level: field.clearance + rise, spread: off[1] }),
    ...floorStretches(beam, floor, { side: -1, level: field.top - rise, spread: off[1] }),
  ]
  return without(within, barred)
}

/** Whether an obstacle or the floor may interrupt a segment. */
export function isBlocked(beam: Beam, state: State, give: Give): boolean {
  return backgroundOf(beam, state, give) < beam.length - TOUCH
}

/** The distance to the nearest obstacle's interior or to where the beam goes under the floor, at least; 0 from a start in either. */
export function backgroundOf(beam: Beam, { obstacles, floor }: State, give: Give): number {
  const stretches = [
    ...obstacles.map((obstacle) => stretchIn(beam, obstacle, give)),
    ...floorStretches(beam, floor, { side: 1, level: riseOf(floor, give) - TOUCH, spread: give.off[1] }),
  ]
  let nearest = Infinity
  for (const each of stretches) if (each !== undefined && each.to > 0) nearest = Math.min(nearest, Math.max(each.from, 0))
  return nearest
}

/** How much higher the floor may stand against the beam. */
function riseOf(floor: Floor, { off, floor: up }: Give): number {
  return off[2] + Math.abs(floor.slope) * off[0] + up
}

function stretchIn({ from, along }: Beam, obstacle: Obstacle, { off, length }: Give): Stretch | undefined {
  const [x, y] = [from[0] - obstacle.x, from[1] - obstacle.y]
  const grown = off[2] + length - TOUCH
  const upward = between(from[2], along[2], obstacle.from - grown, obstacle.to + grown)
  if (obstacle.shape === 'post') {
    const round = stretchInDisc([x, y], along, obstacle.radius + lengthOf([off[0] + length, off[1] + length, 0]) - TOUCH)
    return round && stretchWhere([...upward, [-round.from, 1], [round.to, -1]])
  }
  const [c, s] = [cosineOf(obstacle.yaw_deg), sineOf(obstacle.yaw_deg)]
  const a = obstacle.half[0] + off[0] * Math.abs(c) + off[1] * Math.abs(s) + length - TOUCH
  const b = obstacle.half[1] + off[0] * Math.abs(s) + off[1] * Math.abs(c) + length - TOUCH
  return stretchWhere([
    ...upward,
    ...between(x * c + y * s, along[0] * c + along[1] * s, -a, a),
    ...between(y * c - x * s, along[1] * c - along[0] * s, -b, b),
  ])
}

function between(place: number, speed: number, low: number, high: number): readonly Course[] {
  return [
    [place - low, speed],
    [high - place, -speed],
  ]
}

function stretchInDisc([x, y]: readonly [number, number], [dx, dy]: Vector, radius: number): Stretch | undefined {
  const level = Math.sqrt(dx * dx + dy * dy)
  if (level < 1e-9) return x * x + y * y < radius * radius ? { from: -Infinity, to: Infinity } : undefined
  const past = (x * dy - y * dx) / level
  const square = radius * radius - past * past
  if (!(radius > 0 && square > 0)) return undefined
  const [nearest, half] = [-(x * dx + y * dy) / level, Math.sqrt(square)]
  return { from: (nearest - half) / level, to: (nearest + half) / level }
}

/**
 * Where the beam is lower (side 1) than `level` above the floor, or higher (side -1), for some floor point within `spread` along y. The extreme
 * floor around a place is that of the profile moved by the spread either way, or that of a point of the profile within reach.
 */
function floorStretches(
  { from, along }: Beam,
  { profile, slope }: Floor,
  { side, level, spread }: { readonly side: 1 | -1; readonly level: number; readonly spread: number },
): readonly Stretch[] {
  const wanting = (z: number, tan: number, y: number): Course => [
    side * (z + tan * (from[1] - y) + slope * from[0] + level - from[2]) - TIE,
    side * (tan * along[1] + slope * along[0] - along[2]),
  ]
  const found: (Stretch | undefined)[] = []
  for (let i = 0; i <= profile.length; i++) {
    const [y0, z0] = profile[i - 1] ?? [-Infinity, profile[0]?.[1] ?? 0]
    const [y1, z1] = profile[i] ?? [Infinity, z0]
    const tan = y0 === -Infinity || y1 === Infinity ? 0 : (z1 - z0) / (y1 - y0)
    const start = y0 === -Infinity ? 0 : y0
    for (const moved of spread > 0 ? [-spread, spread] : [0])
      found.push(stretchWhere([[from[1] + moved - y0, along[1]], [y1 - from[1] - moved, -along[1]], wanting(z0, tan, start - moved)]))
    if (spread > 0 && y1 !== Infinity)
      found.push(stretchWhere([...between(from[1], along[1], y1 - spread, y1 + spread), wanting(z1, 0, y1)]))
  }
  return found.filter((each) => each !== undefined)
}

/** Where all of them are at least 0. */
function stretchWhere(courses: readonly Course[]): Stretch | undefined {
  let [from, to] = [-Infinity, Infinity]
  for (const [value, slope] of courses) {
    if (slope > 0) from = Math.max(from, -value / slope)
    else if (slope < 0) to = Math.min(to, -value / slope)
    else if (value < 0) return undefined
  }
  return from < to ? { from, to } : undefined
}

export type Range = readonly [low: number, high: number]
export interface Box {
  readonly x: Range
  readonly y: Range
  readonly z: Range
}

/** What is left of windows outside of boxes, which are taken a little larger. */
export function outside({ from, along }: Beam, windows: readonly Stretch[], boxes: readonly Box[]): readonly Stretch[] {
  const barred = boxes.flatMap(({ x, y, z }) => {
    const inside = ([x, y, z] as const).flatMap(([low, high], axis) =>
      between(from[axis] ?? 0, along[axis] ?? 0, low - TOUCH, high + TOUCH),
    )
    return stretchWhere(inside) ?? []
  })
  return windows.flatMap((window) => without(window, barred)).filter(({ from: a, to }) => a < to)
}

/** What is left of a stretch. */
function without(whole: Stretch, barred: readonly Stretch[]): readonly Stretch[] {
  const left: Stretch[] = []
  let { from } = whole
  for (const each of [...barred].sort((a, b) => a.from - b.from)) {
    if (each.from > from) left.push({ from, to: Math.min(each.from, whole.to) })
    from = Math.max(from, each.to)
    if (from >= whole.to) return left
  }
  return [...left, { from, to: whole.to }]
}
