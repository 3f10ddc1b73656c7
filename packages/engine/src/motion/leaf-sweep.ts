import type { BoxObstacle, Door, DoorState, Obstacle } from '../model/door.ts'
import {
  boxCorners,
  gapToPolygon,
  gapToSector,
  type NearestInPlan,
  type PlanPoint,
  type PlanSector,
  type PlanShape,
} from '../space/plan-distance.ts'
import { TOUCH_MM } from '../space/touch.ts'
import { atan2, hypot2, PI, turnOf } from '../space/trigonometry.ts'

/** Where the leaf, other than its closing edge, comes near something while it opens or closes. Doorway frame, mm. */
export interface SweepGap extends NearestInPlan {
  readonly kind: 'tail' | 'sweep'
  readonly obstacle: Obstacle
  /** Height at which both begin to face each other. */
  readonly from_mm: number
}

/**
 * The gaps between the leaf and what stands around, each the smallest over the whole travel, in the order of the obstacles. Computed from where the
 * open leaf is parked: one that goes along x ran there, one that swings turned there. Half the thickness is that of the parked box, and the bulge
 * counts besides; the swing's ends are taken round, which makes gaps smaller by up to half the thickness.
 *
 * @returns undefined where the travel or the parked leaf does not say how it runs (no leaf, one that goes down, one that folds, nothing parked)
 */
export function sweepGaps(door: Door, state: DoorState): readonly SweepGap[] | undefined {
  const parked = state.obstacles.find((each): each is BoxObstacle => each.implied && each.id === 'parked-leaf' && each.shape === 'box')
  const sweeps = parked && sweepsOf(door, parked)
  if (!parked || !sweeps) return undefined
  return state.obstacles.flatMap((obstacle) => {
    const from_mm = Math.max(parked.from_mm, obstacle.from_mm)
    if (obstacle === parked || from_mm >= Math.min(parked.to_mm, obstacle.to_mm)) return []
    const shape = shapeOf(obstacle)
    const found = sweeps.flatMap((sweep) => sweep.gap(shape) ?? [])
    const [first] = found
    if (!first) return []
    const nearest = found.reduce((best, each) => (each.gap_mm < best.gap_mm ? each : best), first)
    // a wall or jamb that the survey puts where the leaf runs is its pocket
    if (obstacle.implied && nearest.gap_mm <= TOUCH_MM) return []
    return [{ kind: door.leaf?.travel === 'turning' ? 'sweep' : 'tail', obstacle, from_mm, ...nearest } as const]
  })
}

/** The gap to a thing, or undefined where the leaf only leaves it or passes it by. */
interface Sweep {
  readonly gap: (thing: PlanShape) => NearestInPlan | undefined
}

function sweepsOf({ leaf, opening }: Door, parked: BoxObstacle): readonly Sweep[] | undefined {
  const { width_mm } = opening
  switch (leaf?.travel) {
    case 'toward-zero':
    case 'toward-width':
      return [tail(parked, width_mm, leaf.travel === 'toward-zero' ? 1 : -1, leaf.bulge_mm)]
    case 'both-inward': {
      const one = tail(parked, width_mm / 2, parked.x_mm > width_mm / 2 ? 1 : -1, leaf.bulge_mm)
      return [one, mirrored(one, width_mm)]
    }
    case 'turning':
      return swings(parked, width_mm, leaf.bulge_mm)
    default:
      return undefined
  }
}

/** The other leaf runs or turns as this one does, mirrored in the middle of the opening. */
function mirrored({ gap }: Sweep, width_mm: number): Sweep {
  const over = ([x, y]: PlanPoint): PlanPoint => [width_mm - x, y]
  return {
    gap: (thing) => {
      const there =
        thing.kind === 'disc'
          ? { ...thing, middle: over(thing.middle) }
          : { ...thing, corners: thing.corners.map((corner) => over(corner)) }
      const found = gap(there)
      return found && { ...found, at: over(found.at) }
    },
  }
}

