import type { Door, DoorState, Leaf, Obstacle } from '../model/door.ts'
import type { Field } from '../model/sensor.ts'
import type { Beams } from '../seeing/beams.ts'
import type { Windows } from '../seeing/windows.ts'
import { floorPieces } from '../space/floor.ts'
import { atan2 } from '../space/trigonometry.ts'
import { highestFloor } from './leaf-in-field.ts'
import { NO_TOLERANCES } from './off.ts'
import type { CountedField } from './scene.ts'
import { type TolerantField, tolerantField } from './tile-scene.ts'

/** What is cut out of a field is wider by this than the window that follows the leaf, so that rounding cannot make a sight. */
const SPARE_MM = 1e-6
/** Farther than anything of a doorway. */
const FAR_MM = 1e6

/** The door file says that the leaf on its way changes what the field sees, or when it acts. */
export function leafChanges({ blanking, leafBlanking, leafHides }: Field): boolean {
  return blanking.length > 0 || leafBlanking !== undefined || leafHides === true
}

/**
 * What the field sees with the leaf where its edge has this way still to go, and wherever it has more: a leaf that has come farther fills all that it
 * filled before, so that one sight speaks for the whole range above. The leaf hides what lies behind it, thickness and bulge included, as an obstacle does
 * that was not there when the background was learned; a beam that meets it sees nothing behind. What is entered within the window that follows the leaf
 * does not count. Windows of the edge (`blanking`) are not in here: they say when the field acts, not what it sees.
 */
export function sightBehindLeaf(
  door: Door & { readonly leaf: Leaf },
  state: DoorState,
  counted: CountedField,
  way_mm: number,
): TolerantField {
  const { leaf, opening } = door
  return sightBehindSolids(door, state, counted, (beside_mm, before_mm) => {
    const solids = leafBoxes(leaf, opening, state, way_mm, beside_mm, before_mm)
    if (beside_mm === 0) return solids
    const far: Range = [-FAR_MM, FAR_MM]
    return solids.map(({ x, y, z }) => (leaf.travel === 'down' ? { x: far, y, z: [z[0], FAR_MM] } : { x, y, z: far }))
  })
}

/** @param solids what the leaf fills, and with a distance beside and before it all that lies so near to it */
export function sightBehindSolids(
  door: Door,
  state: DoorState,
  counted: CountedField,
  solids: (beside_mm: number, before_mm: number) => readonly LeafSolid[],
): TolerantField {
  const obstacles = solids(0, 0)
    .filter(({ x, z }) => x[0] < x[1] && z[0] < z[1])
    .map(asObstacle)
  const field = tolerantField(door, { ...state, obstacles: [...state.obstacles, ...obstacles] }, counted, NO_TOLERANCES)
  const { leafBlanking } = counted.field
  if (leafBlanking === undefined || counted.sensor.kind === 'segment') return field
  const { beside_mm, before_mm } = leafBlanking
  const ignored = solids(beside_mm + SPARE_MM, before_mm + SPARE_MM)
  const { beams } = field.nominal.sight
  const without = (windows: Windows) => ignored.reduce((left, solid) => windowsWithout(left, beams, solid), windows)
  return { ...field, windows: without(field.windows), nominal: { ...field.nominal, windows: without(field.nominal.windows) } }
}

type Range = readonly [low: number, high: number]
/** An upright box of the leaf, in the doorway frame, or in that of a panel: from a point along a unit vector. */
export interface LeafSolid {
  readonly frame?: { readonly x_mm: number; readonly y_mm: number; readonly alongX: number; readonly alongY: number }
  readonly x: Range
  readonly y: Range
  readonly z: Range
}

