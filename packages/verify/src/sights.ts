import { SPARE } from './affine.ts'
import { listAt, refuse, wholeAt } from './json.ts'
import type { Passage } from './passage.ts'
import type { Beam, Door, Field, Obstacle, Plane, Sensor, State, Tile, Tolerances, Vector } from './plain.ts'
import { reachOf } from './reach.ts'
import { passageThroughBox, type SeenBox } from './seen-box.ts'
import { passageThroughCylinder, type SeenCylinder } from './seen-cylinder.ts'
import { AS_WRITTEN, directionOffOf, offOf, weakest } from './tolerances.ts'
import { type Box, backgroundOf, isBlocked, outside, type Stretch, windowsOf } from './windows.ts'

/** What a coverage is checked against. */
export interface Setting {
  readonly door: Door
  readonly state: State
  readonly tolerances: Tolerances
  readonly fields: readonly Field[]
  /** The shut leaf, where fields are asked whose sight depends on it. */
  readonly leaf?: ShutLeaf
}

/** What it fills, and where a window that follows it reaches. */
export interface ShutLeaf {
  readonly solids: readonly Obstacle[]
  readonly ignored: (ignores: { readonly beside: number; readonly before: number }) => readonly Box[]
}

/** As many neighbours as the field asks for, and the faces that each may enter. */
export interface Sight {
  readonly field: Field
  readonly plane: Plane
  readonly first: number
  readonly faces: readonly number[]
}

/** A body of a slice as a spot leaves it. */
export interface Target {
  readonly shape: (spot: number) => { readonly box: SeenBox } | { readonly cylinder: SeenCylinder }
  readonly reflectance: number
}

/** What a beam of a field can do in a state, whatever body comes. */
export interface Reading {
  readonly beam: Beam
  /** How far `off` holds: the end of its last window without tolerances and the margin behind it. */
  readonly far: number
  readonly off: Vector
  readonly directionOff: Vector
  /** Where an entry counts; a segment that works has no end of it. */
  readonly windows: readonly Stretch[]
}

/** Reads the list of sights; every index is in range then. */
export function sightsOf(listed: unknown, fields: readonly Field[], path: string): readonly Sight[] {
  return listAt(listed, path, { most: 2_000_000 }).map((each, i) => {
    const at = `${path}/${i}`
    const [f, p, b, faces] = listAt(each, at, { least: 4, most: 4 })
    const field = fields[wholeAt(f, `${at}/0`, 0, fields.length - 1)]
    const plane = field?.sensor.planes[wholeAt(p, `${at}/1`, 0, field.sensor.planes.length - 1)]
    if (field === undefined || plane === undefined) return refuse('out-of-range', at, 'a field and a plane of its sensor', each)
    if (!field.planes.includes(plane.id)) return refuse('wrong-plane', `${at}/1`, `a plane of ${field.name}`, plane.id)
    const first = wholeAt(b, `${at}/2`, 0, plane.beams.length - field.cluster)
    const entered = listAt(faces, `${at}/3`, { least: field.cluster, most: field.cluster })
    return { field, plane, first, faces: entered.map((face, k) => wholeAt(face, `${at}/3/${k}`, 1, 7)) }
  })
}

type Spend = (amount: number) => void

/** Windows of the beams of one setting, each made when it is first asked for. */
export function readingsOf(
  { door, state, tolerances, fields, leaf }: Setting,
  spend: Spend,
): (field: Field, plane: Plane, b: number) => Reading {
  const known = new Map<string, Reading>()
  return (field, plane, b) => {
    const key = `${fields.indexOf(field)}/${plane.id}/${b}`
    const found = known.get(key)
    if (found !== undefined) return found
    spend(4 * thingsIn(state))
    const made =
      field.byLeaf && leaf ? readingBehind(leaf, door, state, field, plane, b) : readingOf(door, state, tolerances, field, plane, b)
    known.set(key, made)
    return made
  }
}

/** The background of each beam in the door as written, learned and present, found when it is first asked for. */
export function backgroundsOf({ door, state }: Setting, spend: Spend): (sensor: Sensor, beam: Beam) => number {
  const known = new Map<Beam, number>()
  return (sensor, beam) => {
    const found = known.get(beam)
    if (found !== undefined) return found
    spend(2 * thingsIn(state))
    const present = backgroundOf(beam, state, NO_GIVE)
    const learned = sensor.segments ? undefined : door.states.find(({ id }) => id === sensor.learnedIn)
    const made = learned === undefined ? present : Math.min(present, backgroundOf(beam, learned, NO_GIVE))
    known.set(beam, made)
    return made
  }
}

function thingsIn({ obstacles, floor }: State): number {
  return 1 + obstacles.length + floor.profile.length
}

const NO_GIVE = { off: [0, 0, 0], length: 0, floor: 0 } as const

/** In the door as written, with the leaf as an obstacle that was not there when the background was learned. */
function readingBehind({ solids, ignored }: ShutLeaf, door: Door, present: State, field: Field, plane: Plane, b: number): Reading {
  const behind = { ...present, obstacles: [...present.obstacles, ...solids] }
  const reading = readingOf(door, behind, AS_WRITTEN, field, plane, b)
  const ignores = field.byLeaf?.ignores
  return ignores ? { ...reading, windows: outside(reading.beam, reading.windows, ignored(ignores)) } : reading
}

