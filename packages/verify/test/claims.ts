import type { Door, DoorState, Field, RangingSensor, SegmentSensor, Zone } from '@sillsight/engine'
import { doorWithin } from './off-doors.ts'
import { answerOf, beamCountOf, overlap, type Rule, type Scene, type Standing } from './oracle.ts'
import type { Dice } from './random-numbers.ts'
import type { Coverage } from './true-evidence.ts'

/*
 * What a piece of evidence claims, tried at many single placements, yaws and doors within the tolerances. A claim is called false where it fails by
 * more than rounding: `CLEARLY`. Where nothing is found it may still be false; so this finds wrong acceptances and proves none right.
 */
const CLEARLY = 1e-5

export interface Tile {
  readonly x: readonly [number, number]
  readonly y: readonly [number, number]
}
export interface Leaf {
  readonly code: number
  readonly tile: Tile
  readonly slice: number
  readonly at: number
}
type Watcher = RangingSensor | SegmentSensor

interface Claimed {
  readonly door: Door
  readonly zone: Zone
  readonly state: DoorState
  readonly coverage: Coverage
}

/** What the coverage is about; undefined where it speaks of a zone or state that the door does not have. */
export function claimedOf(door: Door, coverage: Coverage): Claimed | undefined {
  const zone = door.zones.find(({ id }) => id === coverage.zone)
  const state = door.states.find(({ id }) => id === coverage.state)
  return zone && state && { door, zone, state, coverage }
}

/** All leaves with their tiles; a text says what is wrong with the form. */
export function leavesOf({ door, zone, state, coverage }: Claimed): readonly Leaf[] | string {
  const leaves: Leaf[] = []
  const cuts = state.floor.profile.map(({ y_mm }) => y_mm).filter((y) => y > zone.yMin_mm && y < zone.yMax_mm)
  const ends = [zone.yMin_mm, ...cuts, zone.yMax_mm]
  const missing = new Set<string>()
  for (const body of door.bodies.filter(({ id }) => zone.bodies.includes(id)))
    for (const k of body.postures.keys()) {
      const of = coverage.slices.find((each) => each.body === body.id && each.posture === k)?.of ?? 1
      for (let part = 0; part < of; part++) missing.add(`${body.id}/${k}/${part}/${of}`)
    }
  for (const [slice, { body, posture, part, of, trees }] of coverage.slices.entries()) {
    if (!missing.delete(`${body}/${posture}/${part}/${of}`)) return `slice ${slice} twice or foreign`
    if (trees.length !== ends.length - 1) return `slice ${slice} has ${trees.length} roots`
    for (const [root, tree] of trees.entries()) {
      const found = leavesOfTree(tree, { x: [zone.xMin_mm, zone.xMax_mm], y: [ends[root] ?? 0, ends[root + 1] ?? 0] }, slice)
      if (typeof found === 'string') return found
      leaves.push(...found)
    }
  }
  return missing.size > 0 ? `${missing.size} slices missing` : leaves
}

function leavesOfTree(tree: readonly unknown[], root: Tile, slice: number): readonly Leaf[] | string {
  const leaves: Leaf[] = []
  const open = [root]
  for (const [at, code] of tree.entries()) {
    const tile = open.pop()
    if (tile === undefined) return 'a tree too long'
    const { x, y } = tile
    if (typeof code !== 'number' || !Number.isInteger(code)) return 'a leaf that is no number'
    if (code !== -1) leaves.push({ code, tile, slice, at })
    else if (x[1] - x[0] >= y[1] - y[0]) {
      const middle = (x[0] + x[1]) / 2
      open.push({ x: [middle, x[1]], y }, { x: [x[0], middle], y })
    } else {
      const middle = (y[0] + y[1]) / 2
      open.push({ x, y: [middle, y[1]] }, { x, y: [y[0], middle] })
    }
  }
  return open.length > 0 ? 'a tree too short' : leaves
}