/** What the leaf fills of the opening, or all that lies so near to it. None for a leaf that turns: who asks about that brings its own. */
function leafBoxes(
  { travel, thickness_mm, bulge_mm }: Leaf,
  { width_mm, height_mm }: Door['opening'],
  state: DoorState,
  way_mm: number,
  beside_mm: number,
  before_mm: number,
): readonly LeafSolid[] {
  const leaf_mm = thickness_mm / 2 + bulge_mm
  const y: Range = [-leaf_mm - beside_mm, leaf_mm + beside_mm]
  const edge_mm = way_mm - before_mm
  const tall: Range = [-FAR_MM, height_mm]
  switch (travel) {
    case 'down':
      return [{ x: [0, width_mm], y, z: [highestFloor(floorPieces(state.floor), width_mm, leaf_mm) + edge_mm, height_mm] }]
    case 'toward-zero':
      return [{ x: [edge_mm, width_mm], y, z: tall }]
    case 'toward-width':
      return [{ x: [0, width_mm - edge_mm], y, z: tall }]
    case 'both-inward':
      return [
        { x: [width_mm / 2 + edge_mm, width_mm], y, z: tall },
        { x: [0, width_mm / 2 - edge_mm], y, z: tall },
      ]
    case 'turning':
      return []
  }
}

const DOORWAY = { x_mm: 0, y_mm: 0, alongX: 1, alongY: 0 } as const

function asObstacle({ frame = DOORWAY, x, y, z }: LeafSolid, i: number): Obstacle {
  const { x_mm, y_mm, alongX, alongY } = frame
  const [along_mm, across_mm] = [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2]
  return {
    id: `closing-leaf-${i}`,
    implied: true,
    name: 'closing leaf',
    shape: 'box',
    x_mm: x_mm + along_mm * alongX - across_mm * alongY,
    y_mm: y_mm + along_mm * alongY + across_mm * alongX,
    size_mm: [x[1] - x[0], y[1] - y[0]],
    yaw_rad: atan2(alongY, alongX),
    from_mm: z[0],
    to_mm: z[1],
  }
}

/** The stretches of each beam that lie outside of a box. */
function windowsWithout(windows: Windows, beams: Beams, { frame = DOORWAY, x, y, z }: LeafSolid): Windows {
  const { x_mm, y_mm, alongX, alongY } = frame
  const first = new Int32Array(beams.count + 1)
  const from: number[] = []
  const to: number[] = []
  const keep = (a: number, b: number) => {
    if (!(a <= b)) return
    from.push(a)
    to.push(b)
  }
  for (let i = 0; i < beams.count; i++) {
    first[i] = from.length
    const [fromX, fromY] = [(beams.originX[i] as number) - x_mm, (beams.originY[i] as number) - y_mm]
    const [dx, dy] = [beams.directionX[i] as number, beams.directionY[i] as number]
    const axes = [
      within(fromX * alongX + fromY * alongY, dx * alongX + dy * alongY, x),
      within(fromY * alongX - fromX * alongY, dy * alongX - dx * alongY, y),
      within(beams.originZ[i] as number, beams.directionZ[i] as number, z),
    ]
    const enter = Math.max(...axes.map(([a]) => a))
    const leave = Math.min(...axes.map(([, b]) => b))
    for (let w = windows.first[i] as number; w < (windows.first[i + 1] as number); w++) {
      const [a, b] = [windows.from[w] as number, windows.to[w] as number]
      if (enter > leave || enter > b || leave < a) keep(a, b)
      else {
        if (enter > a) keep(a, enter)
        if (leave < b) keep(leave, b)
      }
    }
  }
  first[beams.count] = from.length
  return { first, from: Float64Array.from(from), to: Float64Array.from(to) }
}

/** Where along a line the coordinate lies in the range; a line that keeps it out of it is nowhere inside. */
function within(origin: number, direction: number, [low, high]: Range): Range {
  if (direction === 0) return low <= origin && origin <= high ? [-Infinity, Infinity] : [Infinity, -Infinity]
  const a = (low - origin) / direction
  const b = (high - origin) / direction
  return direction > 0 ? [a, b] : [b, a]
}
