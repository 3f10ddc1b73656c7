import { newSightTable } from '../coverage/parts-along.ts'
import { fieldName, type Stance, stancesOfBodies } from '../coverage/scene.ts'
import { type SightsAlong, seenIn, type TreeAlong, treesAlong } from '../coverage/seen-along.ts'
import type { Stretch } from '../coverage/stretches.ts'
import type { TileTree } from '../coverage/tile-tree.ts'
import { partsOf } from '../model/body.ts'
import { type Closing, closingFrom } from '../motion/leaf-run.ts'
import { FARTHEST_MM, farthest, type LaneQuestion, SLOWEST_MM_PER_S } from './lane-verdict.ts'
import { allFalls, allPassing, alongWay, type Passing, placesAcross, stretchInPlane } from './lane-ways.ts'
import { halfAlong, type MetPart } from './leaf-plane.ts'
import { neverStruck, neverStruckLying, type ProvedFall, type ProvedPart } from './never-struck.ts'
import { type ProvedFallStrip, type ProvedStrip, stripsNeverStruck, stripsNeverStruckLying } from './turning-evidence.ts'

/** What lets a foreign program re-check that no body of a lane is struck: docs/evidence.md, "Passages". Plain JSON; mm and s. */
export interface PassageEvidence {
  readonly lane: string
  readonly state: string
  readonly fields: readonly string[]
  /** For each field: of bodies of one part. */
  readonly sights: readonly (readonly (readonly [field: number, plane: number, beam: number, faces: readonly number[]])[])[]
  /** For each field: of bodies of several. */
  readonly partSights?: readonly (readonly (readonly [plane: number, beam: number, parts: readonly (readonly number[])[]])[])[]
  readonly far_mm: number
  readonly stands: readonly StandEvidence[]
  readonly falls?: readonly FallEvidence[]
}
export interface StandEvidence {
  readonly body: string
  readonly posture: number
  /** Another body so close that it is seen, and hides this one. */
  readonly beside?: readonly [body: string, posture: number, 'ahead' | 'behind']
  readonly x_mm: number
  /** For each field, for each straight piece of the floor. */
  readonly seen: Seen
  readonly closings: readonly (ClosingEvidence & { readonly from: 'a' | 'b' } & (
      | { readonly parts: readonly ProvedPart[] }
      | { /** Of a leaf that turns. */ readonly strips: readonly ProvedStrip[] }
    ))[]
}
export interface FallEvidence {
  readonly body: string
  readonly posture: number
  readonly lying: number
  readonly from: 'a' | 'b'
  readonly x_mm: number
  readonly seen: Seen
  readonly lies: Seen
  readonly closings: readonly (ClosingEvidence & { readonly stretches: readonly (ProvedFall | ProvedFallStrip)[] })[]
}
interface ClosingEvidence {
  readonly opening_mm: number
  /** Which part of a body of several is met. */
  readonly met?: number
}
type Seen = readonly (readonly TileTree[])[]

/** Undefined where it is not so, or cannot be shown in this form: a range of yaw, closings while an output forbids them. */
export function passageEvidence(question: LaneQuestion): PassageEvidence | undefined {
  const { door, state, lane, drive, plane, openings_mm, startsWhileHeld } = question
  const fields = question.fields.filter(({ holds }) => holds)
  const { stances, yawSampled } = stancesOfBodies(door, lane.bodies, `lane ${lane.id}`)
  const closings = openings_mm.map((opening_mm) => closingFrom(drive, opening_mm))
  if (startsWhileHeld || yawSampled || closings.some(({ profile }) => !(profile.end_s > 0))) return undefined
  const passing = allPassing(stances, lane)
  const far_mm = Math.min(FARTHEST_MM, farthest(fields)) + Math.max(2000, ...passing.map(({ stance }) => halfAlong(stance).y_mm))
  const sights = fields.map((): SightsAlong => ({ ofOne: [], ofParts: newSightTable() }))
  const trees = fields.map(({ counted, sight }) => treesAlong(door, state, counted, sight))
  const sightOf = (stance: Stance) => {
    const along = trees.map((treesOf) => treesOf(stance))
    return (x_mm: number) => along.map((treesAt, f) => treesAt(x_mm, -far_mm, far_mm, sights[f] as SightsAlong))
  }
  const given = { question, fields, plane, closings, sightOf }
  const stands = flatMapWhole(passing, (each) => standsOf(each, given))
  const falls = stands && flatMapWhole(allFalls(stances, lane), (each) => fallsOf(each, given))
  if (stands === undefined || falls === undefined) return undefined
  const ofOne = sights.map((of) => of.ofOne.map(({ plane: p, beam, faces }) => [0, p, beam, faces] as const))
  const ofParts = sights.map((of) => of.ofParts.list.map(({ plane: p, beam, parts }) => [p, beam, parts] as const))
  return {
    lane: lane.id,
    state: state.id,
    fields: fields.map(({ counted }) => fieldName(counted)),
    sights: ofOne,
    ...(ofParts.some(({ length }) => length > 0) ? { partSights: ofParts } : {}),
    far_mm,
    stands,
    ...(falls.length > 0 ? { falls } : {}),
  }
}