/** A placement at which the leaf's claim is clearly false; undefined where none was found. */
export function counterexample(claimed: Claimed, leaf: Leaf, dice: Dice): string | undefined {
  if (leaf.code === -2) return undefined
  const { door, state, coverage } = claimed
  const slice = coverage.slices[leaf.slice]
  const body = door.bodies.find(({ id }) => id === slice?.body)
  const shape = body?.postures[slice?.posture ?? -1]
  if (slice === undefined || body === undefined || shape === undefined) return 'a slice of nothing'
  const [from, to] = shape.shape === 'box' ? [shape.yawFrom_rad, shape.yawTo_rad] : [0, 0]
  const yawAt = (share: number) => from + ((to - from) * (slice.part + share)) / slice.of
  const yaws = from === to ? [from] : [yawAt(0), yawAt(1), yawAt(dice.next())]
  const scenes: Scene[] = [{ door, state }]
  if (coverage.tolerances !== null) {
    if (door.tolerances === undefined || !isAsWritten(coverage.tolerances, door)) return 'tolerances that are not those of the door'
    for (let i = 0; i < 8; i++) scenes.push(doorWithin(door, door.tolerances, state.id, dice))
  }
  const [x, y] = [leaf.tile.x, leaf.tile.y].map(([a, b]) => [a, b, (a + b) / 2, dice.between(a, b)])
  for (const scene of scenes)
    for (const yaw_rad of yaws)
      for (const px of x ?? [])
        for (const py of y ?? []) {
          const standing = { body, posture: slice.posture, yaw_rad, x: px, y: py }
          const wrong =
            leaf.code >= 0 ? notSeen(scene, coverage, leaf.code, standing) : notBlocked(scene, coverage, -3 - leaf.code, standing)
          if (wrong !== undefined) return `leaf ${leaf.at} of slice ${leaf.slice} at ${px}, ${py}, yaw ${yaw_rad}: ${wrong}`
        }
  return undefined
}

function isAsWritten(given: NonNullable<Coverage['tolerances']>, { tolerances }: Door): boolean {
  const degree = Math.PI / 180
  const close = (a: number, b: number) => Math.abs(a - b) < 1e-9
  return (
    tolerances !== undefined &&
    close(given.length_mm, tolerances.length_mm) &&
    close(given.position_mm, tolerances.position_mm) &&
    close(given.floor_mm, tolerances.floor_mm) &&
    close(given.tilt_deg * degree, tolerances.tilt_rad) &&
    close(given.roll_deg * degree, tolerances.roll_rad) &&
    close(given.yaw_deg * degree, tolerances.yaw_rad) &&
    close(given.range_percent / 100, tolerances.range)
  )
}

/** A field of the evidence's list, if it is one that counts for the zone. */
function fieldOf(door: Door, zone: Zone, name: unknown): { readonly sensor: Watcher; readonly field: Field } | undefined {
  for (const sensor of door.sensors) {
    if (sensor.kind === 'zone-only') continue
    for (const field of sensor.fields) if (`${sensor.id}/${field.id}` === name && counts(field, zone)) return { sensor, field }
  }
  return undefined
}

function counts({ function: acts, presenceTime_s: held }: Field, zone: Zone): boolean {
  return acts === zone.function && (held === undefined || zone.longestStay_s === undefined || held >= zone.longestStay_s)
}

function notSeen(scene: Scene, coverage: Coverage, n: number, standing: Standing): string | undefined {
  const zone = scene.door.zones.find(({ id }) => id === coverage.zone)
  const [f, p, first, faces] = coverage.sights[n] ?? []
  const found = zone && f !== undefined && fieldOf(scene.door, zone, coverage.fields[f])
  if (!found || p === undefined || first === undefined || faces === undefined) return 'no such sight'
  const plane = found.sensor.planes[p]
  if (plane === undefined || !found.field.planes.includes(plane.id)) return 'a plane that the field does not have'
  if (faces.length !== found.field.clusterBeams || first < 0 || first + faces.length > beamCountOf(scene, found.sensor, p))
    return 'no such cluster'
  for (const [k, claimed] of faces.entries()) {
    const answer = answerOf(scene, found.sensor, found.field, p, first + k, standing)
    if (answer.least < -CLEARLY) return `beam ${first + k} fails by ${answer.least}`
    if (found.sensor.kind === 'ranging' && (answer.faces & ~claimed) !== 0 && answer.faces === (answer.faces & -answer.faces))
      return `beam ${first + k} enters face ${answer.faces}`
  }
  return undefined
}

