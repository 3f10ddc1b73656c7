import type { Shape } from '../src/seeing/shape.ts'
import type { RandomNumbers } from './random-numbers.ts'
import { asLength, asTurn, type ExactBody, exactLength, exactTurn } from './rational-sight.ts'

export type Vector = readonly [number, number, number]

/** Nothing, a few units of the last place, or up to 1e-4 mm, either way. */
export function slip(dice: RandomNumbers): number {
  if (dice.chance(0.2)) return 0
  const size = dice.chance(0.3) ? dice.whole(1, 8) / 2 ** 40 : 10 ** dice.between(-12, -4)
  return dice.chance(0.5) ? size : -size
}

export function direction(dice: RandomNumbers): Vector {
  const kind = dice.whole(0, 9)
  if (kind < 2) return [0, 0, -1]
  if (kind === 2)
    return dice.pick<Vector>([
      [1, 0, 0],
      [0, -1, 0],
      [0, 0, 1],
    ])
  const tiny = () => (dice.chance(0.15) ? 10 ** dice.between(-12, -3) : 1)
  const raw = [dice.between(-1, 1) * tiny(), dice.between(-1, 1) * tiny(), dice.between(-1, 0.3) * tiny()] as const
  const length = Math.sqrt(raw[0] * raw[0] + raw[1] * raw[1] + raw[2] * raw[2])
  return length > 0 ? [asTurn(raw[0] / length), asTurn(raw[1] / length), asTurn(raw[2] / length)] : [0, 0, -1]
}

/** A turn whose sine and cosine are both whole multiples of what `exactTurn` takes. */
export function turn(dice: RandomNumbers): number {
  if (dice.chance(0.4)) return 0
  return dice.whole(0, 3) * (Math.PI / 2) + dice.between(0.05, 1.5)
}

export function shape(dice: RandomNumbers): Shape {
  const round = dice.chance(0.3)
  const yaw = round ? 0 : turn(dice)
  const halfA = asLength(dice.between(20, 500))
  const spot = dice.pick([0, 0, asLength(4.3)])
  return {
    round,
    halfA,
    halfB: round ? halfA : asLength(dice.between(20, 500)),
    low: spot,
    high: asLength(dice.between(30, 1500)),
    cosYaw: yaw === 0 ? 1 : asTurn(Math.cos(yaw)),
    sinYaw: yaw === 0 ? 0 : asTurn(Math.sin(yaw)),
    reflectance: asTurn(dice.between(0.02, 0.9)),
  }
}

export interface Tile {
  readonly x: number
  readonly y: number
  readonly halfX: number
  readonly halfY: number
}

/** A tile with the placement at one of its corners, or that placement alone. */
export function tileAt(dice: RandomNumbers, x: number, y: number, toward = { x: dice.between(-1, 1), y: dice.between(-1, 1) }): Tile {
  const half = () => asLength(dice.pick([0, 2 ** -20, 1e-3, 1, dice.between(1, 60)]))
  const [halfX, halfY] = [half(), half()]
  return { x: asLength(x + (toward.x > 0 ? halfX : -halfX)), y: asLength(y + (toward.y > 0 ? halfY : -halfY)), halfX, halfY }
}

export function placementsOf({ x, y, halfX, halfY }: Tile, dice: RandomNumbers): readonly (readonly [number, number])[] {
  const inside = [asLength(x + dice.between(-halfX, halfX)), asLength(y + dice.between(-halfY, halfY))] as const
  return [[x - halfX, y - halfY], [x + halfX, y - halfY], [x - halfX, y + halfY], [x + halfX, y + halfY], inside]
}

/** The shape in whole numbers. */
export const exactOf = (body: Shape): ExactBody => ({
  round: body.round,
  halfA: exactLength(body.halfA),
  halfB: exactLength(body.halfB),
  low: exactLength(body.low),
  high: exactLength(body.high),
  cosYaw: exactTurn(body.cosYaw),
  sinYaw: exactTurn(body.sinYaw),
  reflectance: exactTurn(body.reflectance),
})
