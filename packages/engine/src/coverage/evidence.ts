import type { Door, DoorState, Tolerances } from '../model/door.ts'
import type { Pocket } from '../model/finding.ts'
import type { Zone } from '../model/zone.ts'
import { PI } from '../space/trigonometry.ts'
import { type ExactTrees, exactTrees } from './exact-trees.ts'
import { fieldName } from './scene.ts'
import type { TileTree } from './tile-tree.ts'
import { rulesFailed } from './worst-case.ts'

/** What lets a foreign program re-check coverage: docs/evidence.md is the specification. Plain JSON; lengths in mm, angles in degrees. */
export interface Evidence {
  readonly sillsightEvidence: 1
  readonly doorSha256: string
  readonly coverages: readonly CoverageEvidence[]
}

export interface CoverageEvidence {
  readonly zone: string
  readonly state: string
  readonly tolerances: TolerancesInFile | null
  readonly smallest_mm: number
  readonly fields: readonly string[]
  readonly obstacles: readonly string[]
  readonly sights: readonly (readonly [field: number, plane: number, beam: number, faces: readonly number[]])[]
  readonly slices: readonly SliceEvidence[]
  readonly worstCases: readonly WorstCaseEvidence[]
}

export interface SliceEvidence {
  readonly body: string
  readonly posture: number
  readonly part: number
  readonly of: number
  readonly trees: readonly TileTree[]
}

export interface WorstCaseEvidence {
  readonly pocket: string
  readonly slice: number
  readonly x_mm: number
  readonly y_mm: number
  readonly yaw_deg: number
  /** Per plane of each field: the rule that each beam fails, in runs. */
  readonly fails: readonly (readonly [field: number, plane: number, runs: string])[]
}

/** As the door file writes them. */
export interface TolerancesInFile {
  readonly length_mm: number
  readonly position_mm: number
  readonly tilt_deg: number
  readonly roll_deg: number
  readonly yaw_deg: number
  readonly floor_mm: number
  readonly range_percent: number
}

/** Evidence of one zone in one state: the trees, and of each blind pocket the worst case with the rule that each beam fails. */
export function coverageEvidence(
  door: Door,
  zone: Zone,
  state: DoorState,
  trees: ExactTrees,
  pockets: readonly Pocket[],
  tolerances: TolerancesInFile | null,
): CoverageEvidence {
  const parts = trees.slices.map((slice) => ({
    slice,
    before: trees.slices.filter((other) => other.body === slice.body && other.posture === slice.posture),
  }))
  return {
    zone: zone.id,
    state: state.id,
    tolerances,
    smallest_mm: trees.smallest_mm,
    fields: trees.fields.map(fieldName),
    obstacles: trees.obstacles,
    sights: trees.sights.map(({ field, plane, beam, faces }) => [field, plane, beam, faces] as const),
    slices: parts.map(({ slice, before }) => ({
      body: slice.body,
      posture: slice.posture,
      part: before.indexOf(slice),
      of: before.length,
      trees: slice.trees,
    })),
    worstCases:
      tolerances === null
        ? pockets.filter(({ worstCase }) => isIn(zone, worstCase)).map((pocket) => worstCaseEvidence(door, state, trees, pocket))
        : [],
  }
}

/** A pocket that lies in the last strip of the grid alone, beyond the zone, has no placement of the zone to show. */
function isIn({ xMin_mm, xMax_mm, yMin_mm, yMax_mm }: Zone, { x_mm, y_mm }: Pocket['worstCase']): boolean {
  return x_mm >= xMin_mm && x_mm <= xMax_mm && y_mm >= yMin_mm && y_mm <= yMax_mm
}

function worstCaseEvidence(door: Door, state: DoorState, trees: ExactTrees, { letter, worstCase }: Pocket): WorstCaseEvidence {
  const { body, posture, x_mm, y_mm, yaw_rad } = worstCase
  const beyond = (s: ExactTrees['slices'][number]) => Math.max(s.yawFrom_rad - yaw_rad, yaw_rad - s.yawTo_rad, 0)
  const own = trees.slices.filter((s) => s.body === body && s.posture === posture)
  const nearest = own.reduce((best, s) => (beyond(s) < beyond(best) ? s : best)) // the last yaw of a range may round to just beyond it
  const slice = trees.slices.indexOf(nearest)
  return { pocket: letter, slice, x_mm, y_mm, yaw_deg: (yaw_rad * 180) / PI, fails: rulesFailed(door, state, trees.fields, worstCase) }
}

/**
 * Evidence of every zone that has to be covered, in every state: for the door as written, and over its tolerances where it states some.
 *
 * @param doorSha256 of the bytes of the door file
 * @param pocketsOf the blind pockets of a zone in a state, whose worst cases are shown
 */
export function evidenceOf(
  door: Door,
  doorSha256: string,
  tolerancesInFile: TolerancesInFile | null,
  pocketsOf: (zone: Zone, state: DoorState) => readonly Pocket[],
  treesOf: (zone: Zone, state: DoorState, tolerances: Tolerances | undefined) => ExactTrees = (zone, state, tolerances) =>
    exactTrees(door, zone, state, tolerances),
): Evidence {
  const coverages: CoverageEvidence[] = []
  for (const zone of door.zones)
    for (const state of door.states) {
      if (zone.purpose === 'must-not-see') continue
      const pockets = pocketsOf(zone, state)
      coverages.push(coverageEvidence(door, zone, state, treesOf(zone, state, undefined), pockets, null))
      if (door.tolerances && tolerancesInFile)
        coverages.push(coverageEvidence(door, zone, state, treesOf(zone, state, door.tolerances), [], tolerancesInFile))
    }
  return { sillsightEvidence: 1, doorSha256, coverages }
}