function readingOf(door: Door, present: State, tolerances: Tolerances, field: Field, plane: Plane, b: number): Reading {
  const { sensor } = field
  const beam = plane.beams[b]
  const learned = door.states.find(({ id }) => id === sensor.learnedIn)
  if (beam === undefined || learned === undefined) throw new Error(`b must be one of ${plane.beams.length} beams, got ${b}`)
  const directionOff = directionOffOf(tolerances, sensor, plane, beam)
  const give = (far: number) => ({ off: offOf(tolerances, sensor, plane, beam, far), length: tolerances.length, floor: tolerances.floor })
  if (sensor.segments) {
    const { off } = give(beam.length)
    const windows = isBlocked(beam, present, give(beam.length)) ? [] : [{ from: -Infinity, to: Infinity }]
    return { beam, far: beam.length, off, directionOff, windows }
  }
  const asWritten = windowsOf(beam, field, sensor, { learned, present }, NO_GIVE)
  const far = (asWritten.at(-1)?.to ?? 0) + sensor.margin // the background, a margin behind, may come nearer too
  const windows = windowsOf(beam, field, weakest(sensor, tolerances), { learned, present }, give(far))
  return { beam, far, off: give(far).off, directionOff, windows }
}

/** Says which step of docs/evidence.md a tile fails for which beam; undefined where the sight sees the body at every placement. */
export type Watch = (tile: Tile) => { readonly beam: number; readonly fails: string } | undefined

/** One sight against one body on one piece of the floor. */
export function watchOf(sight: Sight, target: Target, setting: Setting, readingAt: ReturnType<typeof readingsOf>): Watch {
  const { field, plane, first, faces } = sight
  const watches = faces.map((entered, k) => watchOfBeam(field, readingAt(field, plane, first + k), entered, target, setting))
  return (tile) => {
    for (const [k, watch] of watches.entries()) {
      const fails = watch.failsOn(tile)
      if (fails !== undefined) return { beam: first + k, fails }
    }
    return undefined
  }
}

/** One beam against one solid: what it fails on a tile, and where it has entered the solid at the latest if it fails nothing. */
export interface BeamWatch {
  readonly failsOn: (tile: Tile) => string | undefined
  readonly latest: (tile: Tile) => number
}

export function watchOfBeam(field: Field, reading: Reading, faces: number, target: Target, { door, tolerances }: Setting): BeamWatch {
  const { sensor } = field
  const { beam, windows, far } = reading
  const shape = target.shape(sensor.spot)
  const off: Vector = [reading.off[0], reading.off[1], reading.off[2] + tolerances.floor]
  const passage =
    'box' in shape
      ? passageThroughBox(beam, shape.box, off, reading.directionOff)
      : passageThroughCylinder(beam, shape.cylinder, off, reading.directionOff, far)
  const possible = 'box' in shape ? 7 : 5
  const never = (fails: string): BeamWatch => ({ failsOn: () => fails, latest: () => Infinity })
  if (passage === undefined) return never('a body that the spot leaves something of')
  if ((faces & ~possible) !== 0) return never(`faces among ${possible}`)
  if (windows.length === 0) return never('a beam in which anything counts')
  const weak = weakest(sensor, tolerances)
  const reach = once((cosine) => reachOf(weak, target.reflectance, door.extinction, cosine))
  const ranges = (tile: Tile) =>
    passage.cosines(faces, tile).reduce((least, { cosine, share }) => Math.min(least, reach(cosine) * share), Infinity)
  const failsOn = (tile: Tile) =>
    sensor.segments ? failsOfSegment(beam, passage, tile) : failsOfRanging(passage, windows, faces, ranges, tile)
  return { failsOn, latest: passage.latest }
}

function failsOfSegment(beam: Beam, passage: Passage, tile: Tile): string | undefined {
  if (!passage.isHit(tile)) return 'step 1, a hit at every placement'
  if (!(passage.latest(tile) < beam.length - SPARE)) return 'an entry before its end'
  return passage.soonestEnd(tile) > SPARE ? undefined : 'an exit after its start'
}

function failsOfRanging(
  passage: Passage,
  windows: readonly Stretch[],
  faces: number,
  ranges: (tile: Tile) => number,
  tile: Tile,
): string | undefined {
  if (!passage.isHit(tile)) return 'step 1, a hit at every placement'
  if ((passage.mayEnter(tile) & ~faces) !== 0) return 'step 2, all faces that it may enter'
  const [earliest, latest] = [passage.earliest(tile), passage.latest(tile)]
  if (!(latest < ranges(tile) - SPARE)) return 'step 3, an entry within reach'
  const within = windows.some(({ from, to }) => latest < to - SPARE && earliest > from + SPARE)
  return within ? undefined : 'steps 3 and 4, an entry within one window'
}

/** Computed once for each of the few numbers that are asked for. */
function once(compute: (x: number) => number): (x: number) => number {
  const known = new Map<number, number>()
  return (x) => {
    const found = known.get(x)
    if (found !== undefined) return found
    const made = compute(x)
    known.set(x, made)
    return made
  }
}
