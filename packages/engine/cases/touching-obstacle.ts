import { footprint } from '../src/coverage/free-map.ts'
import { blockedBy, growTree } from '../src/coverage/tile-tree.ts'
import type { Obstacle } from '../src/model/door.ts'
import type { Shape } from '../src/seeing/shape.ts'
import { exactOf, placementsOf, shape, slip, tileAt, turn } from './near-degenerate-parts.ts'
import type { RandomNumbers } from './random-numbers.ts'
import { asLength, asTurn, type ExactGround, exactLength, exactTurn, overlapsExactly } from './rational-sight.ts'

/**
 * A body that touches an obstacle, but for a slip, and what the tile rule makes of a tile there.
 *
 * @returns whether the tile is claimed not free, and if so whether whole numbers agree at its corners and inside
 */
export function touchingObstacle(dice: RandomNumbers): 'not claimed' | 'claimed' | 'claimed wrongly' {
  const body = shape(dice)
  const yaw_rad = dice.chance(0.3) ? 0 : turn(dice)
  const at = { x_mm: asLength(dice.between(-3000, 3000)), y_mm: asLength(dice.between(-3000, 3000)) }
  const heights = { from_mm: asLength(dice.between(-300, 300)), to_mm: asLength(dice.between(400, 1500)) }
  const named = { id: 'thing', name: 'thing', implied: false }
  const half = () => asLength(dice.between(10, 400))
  const obstacle: Obstacle = dice.chance(0.4)
    ? { ...named, ...at, ...heights, shape: 'post', radius_mm: half() }
    : { ...named, ...at, ...heights, shape: 'box', size_mm: [2 * half(), 2 * half()], yaw_rad }
  const foot = footprint(obstacle)
  // apart along one of the directions in which they can be separated, by just what makes them touch
  const [x, y] = touchingPlace(dice, body, foot)
  const slopes = dice.chance(0.5) ? ([0, 0] as const) : ([asTurn(dice.between(-0.2, 0.2)), asTurn(dice.between(-0.2, 0.2))] as const)
  const stands = dice.chance(0.3)
    ? (dice.chance(0.5) ? heights.to_mm - body.low : heights.from_mm - body.high) + slip(dice)
    : heights.from_mm
  const z0 = asLength(stands - slopes[0] * x - slopes[1] * y)
  const tile = tileAt(dice, x, y, dice.chance(0.8) ? { x: foot.x - x, y: foot.y - y } : undefined)
  const strip = { firstRow: 0, lastRow: -1, z0, slopeX: slopes[0], slopeY: slopes[1], lowest: 0, highest: 0 }
  const tree = growTree(
    {
      standing: body,
      turn_rad: 0,
      strip,
      fields: [],
      beams: [],
      bodies: [],
      obstacles: [obstacle],
      length_mm: 0,
      floor_mm: 0,
      smallest_mm: Infinity,
      stopAtOpen: false,
      budget: { left: 1000 },
    },
    { xMin: tile.x - tile.halfX, xMax: tile.x + tile.halfX, yMin: tile.y - tile.halfY, yMax: tile.y + tile.halfY },
    [],
  )
  if (tree[0] !== blockedBy(0)) return 'not claimed'
  const lengths = (value: number) => exactLength(value)
  const exactFoot = {
    x: lengths(foot.x),
    y: lengths(foot.y),
    halfA: lengths(foot.halfA),
    halfB: lengths(foot.halfB),
    cosYaw: exactTurn(foot.cosYaw),
    sinYaw: exactTurn(foot.sinYaw),
    radius: lengths(foot.radius),
    from: lengths(foot.from),
    to: lengths(foot.to),
  }
  const ground: ExactGround = { z0: lengths(z0), slopeX: exactTurn(slopes[0]), slopeY: exactTurn(slopes[1]) }
  const overlap = ([px, py]: readonly [number, number]) => overlapsExactly(exactOf(body), exactFoot, ground, lengths(px), lengths(py))
  return placementsOf(tile, dice).every(overlap) ? 'claimed' : 'claimed wrongly'
}

function touchingPlace(dice: RandomNumbers, body: Shape, foot: ReturnType<typeof footprint>): readonly [number, number] {
  const by = slip(dice)
  if (body.round && foot.radius > 0) {
    const angle = dice.between(0, 2 * Math.PI)
    const away = body.halfA + foot.radius + by
    return [asLength(foot.x + away * Math.cos(angle)), asLength(foot.y + away * Math.sin(angle))]
  }
  const own = body.round ? foot : body
  const other = body.round ? body : foot
  const c = Math.abs(body.cosYaw * foot.cosYaw + body.sinYaw * foot.sinYaw)
  const s = Math.abs(body.sinYaw * foot.cosYaw - body.cosYaw * foot.sinYaw)
  const radius = body.round ? body.halfA : foot.radius
  const away = own.halfA + (radius > 0 ? radius : other.halfA * c + other.halfB * s) + by
  const aside = dice.between(-own.halfB, own.halfB) * dice.pick([1, 0.1])
  return [asLength(foot.x + away * own.cosYaw - aside * own.sinYaw), asLength(foot.y + away * own.sinYaw + aside * own.cosYaw)]
}
