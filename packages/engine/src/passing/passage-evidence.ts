import { fieldName, type Stance, stancesOfBodies } from '../coverage/scene.ts'
import { seenIn, treesAlong } from '../coverage/seen-along.ts'
import type { Stretch } from '../coverage/stretches.ts'
import type { TileSight, TileTree } from '../coverage/tile-tree.ts'
import { partsOf } from '../model/body.ts'
import { closingFrom } from '../motion/leaf-run.ts'
import { FARTHEST_MM, farthest, type LaneQuestion, SLOWEST_MM_PER_S } from './lane-verdict.ts'
import { alongWay, placesAcross } from './lane-ways.ts'
import { halfAlong } from './leaf-plane.ts'
import { neverStruck, type ProvedPart } from './never-struck.ts'
import type { View } from './output.ts'

/** What lets a foreign program re-check that no body of a lane is struck: docs/evidence.md, "Passages". Plain JSON; mm and s. */
export interface PassageEvidence {
  readonly lane: string
  readonly state: string
  readonly fields: readonly string[]
  /** For each field. */
  readonly sights: readonly (readonly (readonly [field: number, plane: number, beam: number, faces: readonly number[]])[])[]
  readonly far_mm: number
  readonly stands: readonly StandEvidence[]
}
export interface StandEvidence {
  readonly body: string
  readonly posture: number
  readonly x_mm: number
  /** For each field, for each straight piece of the floor. */
  readonly seen: readonly (readonly TileTree[])[]
  readonly closings: readonly { readonly from: 'a' | 'b'; readonly opening_mm: number; readonly parts: readonly ProvedPart[] }[]
}

/** Undefined where it is not so, or cannot be shown in this form: a leaf that turns, a range of yaw, several parts, falls and followers, closings while an output forbids them. */
export function passageEvidence(question: LaneQuestion): PassageEvidence | undefined {
  const { door, state, lane, drive, plane, speeds_mm_per_s, openings_mm, quiet, startsWhileHeld } = question
  const fields = question.fields.filter(({ holds }) => holds)
  const { stances, yawSampled } = stancesOfBodies(door, lane.bodies, `lane ${lane.id}`)
  const closings = openings_mm.map((opening_mm) => closingFrom(drive, opening_mm))
  if (!('met' in plane) || lane.falls === true || lane.followGap_mm !== undefined || startsWhileHeld) return undefined
  if (yawSampled || stances.some(({ posture }) => partsOf(posture)) || closings.some(({ profile }) => !(profile.end_s > 0)))
    return undefined
  const far_mm = Math.min(FARTHEST_MM, farthest(fields)) + 2000
  const sights: TileSight[][] = fields.map(() => [])
  const trees = fields.map(({ counted }) => treesAlong(door, state, counted))
  const [slowest, fastest] = speeds_mm_per_s.map((speed) => Math.max(SLOWEST_MM_PER_S, speed)) as [number, number]
  const stands: StandEvidence[] = []
  for (const stance of stances) {
    const half = halfAlong(stance)
    const along = trees.map((treesOf) => treesOf(stance))
    for (const x_mm of placesAcross(lane, half.x_mm)) {
      const found = along.map((treesAt, f) => treesAt(x_mm, -far_mm, far_mm, sights[f] as TileSight[]))
      const seen = found.map(seenIn)
      const reach_mm = plane.half_mm + half.y_mm
      const clear = Math.max(...plane.met(stance, x_mm).map((part) => part.clear))
      const proved: StandEvidence['closings'][number][] = []
      for (const from of lane.from) {
        const views: View[] = fields.map(({ response_s, hold_s }, f) => {
          const alongY = seen[f] as readonly Stretch[]
          return { visible: alongWay(alongY, from), response_s, hold_s }
        })
        for (const closing of closings) {
          const way = { closing, enter_mm: -reach_mm, leave_mm: reach_mm, clear, views, quiet }
          const parts = neverStruck(way, [1 / fastest, 1 / slowest])
          if (parts === undefined) return undefined
          proved.push({ from, opening_mm: closing.from, parts })
        }
      }
      stands.push({ ...named(stance), x_mm, seen: found.map((pieces) => pieces.map(({ tree }) => tree)), closings: proved })
    }
  }
  const listed = sights.map((list) => list.map(({ plane: p, beam, faces }) => [0, p, beam, faces] as const))
  return { lane: lane.id, state: state.id, fields: fields.map(({ counted }) => fieldName(counted)), sights: listed, far_mm, stands }
}

function named({ body, index }: Stance) {
  return { body: body.id, posture: index }
}
