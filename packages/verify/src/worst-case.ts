import { type Budget, spend } from './budget.ts'
import { type Json, listAt, numberAt, own, refuse, textAt, wholeAt } from './json.ts'
import { overlapsEverywhere, type Standing } from './overlap.ts'
import type { Beam, Field, Floor, Plane, Posture, Zone } from './plain.ts'
import { reachOf } from './reach.ts'
import { countsFor } from './sensors.ts'
import type { backgroundsOf, Setting } from './sights.ts'
import { cosineOf, sineOf } from './sine.ts'
import type { Slice } from './slices.ts'
import { rootsOf } from './tile-tree.ts'
import { TOUCH } from './windows.ts'

/** One placement of one body that stands free and is blind, in the door as written. */
export interface ProvedCase {
  readonly pocket: string
  readonly body: string
  readonly posture: number
  readonly x_mm: number
  readonly y_mm: number
  readonly yaw_deg: number
}

interface Around {
  readonly zone: Zone
  readonly slices: readonly Slice[]
  readonly setting: Setting
  readonly budget: Budget
  readonly backgrounds: ReturnType<typeof backgroundsOf>
}
/** A body at its place, as one field's spot leaves it. */
export interface Placed {
  readonly standing: Standing
  readonly x: number
  readonly y: number
  readonly bottom: number
  readonly reflectance: number
}
type Rule = 'm' | 'b' | 'r' | 's' | 'c' | 't' | 'n'

/** Checks one worst case (docs/evidence.md, "Worst cases"): it stands free, and every beam of every field fails the rule that is named. */
export function worstCaseOf(given: Json, around: Around, path: string): ProvedCase {
  const { zone, slices, setting, budget } = around
  const { door, state, fields } = setting
  const slice = slices[wholeAt(own(given, 'slice'), `${path}/slice`, 0, slices.length - 1)]
  if (slice === undefined) return refuse('out-of-range', `${path}/slice`, 'a slice', 'none')
  const x = numberAt(own(given, 'x_mm'), `${path}/x_mm`, zone.xMin - TOUCH, zone.xMax + TOUCH)
  const y = numberAt(own(given, 'y_mm'), `${path}/y_mm`, zone.yMin - TOUCH, zone.yMax + TOUCH)
  const yaw_deg = numberAt(own(given, 'yaw_deg'), `${path}/yaw_deg`, slice.from_deg - 1e-9, slice.to_deg + 1e-9)
  const wanted = door.fields.filter((field) => countsFor(field, zone))
  for (const field of wanted)
    if (!fields.includes(field)) refuse('missing-field', path, `all fields that count, ${field.name} among them`, `${fields.length} fields`)
  const body: Placed = {
    standing: standingAt(slice.shape, yaw_deg),
    x,
    y,
    bottom: floorAt(state.floor, x, y),
    reflectance: slice.body.reflectance,
  }
  const tile = { xMin: x, xMax: x, yMin: y, yMax: y }
  const floor = [body.bottom, 0, 0] as const
  for (const obstacle of state.obstacles)
    if (overlapsEverywhere(tile, body.standing, floor, obstacle, { length: 0, floor: 0, depth: TOUCH }))
      refuse('not-free', path, `a body clear of ${obstacle.id}`, `x ${x}, y ${y}`)
  const left = new Set(fields.flatMap((field, f) => field.planes.map((id) => `${f}/${id}`)))
  for (const [i, each] of listAt(own(given, 'fails'), `${path}/fails`, { most: 4096 }).entries()) {
    const at = `${path}/fails/${i}`
    const [f, p, runs] = listAt(each, at, { least: 3, most: 3 })
    const index = wholeAt(f, `${at}/0`, 0, fields.length - 1)
    const field = fields[index]
    const plane = field?.sensor.planes[wholeAt(p, `${at}/1`, 0, field.sensor.planes.length - 1)]
    if (field === undefined || plane === undefined || !left.delete(`${index}/${plane.id}`))
      return refuse('wrong-plane', at, 'each plane of each field once', plane?.id)
    spend(budget, plane.beams.length * 4, at)
    checkRuns(textAt(runs, `${at}/2`, 40_000), field, plane, body, around, `${at}/2`)
  }
  if (left.size > 0) refuse('missing-beams', `${path}/fails`, 'every plane of every field', `${left.size} of them missing`)
  return { pocket: textAt(own(given, 'pocket'), `${path}/pocket`), body: slice.body.id, posture: slice.posture, x_mm: x, y_mm: y, yaw_deg }
}

/** A posture at one yaw, as obstacles meet it. */
export function standingAt(shape: Posture, yaw_deg: number): Standing {
  if (shape.shape === 'cylinder') return { shape: 'cylinder', radius: shape.radius, height: shape.height }
  return { shape: 'box', half: [shape.size[0] / 2, shape.size[1] / 2], yaw_deg, height: shape.size[2] }
}

export function floorAt(floor: Floor, x: number, y: number): number {
  const [root] = rootsOf({ xMin: x, xMax: x, yMin: y, yMax: y }, floor)
  return root === undefined ? 0 : root.floor[0] + root.floor[1] * x + root.floor[2] * y
}

