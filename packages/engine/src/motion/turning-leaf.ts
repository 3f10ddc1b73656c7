import type { Door, HingedLeaf } from '../model/door.ts'
import type { PlanPoint } from '../space/plan-distance.ts'
import { asin, atan2, cos, hypot2, sin } from '../space/trigonometry.ts'

/**
 * Where a leaf that turns is in the plan. Its way is that of its edge: the far end of the panel on the hinge, along its arc from shut (0), in mm. So
 * speeds and accelerations of the drive are those of this edge, and the angle is the way divided by the panel's length.
 */
export interface TurningLeaf {
  /** Fully open. */
  readonly way_mm: number
  /** From the hinge line to the edge. */
  readonly arm_mm: number
  /** One, or two that mirror each other and turn together. */
  readonly swings: readonly Swing[]
  /** No point of it moves faster than so many times its edge. */
  readonly ratio: number
}
export interface Swing {
  /** On y = 0. */
  readonly hingeX_mm: number
  /** Along x, from the hinge to where the shut leaf ends. */
  readonly toward: 1 | -1
  /** Along y, to where it opens. */
  readonly side: 1 | -1
  readonly arm_mm: number
  /** Of the panel that hangs on the first one; undefined for a leaf that swings as one. */
  readonly second_mm: number | undefined
  /** To either side of a panel's middle, bulge included. */
  readonly half_mm: number
}

/** A panel in the plan: a bar from its start along a unit vector, and as much to either side. */
export interface Slab {
  readonly x_mm: number
  readonly y_mm: number
  readonly alongX: number
  readonly alongY: number
  readonly length_mm: number
  readonly half_mm: number
}

/** Undefined where the leaf does not turn, or nobody said how it is hung. */
export function turningLeaf({ leaf, opening }: Pick<Door, 'leaf' | 'opening'>): TurningLeaf | undefined {
  if (leaf?.travel !== 'turning' || leaf.hinged === undefined) return undefined
  const { hinge, opensTo, length_mm, secondPanel_mm, openAngle_rad } = leaf.hinged
  const half_mm = leaf.thickness_mm / 2 + leaf.bulge_mm
  const side = opensTo === 'a' ? 1 : -1
  const one = { side, arm_mm: length_mm, second_mm: secondPanel_mm, half_mm } as const
  const swings: Swing[] = []
  if (hinge !== 'at-width') swings.push({ ...one, hingeX_mm: 0, toward: 1 })
  if (hinge !== 'at-zero') swings.push({ ...one, hingeX_mm: opening.width_mm, toward: -1 })
  return { way_mm: openAngle_rad * length_mm, arm_mm: length_mm, swings, ratio: ratioOf(leaf.hinged, half_mm) }
}

/**
 * A corner of the leaf is hardly farther from the hinge than its end. Of two panels, the second at least as long as the first: the guided end goes at
 * most twice as fast as the joint, points between lie between, and the second panel turns no faster than the first.
 */
function ratioOf({ length_mm, secondPanel_mm }: HingedLeaf, half_mm: number): number {
  return secondPanel_mm === undefined ? hypot2(length_mm, half_mm) / length_mm : 2 + half_mm / length_mm
}

/** Where its panels stand with so much of the way still to go. */
export function slabsAt(swing: Swing, way_mm: number): readonly Slab[] {
  const { hingeX_mm, toward, side, arm_mm, second_mm, half_mm } = swing
  const angle_rad = way_mm / arm_mm
  const [c, s] = [cos(angle_rad), sin(angle_rad)]
  const first = { x_mm: hingeX_mm, y_mm: 0, alongX: toward * c, alongY: side * s, length_mm: arm_mm, half_mm }
  if (second_mm === undefined) return [first]
  const back = (arm_mm / second_mm) * s
  const forth = Math.sqrt(Math.max(0, 1 - back * back))
  const joint = { x_mm: hingeX_mm + toward * arm_mm * c, y_mm: side * arm_mm * s }
  return [first, { ...joint, alongX: toward * forth, alongY: -side * back, length_mm: second_mm, half_mm }]
}

