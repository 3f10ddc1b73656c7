import type { Beam, Field } from './plain.ts'
import type { backgroundsOf, Setting } from './sights.ts'
import type { Placed as PlacedSolid, Stance } from './stances.ts'
import { entryOf, failedRules, floorAt, type Placed, standingAt } from './worst-case.ts'

interface Around {
  readonly setting: Setting
  readonly backgrounds: ReturnType<typeof backgroundsOf>
}

/** Whether a field sees whoever stands at one place across a lane, by where its middle is along y, in the door as written; `spend` is told of each beam that is asked. */
export function seesAlong(
  field: Field,
  { solids }: Stance,
  x: number,
  around: Around,
  spend: (beams: number) => void,
): (y: number) => boolean {
  const { floor } = around.setting.state
  const wide = Math.max(...solids.map((solid) => Math.sqrt(solid.x * solid.x + solid.y * solid.y) + radiusOf(solid)))
  const high = Math.max(...solids.map((solid) => solid.from + heightOf(solid)))
  const heights = floor.profile.map(([, z]) => z)
  const steep = Math.abs(floor.slope) * (Math.abs(x) + 1)
  const zs = [Math.min(...heights) - steep, Math.max(...heights) + steep + high] as const
  const planes = field.sensor.planes
    .filter(({ id }) => field.planes.includes(id))
    .map(({ beams }) => beams.map((beam) => ({ beam, ys: besideOf(beam, [x - wide, x + wide], zs, wide) })))
  return (y) => {
    const middle = floorAt(floor, x, y)
    const placed = solids.map(
      (solid): Placed => ({
        standing: standingOfSolid(solid),
        x: x + solid.x,
        y: y + solid.y,
        bottom: middle + solid.from,
        reflectance: solid.reflectance,
      }),
    )
    return planes.some((beams) => {
      let neighbours = 0
      return beams.some(({ beam, ys: [from, to] }) => {
        if (y < from || y > to) neighbours = 0
        else {
          spend(2 * placed.length)
          neighbours = sees(beam, field, placed, around) ? neighbours + 1 : 0
        }
        return neighbours >= field.cluster
      })
    })
  }
}

/** A segment is interrupted by any part; another beam sees the part that it enters first, at its full size, or none. */
function sees(beam: Beam, field: Field, placed: readonly Placed[], around: Around): boolean {
  const isSeen = (body: Placed) => failedRules(beam, field, body, around).size === 0
  if (field.sensor.segments) return placed.some(isSeen)
  let first: Placed | undefined
  let at = Infinity
  for (const body of placed) {
    const entry = entryOf(beam, body, 0)
    if (entry !== undefined && entry.leaves > 0 && entry.at < at) [first, at] = [body, entry.at]
  }
  return first !== undefined && isSeen(first)
}

function standingOfSolid(solid: PlacedSolid) {
  if (solid.shape === 'cylinder') return standingAt({ shape: 'cylinder', radius: solid.radius, height: solid.height }, 0)
  return standingAt({ shape: 'box', size: solid.size, yaw_deg: [0, 0] }, solid.turn_deg)
}

function radiusOf(solid: PlacedSolid): number {
  if (solid.shape === 'cylinder') return solid.radius
  const [a, b] = solid.size
  return Math.sqrt(a * a + b * b) / 2
}

function heightOf(solid: PlacedSolid): number {
  return solid.shape === 'cylinder' ? solid.height : solid.size[2]
}

/** Places along y at which the beam can meet anything of a body within these limits of x and z, so wide along y. */
function besideOf(
  { from, along, length }: Beam,
  xs: readonly [number, number],
  zs: readonly [number, number],
  wide: number,
): readonly [number, number] {
  let [t0, t1] = [0, length]
  for (const [k, [low, high]] of [
    [0, xs],
    [2, zs],
  ] as const) {
    const [start, speed] = [from[k], along[k]]
    if (Math.abs(speed) < 1e-12) {
      if (start < low || start > high) return [1, 0]
      continue
    }
    const [a, b] = [(low - start) / speed, (high - start) / speed]
    t0 = Math.max(t0, Math.min(a, b))
    t1 = Math.min(t1, Math.max(a, b))
  }
  if (t0 > t1) return [1, 0]
  const ends = [t0, t1].map((t) => (along[1] === 0 ? from[1] : from[1] + along[1] * t))
  return [Math.min(...ends) - wide, Math.max(...ends) + wide]
}
