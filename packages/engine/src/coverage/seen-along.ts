import { partsOf } from '../model/body.ts'
import type { Door, DoorState } from '../model/door.ts'
import { shapeOf } from '../seeing/shape.ts'
import { type FloorPieces, floorPieces } from '../space/floor.ts'
import type { Strip } from './hits.kernel.ts'
import { NO_TOLERANCES } from './off.ts'
import { newSightTable, partsAlong, type SightTable } from './parts-along.ts'
import type { CountedField, Stance } from './scene.ts'
import { seenOnStrip, seenTiles } from './seen-on-strip.ts'
import { joined, type Stretch } from './stretches.ts'
import { type TolerantField, tileBeams, tileBody, tolerantField } from './tile-scene.ts'
import { growTree, type TileSight, type TileTree } from './tile-tree.ts'

/** The ends of a stretch are found to this; what is not proved counts as unseen. */
export const END_MM = 1

/** Where along y one field sees a body in one stance whose middle keeps one x. */
export type Along = (stance: Stance) => (x_mm: number, yMin_mm: number, yMax_mm: number) => readonly Stretch[]

/**
 * Prepares one field, so that it can be asked where along y it sees a body whose middle keeps one x: the tile rule on tiles without width, so that
 * every place between the ends of a stretch is proved to be seen. Obstacles hide what lies behind them and do not stop the body.
 *
 * @param sight another sight of the same field, as behind the leaf
 */
export function seenAlong(door: Door, state: DoorState, counted: CountedField, sight?: TolerantField): Along {
  const field = sight ?? tolerantField(door, state, counted, NO_TOLERANCES)
  const floor = floorPieces(state.floor)
  const known = new Map<Stance['posture'], { readonly stance: Stance; readonly along: ReturnType<Along> }[]>()
  const prepare: Along = (stance) => {
    const { body, posture, yaw_rad } = stance
    if (partsOf(posture)) {
      const along = partsAlong(field, stance, END_MM)
      return (x_mm, yMin_mm, yMax_mm) => {
        const questions = { left: 4e6 }
        const sights = newSightTable()
        return seenIn(
          stripsAlong(floor, yMin_mm, yMax_mm).map(({ strip, from_mm, to_mm }) => ({
            tree: along(strip, x_mm, from_mm, to_mm, questions, sights),
            from_mm,
            to_mm,
          })),
        )
      }
    }
    const shape = shapeOf(posture, yaw_rad, body.reflectance, counted.sensor.spotRadius_mm)
    const common = {
      standing: shapeOf(posture, yaw_rad, 1, 0),
      turn_rad: 0,
      fields: [field],
      beams: [tileBeams(field, shape, NO_TOLERANCES, 0)],
      obstacles: [],
      length_mm: 0,
      floor_mm: 0,
      smallest_mm: END_MM,
      stopAtOpen: false,
    }
    return (x_mm, yMin_mm, yMax_mm) => {
      const budget = { left: 1e6 }
      return joined(
        stripsAlong(floor, yMin_mm, yMax_mm).flatMap(({ strip, from_mm, to_mm }) =>
          seenOnStrip({ ...common, strip, bodies: [tileBody(shape, strip)], budget }, x_mm, from_mm, to_mm),
        ),
      )
    }
  }
  return (stance) => {
    // the same posture of the same body at the same yaw: who falls or follows is a posture of its own under the same id
    const others = known.get(stance.posture) ?? []
    const same = others.find((other) => other.stance.body === stance.body && other.stance.yaw_rad === stance.yaw_rad)
    const along = same?.along ?? prepare(stance)
    if (!same) known.set(stance.posture, [...others, { stance, along }])
    return along
  }
}

/** Sights that the trees of a field name: of bodies of one part, and of several. */
export interface SightsAlong {
  readonly ofOne: TileSight[]
  readonly ofParts: SightTable
}

/** An argument like that of `seenAlong`, in a form that others can follow; ends may differ by a millimetre for a body of one part. A tree for each straight piece of the floor, in rising y; its sights go to `sights`. */
export function treesAlong(door: Door, state: DoorState, counted: CountedField, sight?: TolerantField) {
  const field = sight ?? tolerantField(door, state, counted, NO_TOLERANCES)
  const floor = floorPieces(state.floor)
  return (stance: Stance) => {
    if (partsOf(stance.posture) === undefined) {
      const trees = treesOn(field, floor, stance, { left: 1e6 })
      return (x_mm: number, yMin_mm: number, yMax_mm: number, { ofOne }: SightsAlong) => trees(x_mm, yMin_mm, yMax_mm, ofOne)
    }
    const along = partsAlong(field, stance, END_MM)
    return (x_mm: number, yMin_mm: number, yMax_mm: number, { ofParts }: SightsAlong): readonly TreeAlong[] => {
      const questions = { left: 4e6 }
      return stripsAlong(floor, yMin_mm, yMax_mm).map(({ strip, from_mm, to_mm }) => ({
        tree: along(strip, x_mm, from_mm, to_mm, questions, ofParts),
        from_mm,
        to_mm,
      }))
    }
  }
}

export interface TreeAlong {
  readonly tree: TileTree
  readonly from_mm: number
  readonly to_mm: number
}

function treesOn(field: TolerantField, floor: FloorPieces, { body, posture, yaw_rad }: Stance, budget: { left: number }) {
  const shape = shapeOf(posture, yaw_rad, body.reflectance, field.counted.sensor.spotRadius_mm)
  const beams = [tileBeams(field, shape, NO_TOLERANCES, 0)]
  return (x_mm: number, yMin_mm: number, yMax_mm: number, sights: TileSight[]): readonly TreeAlong[] =>
    stripsAlong(floor, yMin_mm, yMax_mm).map(({ strip, from_mm, to_mm }) => {
      const tile = { xMin: x_mm, xMax: x_mm, yMin: from_mm, yMax: to_mm }
      const problem = {
        standing: shapeOf(posture, yaw_rad, 1, 0),
        turn_rad: 0,
        strip,
        fields: [field],
        beams,
        bodies: [tileBody(shape, strip)],
        obstacles: [],
        length_mm: 0,
        floor_mm: 0,
        smallest_mm: END_MM,
        stopAtOpen: false,
        budget,
      }
      return { tree: growTree(problem, tile, sights), from_mm, to_mm }
    })
}

/** Where these trees say that the body is seen. */
export function seenIn(trees: readonly TreeAlong[]): readonly Stretch[] {
  return joined(trees.flatMap(({ tree, from_mm, to_mm }) => seenTiles(tree, from_mm, to_mm)))
}

function stripsAlong(
  floor: FloorPieces,
  yMin_mm: number,
  yMax_mm: number,
): readonly { readonly strip: Strip; readonly from_mm: number; readonly to_mm: number }[] {
  return Array.from({ length: floor.count }, (_, piece) => {
    const slopeY = floor.slope[piece] as number
    const z0 = (floor.z[piece] as number) - (floor.y[piece] as number) * slopeY
    const strip = { firstRow: 0, lastRow: -1, z0, slopeX: floor.slopeX, slopeY, lowest: 0, highest: 0 }
    return { strip, from_mm: Math.max(yMin_mm, floor.from[piece] as number), to_mm: Math.min(yMax_mm, floor.from[piece + 1] ?? Infinity) }
  }).filter(({ from_mm, to_mm }) => from_mm < to_mm)
}
