import { type BoxObstacle, radians } from '@sillsight/engine'
import type { Remarks } from '../remarks.ts'
import type { Survey } from '../schema/survey.ts'
import { shown } from '../shown.ts'

/** An upright box between opposite faces. */
interface Block {
  readonly id: string
  readonly name: string
  readonly x_mm: readonly [from: number, to: number]
  readonly y_mm: readonly [from: number, to: number]
  readonly z_mm: readonly [from: number, to: number]
}
interface Faces {
  readonly yMin_mm: number
  readonly yMax_mm: number
}

/**
 * The obstacles that the survey implies without listing them: the wall on both sides, lintel, jambs, guides, hood and the parked leaf, each
 * from its own measures. What the survey does not give is not there; only about the walls nobody may stay silent, because a doorway without
 * them is the exception.
 *
 * @param lowest_mm where everything that stands on the floor begins
 */
export function impliedObstacles(
  survey: Survey,
  sides: { readonly a: string },
  lowest_mm: number,
  remarks: Remarks,
): readonly BoxObstacle[] {
  if (survey.walls === undefined) remarks.assume('survey/walls')
  const blocks = [
    ...wallBlocks(survey, sides, lowest_mm, remarks),
    ...uprights('jamb', survey.jambs, survey, sides, lowest_mm, remarks),
    ...uprights('guide', survey.guides, survey, sides, lowest_mm, remarks),
    ...hoodBlocks(survey, remarks),
  ]
  return [...blocks.filter(({ x_mm, z_mm }) => x_mm[0] < x_mm[1] && z_mm[0] < z_mm[1]).map(boxOf), ...parkedLeaf(survey, remarks)]
}

function wallBlocks(survey: Survey, sides: { readonly a: string }, lowest_mm: number, remarks: Remarks): readonly Block[] {
  const { walls, lintel, opening } = survey
  const blocks: Block[] = []
  if (walls !== undefined && walls !== 'none') {
    const y_mm = facesOf(walls, 'survey/walls', remarks)
    const z_mm = [lowest_mm, walls.top_mm] as const
    blocks.push({ id: 'wall-at-zero', name: `wall, ${hand('zero', sides)}`, x_mm: [-walls.beyondZero_mm, 0], y_mm, z_mm })
    blocks.push({
      id: 'wall-at-width',
      name: `wall, ${hand('width', sides)}`,
      x_mm: [opening.width_mm, opening.width_mm + walls.beyondWidth_mm],
      y_mm,
      z_mm,
    })
  }
  const spanning = lintel ?? walls
  if (spanning !== undefined && spanning !== 'none') {
    const y_mm = facesOf(spanning, lintel === undefined ? 'survey/walls' : 'survey/lintel', lintel === undefined ? undefined : remarks)
    const underside_mm = ('underside_mm' in spanning ? spanning.underside_mm : undefined) ?? opening.height_mm
    blocks.push({ id: 'lintel', name: 'lintel', x_mm: [0, opening.width_mm], y_mm, z_mm: [underside_mm, spanning.top_mm] })
  }
  return blocks
}

function uprights(
  what: 'jamb' | 'guide',
  given: Survey['jambs'],
  { opening }: Survey,
  sides: { readonly a: string },
  lowest_mm: number,
  remarks: Remarks,
): readonly Block[] {
  if (given === undefined || given === 'none') return []
  const y_mm = facesOf(given, `survey/${what}s`, remarks)
  const z_mm = [lowest_mm, given.top_mm ?? opening.height_mm] as const
  return [
    { id: `${what}-at-zero`, name: `${what}, ${hand('zero', sides)}`, x_mm: [-given.width_mm, 0], y_mm, z_mm },
    {
      id: `${what}-at-width`,
      name: `${what}, ${hand('width', sides)}`,
      x_mm: [opening.width_mm, opening.width_mm + given.width_mm],
      y_mm,
      z_mm,
    },
  ]
}

function hoodBlocks({ hood, opening }: Survey, remarks: Remarks): readonly Block[] {
  if (hood === undefined || hood === 'none') return []
  const beyond_mm = hood.beyond_mm ?? 0
  if (hood.from_mm >= hood.to_mm)
    remarks.issue({
      code: 'contradiction',
      path: 'survey/hood/to_mm',
      expected: `a height above from_mm (${hood.from_mm})`,
      got: shown(hood.to_mm),
    })
  const y_mm = facesOf(hood, 'survey/hood', remarks)
  return [{ id: 'hood', name: 'hood', x_mm: [-beyond_mm, opening.width_mm + beyond_mm], y_mm, z_mm: [hood.from_mm, hood.to_mm] }]
}

function parkedLeaf({ leaf }: Survey, remarks: Remarks): readonly BoxObstacle[] {
  const parked = leaf?.parked
  if (parked === undefined || parked === 'none') return []
  const { x_mm, y_mm, size_mm, yaw_deg = 0, from_mm, to_mm } = parked
  if (from_mm >= to_mm)
    remarks.issue({
      code: 'contradiction',
      path: 'survey/leaf/parked/to_mm',
      expected: `a height above from_mm (${from_mm})`,
      got: shown(to_mm),
    })
  return [
    { shape: 'box', id: 'parked-leaf', name: 'parked leaf', x_mm, y_mm, size_mm, yaw_rad: radians(yaw_deg), from_mm, to_mm, implied: true },
  ]
}

/** x = 0 is at the right hand of whoever faces the door from side A (docs/method.md, section 1). */
function hand(end: 'zero' | 'width', { a }: { readonly a: string }): string {
  return `${end === 'zero' ? 'right' : 'left'} seen from ${a}`
}

function facesOf({ yMin_mm, yMax_mm }: Faces, path: string, remarks: Remarks | undefined): readonly [number, number] {
  if (yMin_mm >= yMax_mm)
    remarks?.issue({ code: 'contradiction', path: `${path}/yMax_mm`, expected: `a y above yMin_mm (${yMin_mm})`, got: shown(yMax_mm) })
  return [yMin_mm, yMax_mm]
}

function boxOf({ id, name, x_mm, y_mm, z_mm }: Block): BoxObstacle {
  return {
    shape: 'box',
    id,
    name,
    x_mm: (x_mm[0] + x_mm[1]) / 2,
    y_mm: (y_mm[0] + y_mm[1]) / 2,
    size_mm: [x_mm[1] - x_mm[0], y_mm[1] - y_mm[0]],
    yaw_rad: 0,
    from_mm: z_mm[0],
    to_mm: z_mm[1],
    implied: true,
  }
}
