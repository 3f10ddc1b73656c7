import { type DoorState, type Floor, type Obstacle, radians } from '@sillsight/engine'
import type { Remarks } from '../remarks.ts'
import type { FileFloor, FileObstacle, Survey } from '../schema/survey.ts'
import { shown, shownText } from '../shown.ts'
import { DEFAULTS } from './defaults.ts'
import { impliedObstacles } from './implied-obstacles.ts'

const LEVEL: Floor = { profile: [{ y_mm: 0, z_mm: 0 }], slopeX: 0, tolerance_mm: undefined }

/** The states of the doorway, never none: floor and obstacles of each, those that the survey implies among them. */
export function doorStates(survey: Survey, sides: { readonly a: string; readonly b: string }, remarks: Remarks): readonly DoorState[] {
  if (survey.floor === undefined) remarks.assume('survey/floor')
  const usual = survey.floor === undefined ? LEVEL : floorOf(survey.floor, 'survey/floor', remarks)
  const floors = (survey.states ?? []).map((state, i) => (state.floor ? floorOf(state.floor, `survey/states/${i}/floor`, remarks) : usual))
  const implied = impliedObstacles(survey, sides, lowest_mm([usual, ...floors], survey.opening.width_mm), remarks)
  const listed = (survey.obstacles ?? []).map((obstacle, i) => obstacleOf(obstacle, `survey/obstacles/${i}`, remarks))
  const everywhere = [...implied, ...listed]
  reportTwins(
    everywhere.map((each) => each.id),
    (i) => `survey/obstacles/${i - implied.length}/id`,
    remarks,
  )
  if (survey.states === undefined) return [{ id: 'as-surveyed', name: 'as surveyed', floor: usual, obstacles: everywhere }]
  reportTwins(
    survey.states.map((state) => state.id),
    (i) => `survey/states/${i}/id`,
    remarks,
  )
  return survey.states.map((state, i) => ({
    id: state.id,
    name: state.name ?? state.id,
    floor: floors[i] ?? usual,
    obstacles: inState(state, everywhere, `survey/states/${i}`, remarks),
  }))
}

type FileState = NonNullable<Survey['states']>[number]

function inState(state: FileState, everywhere: readonly Obstacle[], path: string, remarks: Remarks): readonly Obstacle[] {
  const known = new Set(everywhere.map((each) => each.id))
  for (const [i, gone] of (state.removeObstacles ?? []).entries()) {
    if (!known.has(gone))
      remarks.issue({
        code: 'unknown-id',
        path: `${path}/removeObstacles/${i}`,
        expected: 'the id of an obstacle that is there otherwise',
        got: shownText(gone),
      })
  }
  const left = everywhere.filter((each) => state.removeObstacles?.includes(each.id) !== true)
  const added = (state.addObstacles ?? []).map((obstacle, i) => obstacleOf(obstacle, `${path}/addObstacles/${i}`, remarks))
  const all = [...left, ...added]
  reportTwins(
    all.map((each) => each.id),
    (i) => `${path}/addObstacles/${i - left.length}/id`,
    remarks,
  )
  return all
}

function floorOf({ profile_mm, slopeX_percent, tolerance_mm }: FileFloor, path: string, remarks: Remarks): Floor {
  let before = -Infinity
  for (const [i, [y_mm]] of profile_mm.entries()) {
    if (y_mm <= before) {
      remarks.issue({
        code: 'contradiction',
        path: `${path}/profile_mm/${i}/0`,
        expected: `y above ${before}, as the profile runs along y`,
        got: shown(y_mm),
        repair: 'write a step as a steep piece, 1 mm long',
      })
    }
    before = y_mm
  }
  if (slopeX_percent === undefined) remarks.assume(`${path}/slopeX_percent`)
  return {
    profile: profile_mm.map(([y_mm, z_mm]) => ({ y_mm, z_mm })),
    slopeX: (slopeX_percent ?? DEFAULTS.slopeX_percent) / 100,
    tolerance_mm,
  }
}

export function obstacleOf(obstacle: FileObstacle, path: string, remarks: Remarks): Obstacle {
  const { id, name = id, x_mm, y_mm, from_mm, to_mm } = obstacle
  if (from_mm >= to_mm)
    remarks.issue({ code: 'contradiction', path: `${path}/to_mm`, expected: `a height above from_mm (${from_mm})`, got: shown(to_mm) })
  const base = { id, name, x_mm, y_mm, from_mm, to_mm, implied: false }
  return obstacle.shape === 'post'
    ? { ...base, shape: 'post', radius_mm: obstacle.radius_mm }
    : { ...base, shape: 'box', size_mm: obstacle.size_mm, yaw_rad: radians(obstacle.yaw_deg ?? 0) }
}

/** Reports ids that stood before; `pathOf` gives the place of the i-th. */
export function reportTwins(ids: readonly string[], pathOf: (i: number) => string, remarks: Remarks): void {
  const before = new Set<string>()
  for (const [i, id] of ids.entries()) {
    if (before.has(id))
      remarks.issue({ code: 'duplicate-id', path: pathOf(i), expected: 'an id that stands only once', got: shownText(id) })
    before.add(id)
  }
}

/** No floor of any state lies lower anywhere near the opening: implied obstacles stand down to here. */
function lowest_mm(floors: readonly Floor[], width_mm: number): number {
  const heights = floors.flatMap(({ profile, slopeX }) => profile.map(({ z_mm }) => z_mm - Math.abs(slopeX) * 2 * width_mm))
  return Math.min(0, ...heights)
}