function checkRuns(text: string, field: Field, plane: Plane, body: Placed, around: Around, path: string): void {
  let b = 0
  for (const run of text.match(/[mbrsctn]\d+|./gs) ?? []) {
    const count = Number(run.slice(1))
    const rule = run[0] as Rule
    if (run.length < 2 || count < 1 || b + count > plane.beams.length)
      refuse('wrong-run', path, `rules of ${plane.beams.length} beams`, run)
    if (rule === 'n' && count >= field.cluster) refuse('wrong-run', path, `less than ${field.cluster} neighbours that see`, run)
    for (const beam of plane.beams.slice(b, b + count)) {
      const failed = failedRules(beam, field, body, around)
      if (rule === 'n' ? failed.size > 0 : !failed.has(rule))
        refuse('not-shown', path, `beam ${b} to fail ${rule}`, [...failed].join('') || 'a beam that sees')
      b++
    }
  }
  if (b !== plane.beams.length) refuse('wrong-run', path, `rules of ${plane.beams.length} beams`, `${b}`)
}

/** Of one beam and one body at its place. */
export function failedRules(
  beam: Beam,
  field: Field,
  body: Placed,
  { setting: { door, state }, backgrounds }: Pick<Around, 'setting' | 'backgrounds'>,
): ReadonlySet<Rule> {
  const { sensor } = field
  const background = backgrounds(sensor, beam)
  const entry = entryOf(beam, body, sensor.spot)
  if (sensor.segments) {
    const isMet = entry !== undefined && entry.at < beam.length && entry.leaves > 0
    const blocked = background < beam.length - TOUCH
    return new Set<Rule>([...(isMet ? [] : (['m'] as const)), ...(blocked ? (['b'] as const) : [])])
  }
  if (entry === undefined || entry.at <= 0) return new Set<Rule>(['m'])
  const [x, y, z] = entry.point
  const height = z - floorAt(state.floor, x, y)
  const failed = new Set<Rule>()
  if (entry.at >= background - sensor.margin) failed.add('b')
  if (entry.at > reachOf(sensor, body.reflectance, door.extinction, entry.cosine)) failed.add('r')
  if (x < field.x[0] || x > field.x[1] || y < field.y[0] || y > field.y[1]) failed.add('s')
  if (height < field.clearance) failed.add('c')
  if (height > field.top) failed.add('t')
  return failed
}

interface Entry {
  readonly at: number
  readonly leaves: number
  readonly cosine: number
  readonly point: readonly [number, number, number]
}

/** Where the beam enters the body's interior, less the spot; undefined where it misses or only grazes. */
export function entryOf({ from, along }: Beam, { standing, x, y, bottom }: Omit<Placed, 'reflectance'>, spot: number): Entry | undefined {
  const pairs = [pairOf(from[2] - bottom, along[2], spot, standing.height - spot, Math.abs(along[2]))]
  if (standing.shape === 'box') {
    const [c, s] = [cosineOf(standing.yaw_deg), sineOf(standing.yaw_deg)]
    for (const [k, [nx, ny]] of (
      [
        [c, s],
        [-s, c],
      ] as const
    ).entries()) {
      const [half, speed] = [(standing.half[k] ?? 0) - spot, along[0] * nx + along[1] * ny]
      pairs.push(pairOf((from[0] - x) * nx + (from[1] - y) * ny, speed, -half, half, Math.abs(speed)))
    }
  } else pairs.push(roundPair(from[0] - x, from[1] - y, along, standing.radius - spot))
  let [at, leaves, cosine] = [-Infinity, Infinity, Infinity]
  for (const pair of pairs) {
    if (pair === undefined) return undefined
    leaves = Math.min(leaves, pair.leaves)
    if (pair.at >= at) cosine = pair.at > at ? pair.cosine : Math.min(cosine, pair.cosine)
    at = Math.max(at, pair.at)
  }
  return at < leaves
    ? { at, leaves, cosine, point: [from[0] + at * along[0], from[1] + at * along[1], from[2] + at * along[2]] }
    : undefined
}

function pairOf(place: number, speed: number, low: number, high: number, cosine: number) {
  if (!(low < high)) return undefined
  if (Math.abs(speed) < 1e-12) return low < place && place < high ? { at: -Infinity, leaves: Infinity, cosine: Infinity } : undefined
  const [a, b] = [(low - place) / speed, (high - place) / speed]
  return { at: Math.min(a, b), leaves: Math.max(a, b), cosine }
}

function roundPair(x: number, y: number, [dx, dy]: readonly [number, number, number], radius: number) {
  const level = Math.sqrt(dx * dx + dy * dy)
  if (!(radius > 0)) return undefined
  if (level < 1e-12) return x * x + y * y < radius * radius ? { at: -Infinity, leaves: Infinity, cosine: Infinity } : undefined
  const past = (x * dy - y * dx) / level
  const square = radius * radius - past * past
  if (!(square > 0)) return undefined
  const [half, nearest] = [Math.sqrt(square), -(x * dx + y * dy) / level]
  return { at: (nearest - half) / level, leaves: (nearest + half) / level, cosine: (level * half) / radius }
}
