import type { Door, DoorState } from '../model/door.ts'
import type { Zone } from '../model/zone.ts'
import { beamSees } from '../seeing/sees.ts'
import { type Shape, shapeOf } from '../seeing/shape.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { isTaken } from './free-map.ts'
import { countedFields, fieldName, fieldSight, type Stance, stancesOf } from './scene.ts'
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
    stances: stancesOf(door, zone).stances,
    look(stance, x_mm, y_mm) {
      const { posture, yaw_rad, body } = stance
      const whole = shapeOf(posture, yaw_rad, body.reflectance, 0)
      return {
        free: !isTaken(whole, state.obstacles, floor, x_mm, y_mm),
        floor_mm: floorHeight(floor, x_mm, y_mm),
        fields: counted.map(({ field, sight }) =>
          fieldLook(fieldName(field), sight, shapeOf(posture, yaw_rad, body.reflectance, field.sensor.spotRadius_mm), x_mm, y_mm),
        ),
      }
    },
  }
}

function fieldLook(
  field: string,
  { sight, planes, clusterBeams }: ReturnType<typeof fieldSight>,
  shape: Shape,
  x_mm: number,
  y_mm: number,
): FieldLook {
  const { beams } = sight
  const scratch = new Float64Array(3)
  const rays: { from_mm: Point; to_mm: Point }[] = []
  const failed: Partial<Record<RuleFailed, number>> = {}
  let largestCluster = 0
  for (const { first, end } of planes) {
    let cluster = 0
    for (let i = first; i < end; i++) {
      if (beamSees(sight, i, shape, x_mm, y_mm, scratch)) {
        rays.push(rayOf(beams, i, scratch[0] as number))
        largestCluster = Math.max(largestCluster, ++cluster)
        continue
      }
      cluster = 0
      const rule = ruleFailed(sight, i, shape, x_mm, y_mm)
      if (rule !== 'm') failed[rule] = (failed[rule] ?? 0) + 1
    }
  }
  return { field, sees: largestCluster >= clusterBeams, rays, largestCluster, clusterBeams, failed }
}

function rayOf(beams: ReturnType<typeof fieldSight>['sight']['beams'], i: number, t_mm: number): { from_mm: Point; to_mm: Point } {
  const from_mm: Point = [beams.originX[i] as number, beams.originY[i] as number, beams.originZ[i] as number]
  const along: Point = [beams.directionX[i] as number, beams.directionY[i] as number, beams.directionZ[i] as number]
  return { from_mm, to_mm: [from_mm[0] + t_mm * along[0], from_mm[1] + t_mm * along[1], from_mm[2] + t_mm * along[2]] }
}