/** Every panel of every leaf: its corners, its middle, and its yaw. */
export function leafCorners(
  { swings }: TurningLeaf,
  way_mm: number,
): readonly { readonly corners: readonly PlanPoint[]; readonly middle: PlanPoint; readonly length_mm: number; readonly yaw_rad: number }[] {
  return swings.flatMap((swing) =>
    slabsAt(swing, way_mm).map((slab) => {
      const { x_mm, y_mm, alongX, alongY, length_mm } = slab
      const middle: PlanPoint = [x_mm + (alongX * length_mm) / 2, y_mm + (alongY * length_mm) / 2]
      return { corners: cornersOf(slab), middle, length_mm, yaw_rad: atan2(alongY, alongX) }
    }),
  )
}

export function cornersOf({ x_mm, y_mm, alongX, alongY, length_mm, half_mm }: Slab): readonly PlanPoint[] {
  const [nx, ny] = [-alongY * half_mm, alongX * half_mm]
  const [endX, endY] = [x_mm + alongX * length_mm, y_mm + alongY * length_mm]
  return [
    [x_mm + nx, y_mm + ny],
    [x_mm - nx, y_mm - ny],
    [endX - nx, endY - ny],
    [endX + nx, endY + ny],
  ]
}

/** How fast a point of one of the panels moves, along x and y, while the edge goes toward shut at a speed. */
export function velocityOf(
  swing: Swing,
  panel: number,
  way_mm: number,
  closing_mm_per_s: number,
  [x, y]: PlanPoint,
): readonly [x_mm_per_s: number, y_mm_per_s: number] {
  const { hingeX_mm, toward, side, arm_mm, second_mm } = swing
  const angle_rad = way_mm / arm_mm
  // counter-clockwise while the angle grows, seen from above, if the leaf reaches to +x and opens to +y
  const turn_per_s = (-closing_mm_per_s / arm_mm) * toward * side
  if (panel === 0 || second_mm === undefined) return [-turn_per_s * y, turn_per_s * (x - hingeX_mm)]
  const [c, s] = [cos(angle_rad), sin(angle_rad)]
  const edge: PlanPoint = [hingeX_mm + toward * arm_mm * c, side * arm_mm * s]
  const back = (arm_mm / second_mm) * s
  const turns = second_mm === arm_mm ? 1 : (arm_mm * c) / (second_mm * cos(asin(back)))
  const edgeX = -turn_per_s * edge[1]
  const edgeY = turn_per_s * (edge[0] - hingeX_mm)
  return [edgeX + turns * turn_per_s * (y - edge[1]), edgeY - turns * turn_per_s * (x - edge[0])]
}

/** How far to its side the leaf reaches on its way between shut and so far open. */
export function reach_mm({ arm_mm, half_mm }: Swing, way_mm: number): number {
  const angle_rad = way_mm / arm_mm
  return (angle_rad >= QUARTER_RAD ? arm_mm : arm_mm * sin(angle_rad)) + half_mm
}
const QUARTER_RAD = asin(1)

/**
 * In J, of a mass in kg that is spread evenly over all panels, with so much of the way still to go and the edge at a speed. A panel is a uniform bar, whose
 * energy is `m / 6 (a^2 + a b + b^2)` with a and b the velocities of its ends; of one on a hinge that is `I w^2 / 2` with `I = m L^2 / 3`.
 */
export function turningEnergy_J({ swings }: TurningLeaf, mass_kg: number, way_mm: number, edge_mm_per_s: number): number {
  const [swing] = swings as readonly [Swing]
  const slabs = slabsAt(swing, way_mm)
  const whole_mm = slabs.reduce((sum, { length_mm }) => sum + length_mm, 0)
  return slabs.reduce((sum, { x_mm, y_mm, alongX, alongY, length_mm }, panel) => {
    const [ax, ay] = velocityOf(swing, panel, way_mm, edge_mm_per_s, [x_mm, y_mm])
    const [bx, by] = velocityOf(swing, panel, way_mm, edge_mm_per_s, [x_mm + alongX * length_mm, y_mm + alongY * length_mm])
    const squares = ax * ax + ay * ay + ax * bx + ay * by + bx * bx + by * by
    return sum + ((mass_kg * length_mm) / whole_mm) * (squares / 6e6)
  }, 0)
}
