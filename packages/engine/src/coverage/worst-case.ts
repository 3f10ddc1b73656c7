import type { Door, DoorState } from '../model/door.ts'
import type { WorstCase } from '../model/finding.ts'
import { enterBox, enterCylinder } from '../seeing/entry.kernel.ts'
import { reach } from '../seeing/reach.ts'
import { beamSees, type Sight } from '../seeing/sees.ts'
import { isEmpty, type Shape, shapeOf } from '../seeing/shape.ts'
import { floorHeight } from '../space/floor.ts'
import { type CountedField, fieldSight } from './scene.ts'

/** The first rule that a beam fails, in the order of docs/method.md, section 2; `n` where it sees the body but too few neighbours do. */
export type RuleFailed = 'm' | 'b' | 'r' | 's' | 'c' | 't' | 'n'

/**
 * For every beam of every field that counts, the rule by which it does not see the worst case, in runs such as `m380b1`.
 *
 * @returns one entry for each plane of each field; throws if some cluster sees the body after all
 */
export function rulesFailed(
  door: Door,
  state: DoorState,
  fields: readonly CountedField[],
  { body: id, posture: index, x_mm, y_mm, yaw_rad }: WorstCase,
): (readonly [field: number, plane: number, runs: string])[] {
  const body = door.bodies.find((b) => b.id === id)
  const posture = body?.postures[index]
  if (body === undefined || posture === undefined) throw new Error(`the door must have body ${id} with posture ${index}`)
  return fields.flatMap((counted, f) => {
    const { sight, planes, clusterBeams } = fieldSight(door, state, counted)
    const shape = shapeOf(posture, yaw_rad, body.reflectance, counted.sensor.spotRadius_mm)
    return planes.map(({ first, end }) => {
      const rules = Array.from({ length: end - first }, (_, k) => ruleFailed(sight, first + k, shape, x_mm, y_mm))
      const runs = runsOf(rules)
      if (runs.some(([rule, length]) => rule === 'n' && length >= clusterBeams))
        throw new Error(`the worst case of ${id} must be blind, got a cluster that sees it`)
      const plane = sight.beams.planes.findIndex((p) => p.first === first)
      return [f, plane, runs.map(([rule, length]) => `${rule}${length}`).join('')] as const
    })
  })
}

/** The first rule by which one beam does not see the body, or `n` where it does. */
export function ruleFailed(sight: Sight, i: number, shape: Shape, x: number, y: number): RuleFailed {
  const { beams, floor, limits, segments } = sight
  const scratch = new Float64Array(3)
  if (isEmpty(shape)) return 'm'
  if (beamSees(sight, i, shape, x, y, scratch)) return 'n'
  const under = floorHeight(floor, x, y)
  const from = [beams.originX[i] as number, beams.originY[i] as number, beams.originZ[i] as number] as const
  const along = [beams.directionX[i] as number, beams.directionY[i] as number, beams.directionZ[i] as number] as const
  const { halfA, halfB, low, high, cosYaw, sinYaw } = shape
  const hit = shape.round
    ? enterCylinder(scratch, ...from, ...along, x, y, under, halfA, low, high)
    : enterBox(scratch, ...from, ...along, x, y, under, halfA, halfB, low, high, cosYaw, sinYaw)
  const [t, cosine, leaves] = scratch as unknown as readonly [number, number, number]
  if (!hit || (segments ? leaves <= 0 || t >= (beams.length[i] as number) : t <= 0)) return 'm'
  if (t >= (sight.ends_mm[i] as number)) return 'b'
  if (t > reach(shape.reflectance * cosine, sight.reach)) return 'r'
  const px = from[0] + t * along[0]
  const py = from[1] + t * along[1]
  if (px < limits.xMin_mm || px > limits.xMax_mm || py < limits.yMin_mm || py > limits.yMax_mm) return 's'
  return from[2] + t * along[2] - floorHeight(floor, px, py) < limits.clearance_mm ? 'c' : 't'
}

function runsOf(rules: readonly RuleFailed[]): [RuleFailed, number][] {
  const runs: [RuleFailed, number][] = []
  for (const rule of rules) {
    const last = runs[runs.length - 1]
    if (last?.[0] === rule) last[1]++
    else runs.push([rule, 1])
  }
  return runs
}