interface Given {
  readonly question: LaneQuestion
  readonly fields: LaneQuestion['fields']
  readonly plane: LaneQuestion['plane']
  readonly closings: readonly Closing[]
  readonly sightOf: (stance: Stance) => (x_mm: number) => readonly (readonly TreeAlong[])[]
}

function standsOf({ stance, sides, company, other }: Passing, { question, fields, plane, closings, sightOf }: Given) {
  const { lane, quiet } = question
  const sight = sightOf(stance)
  const beside = company && other ? { beside: [other.body.id, other.index, company] as const } : {}
  return mapWhole(placesAcross(lane, halfAlong(stance).x_mm), (x_mm): StandEvidence | undefined => {
    const found = sight(x_mm)
    const seen = found.map(seenIn)
    const viewsFrom = (from: 'a' | 'b') =>
      fields.map(({ response_s, hold_s }, f) => ({ visible: alongWay(seen[f] as readonly Stretch[], from), response_s, hold_s }))
    const stand = { body: stance.body.id, posture: stance.index, ...beside, x_mm, seen: found.map(treesOf) }
    if (!('met' in plane)) {
      const strips = mapWhole(
        sides.flatMap((from) => closings.map((closing) => ({ from, closing }))),
        ({ from, closing }) => {
          const proved = stripsNeverStruck({ leaf: plane, stance, x_mm, from, closing }, viewsFrom(from), slownesses(question))
          return proved && { from, opening_mm: closing.from, strips: proved }
        },
      )
      return strips && { ...stand, closings: strips }
    }
    const met = sides.flatMap((from) => plane.met(stance, x_mm).flatMap((part) => closings.map((closing) => ({ from, part, closing }))))
    const proved = mapWhole(met, ({ from, part, closing }) => {
      const views = viewsFrom(from)
      const way = { closing, ...stretchInPlane(part, from, plane.half_mm), clear: part.clear, views, quiet }
      const parts = neverStruck(way, slownesses(question))
      return parts && { from, ...closingOf(stance, part, closing), parts }
    })
    return proved && { ...stand, closings: proved }
  })
}

function fallsOf({ upright, lying, sides }: ReturnType<typeof allFalls>[number], { question, fields, plane, closings, sightOf }: Given) {
  const { lane, quiet } = question
  const [sightUpright, sightLying] = [sightOf(upright), sightOf(lying)]
  const ways = placesAcross(lane, halfAlong(upright).x_mm).flatMap((x_mm) => sides.map((from) => ({ x_mm, from })))
  const ids = (x_mm: number, from: 'a' | 'b') => ({ body: upright.body.id, posture: upright.index, lying: lying.index, from, x_mm })
  return mapWhole(ways, ({ x_mm, from }): FallEvidence | undefined => {
    const [before, after] = [sightUpright(x_mm), sightLying(x_mm)]
    const views = fields.map(({ response_s, hold_s }, f) => {
      const along = (found: typeof before) => alongWay(seenIn(found[f] as readonly TreeAlong[]), from)
      return { upright: along(before), lying: along(after), response_s, hold_s }
    })
    const fall = { ...ids(x_mm, from), seen: before.map(treesOf), lies: after.map(treesOf) }
    if (!('met' in plane)) {
      const strips = mapWhole(closings, (closing) => {
        const stretches = stripsNeverStruckLying({ leaf: plane, stance: lying, x_mm, from, closing }, views, slownesses(question))
        return stretches && { opening_mm: closing.from, stretches }
      })
      return strips && { ...fall, closings: strips }
    }
    const met = plane.met(lying, x_mm).flatMap((part) => closings.map((closing) => ({ part, closing })))
    const proved = mapWhole(met, ({ part, closing }) => {
      const way = { closing, ...stretchInPlane(part, from, plane.half_mm), clear: part.clear, views, quiet }
      const stretches = neverStruckLying(way, slownesses(question))
      return stretches && { ...closingOf(lying, part, closing), stretches }
    })
    return proved && { ...fall, closings: proved }
  })
}

function closingOf({ posture }: Stance, part: MetPart, closing: Closing): ClosingEvidence {
  return { opening_mm: closing.from, ...(partsOf(posture) ? { met: part.index } : {}) }
}

function slownesses({ speeds_mm_per_s: [slowest, fastest] }: LaneQuestion): readonly [number, number] {
  return [1 / Math.max(SLOWEST_MM_PER_S, fastest), 1 / Math.max(SLOWEST_MM_PER_S, slowest)]
}

function treesOf(pieces: readonly TreeAlong[]): readonly TileTree[] {
  return pieces.map(({ tree }) => tree)
}

/** Undefined as soon as one of them is. */
function mapWhole<T, U>(list: readonly T[], make: (each: T) => U | undefined): readonly U[] | undefined {
  const made: U[] = []
  for (const each of list) {
    const one = make(each)
    if (one === undefined) return undefined
    made.push(one)
  }
  return made
}

function flatMapWhole<T, U>(list: readonly T[], make: (each: T) => readonly U[] | undefined): readonly U[] | undefined {
  return mapWhole(list, make)?.flat()
}
