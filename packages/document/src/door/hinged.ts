import { type HingedLeaf, type Leaf, radians } from '@sillsight/engine'
import type { Remarks } from '../remarks.ts'
import type { Survey } from '../schema/survey.ts'
import { shown } from '../shown.ts'
import { DEFAULTS } from './defaults.ts'

const PATH = 'survey/leaf/hinged'
/** All leaves together fill at least this share of the opening, and overlap its ends by at most that much more. */
const LEAST_SHARE = 0.5
const MOST_SHARE = 1.25

/** The leaf, and how one that turns is hung; what contradicts the opening is refused. */
export function leafOf({ leaf, opening }: Survey, remarks: Remarks): Leaf | undefined {
  if (leaf === undefined) return undefined
  if (leaf.bulge_mm === undefined) remarks.assume('survey/leaf/bulge_mm')
  const { travel, thickness_mm, bulge_mm = DEFAULTS.bulge_mm } = leaf
  const hinged = leaf.hinged && hingedOf(leaf.hinged, opening.width_mm, remarks)
  if (hinged && travel !== 'turning')
    remarks.issue({ code: 'contradiction', path: 'survey/leaf/travel', expected: '"turning" for a leaf on a hinge', got: `"${travel}"` })
  return { travel, thickness_mm, bulge_mm, ...(hinged ? { hinged } : {}) }
}

/** How far the edge goes between shut and open; undefined where nobody said how the leaf is hung. */
export function turningWay_mm({ leaf }: Survey): number | undefined {
  return leaf?.travel === 'turning' && leaf.hinged ? radians(leaf.hinged.openAngle_deg) * leaf.hinged.length_mm : undefined
}

function hingedOf(file: NonNullable<NonNullable<Survey['leaf']>['hinged']>, width_mm: number, remarks: Remarks): HingedLeaf {
  const { hinge, opensTo, length_mm, secondPanel_mm, openAngle_deg } = file
  const wrong = (field: string, expected: string, got: number) =>
    remarks.issue({ code: 'contradiction', path: `${PATH}/${field}`, expected, got: shown(got) })
  const leaves = hinge === 'both' ? 2 : 1
  const filled_mm = leaves * (length_mm + (secondPanel_mm ?? 0))
  const [least_mm, most_mm] = [LEAST_SHARE * width_mm, MOST_SHARE * width_mm]
  if (filled_mm < least_mm || filled_mm > most_mm)
    wrong(
      'length_mm',
      `a length with which all panels together fill the opening (${shown(width_mm)} wide): from half of it to a quarter more`,
      length_mm,
    )
  if (secondPanel_mm !== undefined && secondPanel_mm < length_mm)
    wrong('secondPanel_mm', `at least the length of the panel on the hinge (${shown(length_mm)})`, secondPanel_mm)
  if (secondPanel_mm !== undefined && openAngle_deg > 90) wrong('openAngle_deg', 'at most 90 for a folding leaf', openAngle_deg)
  return { hinge, opensTo, length_mm, secondPanel_mm, openAngle_rad: radians(openAngle_deg) }
}
