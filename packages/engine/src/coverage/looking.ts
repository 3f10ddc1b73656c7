import { isOfParts, partsOf } from '../model/body.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'
import { beamSees } from '../seeing/sees.ts'
import { type Shape, shapeOf, shapeOfPart } from '../seeing/shape.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { isTaken } from './free-map.ts'
import { offsetOf } from './parts-along.ts'
import { type CountedField, countedFields, fieldName, fieldSight, type Stance, stancesOf, stancesOfBodies } from './scene.ts'
import type { FieldSight } from './seen-map.ts'
import { type RuleFailed, ruleFailed } from './worst-case.ts'

/** What becomes of one test body at one place. Doorway frame, mm. */
export interface Look {
  /** Whether the body has room there; where it has none, nothing is to be seen. */
  readonly free: boolean
  readonly floor_mm: number
  readonly fields: readonly FieldLook[]
}

export interface FieldLook {
  /** `<sensor>/<field>` */
  readonly field: string
  /** As many neighbouring beams of one plane as the field wants. */
  readonly sees: boolean
  /** The beams that see the body, from the sensor to where they enter it. */
  readonly rays: readonly { readonly from_mm: Point; readonly to_mm: Point }[]
  readonly largestCluster: number
  readonly clusterBeams: number
  /** Of the other beams that would meet the body: how many fail which rule first. */
  readonly failed: Readonly<Partial<Record<RuleFailed, number>>>
}
type Point = readonly [x_mm: number, y_mm: number, z_mm: number]

/**
 * Prepares one zone in one state, so that a body can be moved through it and asked for at each place at once.
 *
 * @returns the stances that the zone asks for, and a function from a stance and the middle of its footprint to what sees it there
 */
export function looker(
  door: Door,
  zone: Zone,
  state: DoorState,
): { readonly stances: readonly Stance[]; readonly look: (stance: Stance, x_mm: number, y_mm: number) => Look } {
  const counted = countedFields(door, zone).map((field) => ({ field, sight: fieldSight(door, state, field) }))
  const floor = floorPieces(state.floor)
  return {
    stances: [...stancesOf(door, zone).stances, ...stancesOfParts(door, zone)],
    look(stance, x_mm, y_mm) {
      const { posture, yaw_rad, body } = stance
      if (partsOf(posture)) return lookOfParts({ stance, state, floor, counted }, x_mm, y_mm)
      const whole = shapeOf(posture, yaw_rad, body.reflectance, 0)
      return {
        free: !isTaken(whole, state.obstacles, floor, x_mm, y_mm),
        floor_mm: floorHeight(floor, x_mm, y_mm),
        fields: counted.map(({ field, sight }) => {
          const whole = { shape: shapeOf(posture, yaw_rad, body.reflectance, field.sensor.spotRadius_mm), x_mm, y_mm }
          return fieldLook(fieldName(field), sight, () => whole)
        }),
      }
    },
  }
}

/** Bodies of several parts that only lanes judge: they can be moved through a zone all the same, to see what sees them. */
function stancesOfParts(door: Door, zone: Zone): readonly Stance[] {
  const bodies = door.bodies.filter(isOfParts).map(({ id }) => id)
  return stancesOfBodies(door, bodies, `zone ${zone.id}`).stances.filter(({ posture }) => partsOf(posture) !== undefined)
}

interface PartsAsked {
  readonly stance: Stance
  readonly state: DoorState
  readonly floor: ReturnType<typeof floorPieces>
  readonly counted: readonly { readonly field: CountedField; readonly sight: FieldSight }[]
}

/** The part that a beam enters first has to be seen, and hides the others with its full size (docs/method.md, "Bodies of several parts"). */
function lookOfParts({ stance, state, floor, counted }: PartsAsked, x_mm: number, y_mm: number): Look {
  const floor_mm = floorHeight(floor, x_mm, y_mm)
  const placed = (spotRadius_mm: number) =>
    (partsOf(stance.posture) ?? []).map((part) => {
      const [x, y] = offsetOf(part, stance.yaw_rad)
      // the floor that carries it is the one under the middle of the body
      const up_mm = floor_mm - floorHeight(floor, x_mm + x, y_mm + y)
      const shape = shapeOfPart(part, stance.yaw_rad, spotRadius_mm)
      return { shape: { ...shape, low: shape.low + up_mm, high: shape.high + up_mm }, x_mm: x_mm + x, y_mm: y_mm + y }
    })
  const whole = placed(0)
  return {
    free: !whole.some((part) => isTaken(part.shape, state.obstacles, floor, part.x_mm, part.y_mm)),
    floor_mm,
    fields: counted.map(({ field, sight }) => {
      const shrunk = placed(field.sensor.spotRadius_mm)
      return fieldLook(fieldName(field), sight, (beam, scratch) => shrunk[firstMet(sight.sight, beam, whole, scratch) ?? -1])
    }),
  }
}

type PlacedPart = { readonly shape: Shape; readonly x_mm: number; readonly y_mm: number }

/** Which part a beam enters first, at its full size; undefined where it meets none ahead of it. */
function firstMet(sight: FieldSight['sight'], i: number, whole: readonly PlacedPart[], scratch: Float64Array): number | undefined {
  let first: number | undefined
  let nearest = Infinity
  for (const [index, { shape, x_mm, y_mm }] of whole.entries()) {
    if (ruleFailed(sight, i, shape, x_mm, y_mm) === 'm') continue
    beamSees(sight, i, shape, x_mm, y_mm, scratch)
    const [entry = Infinity, , exit = 0] = scratch
    if (exit <= 0 || entry >= nearest) continue
    nearest = entry
    first = index
  }
  return first
}

/** @param metBy what a beam meets of the body, and has to see; undefined where it meets nothing of it */
function fieldLook(
  field: string,
  { sight, planes, clusterBeams }: FieldSight,
  metBy: (beam: number, scratch: Float64Array) => PlacedPart | undefined,
): FieldLook {
  const { beams } = sight
  const scratch = new Float64Array(3)
  const rays: { from_mm: Point; to_mm: Point }[] = []
  const failed: Partial<Record<RuleFailed, number>> = {}
  let largestCluster = 0
  for (const { first, end } of planes) {
    let cluster = 0
    for (let i = first; i < end; i++) {
      const met = metBy(i, scratch)
      if (met && beamSees(sight, i, met.shape, met.x_mm, met.y_mm, scratch)) {
        rays.push(rayOf(beams, i, scratch[0] as number))
        largestCluster = Math.max(largestCluster, ++cluster)
        continue
      }
      cluster = 0
      const rule = met && ruleFailed(sight, i, met.shape, met.x_mm, met.y_mm)
      if (rule !== undefined && rule !== 'm') failed[rule] = (failed[rule] ?? 0) + 1
    }
  }
  return { field, sees: largestCluster >= clusterBeams, rays, largestCluster, clusterBeams, failed }
}

function rayOf(beams: ReturnType<typeof fieldSight>['sight']['beams'], i: number, t_mm: number): { from_mm: Point; to_mm: Point } {
  const from_mm: Point = [beams.originX[i] as number, beams.originY[i] as number, beams.originZ[i] as number]
  const along: Point = [beams.directionX[i] as number, beams.directionY[i] as number, beams.directionZ[i] as number]
  return { from_mm, to_mm: [from_mm[0] + t_mm * along[0], from_mm[1] + t_mm * along[1], from_mm[2] + t_mm * along[2]] }
}