function notBlocked(scene: Scene, coverage: Coverage, n: number, standing: Standing): string | undefined {
  const obstacle = scene.state.obstacles.find(({ id }) => id === coverage.obstacles[n])
  if (obstacle === undefined) return 'no such obstacle'
  const by = overlap(standing, scene.state.floor, obstacle)
  return by < -CLEARLY ? `${obstacle.id} is ${-by} away` : undefined
}

/** Why a worst case shows nothing; undefined where nothing clear was found. */
export function wrongCase(claimed: Claimed, i: number): string | undefined {
  const { door, zone, state, coverage } = claimed
  const given = coverage.worstCases[i]
  const slice = coverage.slices[given?.slice ?? -1]
  const body = door.bodies.find(({ id }) => id === slice?.body)
  const shape = body?.postures[slice?.posture ?? -1]
  if (given === undefined || slice === undefined || body === undefined || shape === undefined) return 'a case of nothing'
  const { x_mm: x, y_mm: y, yaw_deg, fails } = given
  const yaw_rad = (yaw_deg * Math.PI) / 180
  if (shape.shape === 'box') {
    const wide = shape.yawTo_rad - shape.yawFrom_rad
    const [from, to] = [shape.yawFrom_rad + (wide * slice.part) / slice.of, shape.yawFrom_rad + (wide * (slice.part + 1)) / slice.of]
    if (yaw_rad < from - CLEARLY || yaw_rad > to + CLEARLY) return 'a yaw of another slice'
  }
  if (x < zone.xMin_mm - CLEARLY || x > zone.xMax_mm + CLEARLY || y < zone.yMin_mm - CLEARLY || y > zone.yMax_mm + CLEARLY)
    return 'outside of the zone'
  const standing = { body, posture: slice.posture, yaw_rad, x, y }
  for (const obstacle of state.obstacles) if (overlapsClearly(standing, state, obstacle)) return `inside of ${obstacle.id}`
  for (const sensor of door.sensors) {
    if (sensor.kind === 'zone-only') continue
    for (const field of sensor.fields) {
      if (!counts(field, zone)) continue
      for (const [p, plane] of sensor.planes.entries()) {
        if (!field.planes.includes(plane.id)) continue
        const f = coverage.fields.indexOf(`${sensor.id}/${field.id}`)
        const listed = fails.filter((each) => each[0] === f && each[1] === p)
        if (listed.length !== 1) return `plane ${plane.id} of ${field.id} listed ${listed.length} times`
        const wrong = wrongRuns(String(listed[0]?.[2]), { door, state }, sensor, field, p, standing)
        if (wrong !== undefined) return wrong
      }
    }
  }
  return undefined
}

/** The sampled directions of `overlap` miss a little where corners meet discs: only what overlaps by more counts. */
function overlapsClearly(standing: Standing, state: DoorState, obstacle: DoorState['obstacles'][number]): boolean {
  return overlap(standing, state.floor, obstacle) > 0.01
}

function wrongRuns(text: string, scene: Scene, sensor: Watcher, field: Field, p: number, standing: Standing): string | undefined {
  const rules = [...text.matchAll(/([a-z])(\d+)/g)].flatMap(([, rule = '', count]) =>
    Array.from({ length: Math.min(Number(count), 5000) }, () => rule),
  )
  const answers = Array.from({ length: beamCountOf(scene, sensor, p) }, (_, b) => answerOf(scene, sensor, field, p, b, standing))
  if (rules.length !== answers.length) return `${rules.length} rules for ${answers.length} beams`
  let run = 0
  for (const [b, { by, least }] of answers.entries()) {
    run = least > CLEARLY ? run + 1 : 0
    if (run >= field.clusterBeams) return `beam ${b} and those before it see`
    const rule = rules[b]
    if (rule === 'n' ? least < -CLEARLY : rule === undefined || !(rule in by) || by[rule as Rule] > CLEARLY)
      return `beam ${b} does not fail ${rule}`
  }
  return undefined
}