/** The last stretch of the leaf on its way: what the tail passes between shut and open. What stands wholly before that is passed by the leaf itself. */
function tail(parked: BoxObstacle, way_mm: number, toward: 1 | -1, bulge_mm: number): Sweep {
  const corners = boxCorners([parked.x_mm, parked.y_mm], parked.size_mm, turnOf(parked.yaw_rad))
  const far_mm = Math.max(...corners.map(([x]) => toward * x))
  const [yMin, yMax] = [Math.min(...corners.map(([, y]) => y)) - bulge_mm, Math.max(...corners.map(([, y]) => y)) + bulge_mm]
  const shut_mm = far_mm - way_mm
  const [a, b] = [toward * shut_mm, toward * far_mm]
  const region: readonly PlanPoint[] = [
    [a, yMin],
    [b, yMin],
    [b, yMax],
    [a, yMax],
  ]
  const reach = (thing: PlanShape) =>
    thing.kind === 'disc' ? toward * thing.middle[0] + thing.radius_mm : Math.max(...thing.corners.map(([x]) => toward * x))
  return { gap: (thing) => (reach(thing) > shut_mm + TOUCH_MM ? gapToPolygon(region, thing) : undefined) }
}

/** Closer to the hinge line than this, or than half the leaf, is the hinge gap: that is measured, not computed. */
const HINGE_PART_MM = 500
/** The hinge of the parked leaf stands at most so far from the end of the opening. */
const HINGE_OFF_MM = 400

/** One leaf as long as the opening is wide, or two of half its width; undefined for anything else, which folds. */
function swings(parked: BoxObstacle, width_mm: number, bulge_mm: number): readonly Sweep[] | undefined {
  const [c, s] = turnOf(parked.yaw_rad)
  const length_mm = parked.size_mm[0]
  const isWhole = Math.abs(length_mm - width_mm) <= 0.2 * width_mm
  if (!isWhole && Math.abs(length_mm - width_mm / 2) > 0.1 * width_mm) return undefined
  const ends = [-1, 1].map((end): PlanPoint => [parked.x_mm + (end * length_mm * c) / 2, parked.y_mm + (end * length_mm * s) / 2])
  const hinges = ends.flatMap((end, i) =>
    [0, width_mm].map((jamb_mm) => ({ end, tip: ends[1 - i] as PlanPoint, jamb_mm, off_mm: hypot2(end[0] - jamb_mm, end[1]) })),
  )
  const hinge = hinges.reduce((best, each) => (each.off_mm < best.off_mm ? each : best))
  if (hinge.off_mm > HINGE_OFF_MM) return undefined
  const shut_rad = hinge.jamb_mm === 0 ? 0 : PI
  const open_rad = atan2(hinge.tip[1] - hinge.end[1], hinge.tip[0] - hinge.end[0])
  const turned = open_rad - shut_rad
  const least_rad = turned - 2 * PI * Math.round(turned / (2 * PI)) // from -pi to pi
  // a leaf that folds back flat turned on the side on which it now stands
  const turn_rad = Math.abs(least_rad) < PI - 1e-9 ? least_rad : PI * Math.sign(parked.y_mm) * (shut_rad === 0 ? 1 : -1)
  if (turn_rad === 0) return undefined
  const half_mm = parked.size_mm[1] / 2 + bulge_mm
  const one = swing(hinge.end, length_mm, shut_rad, turn_rad, half_mm)
  return isWhole ? [one] : [one, mirrored(one, width_mm)]
}

function swing(hinge: PlanPoint, length_mm: number, shut_rad: number, turn_rad: number, half_mm: number): Sweep {
  const bar = { hinge, inner_mm: Math.min(HINGE_PART_MM, length_mm / 2), outer_mm: length_mm }
  const swept: PlanSector = { ...bar, from_rad: Math.min(shut_rad, shut_rad + turn_rad), turn_rad: Math.abs(turn_rad) }
  const shut: PlanSector = { ...bar, from_rad: shut_rad, turn_rad: 0 }
  return {
    gap: (thing) => {
      const nearest = gapToSector(swept, thing)
      const isNeared = nearest.gap_mm < gapToSector(shut, thing).gap_mm - TOUCH_MM
      return isNeared ? { ...nearest, gap_mm: Math.max(0, nearest.gap_mm - half_mm) } : undefined
    },
  }
}

function shapeOf(obstacle: Obstacle): PlanShape {
  const middle: PlanPoint = [obstacle.x_mm, obstacle.y_mm]
  if (obstacle.shape === 'post') return { kind: 'disc', middle, radius_mm: obstacle.radius_mm }
  const [along, across] = obstacle.size_mm
  return { kind: 'polygon', corners: boxCorners(middle, [along, across], turnOf(obstacle.yaw_rad)) }
}
