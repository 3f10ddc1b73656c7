import type { Door, DoorState } from '../model/door.ts'
import { backgrounds } from './background.ts'
import { beamsOf } from './beams.ts'

/** Where one beam starts and ends with nobody there. Doorway frame, mm. */
export interface BeamSpot {
  readonly from: readonly [number, number, number]
  readonly to: readonly [number, number, number]
  /** What ends it: the floor or an obstacle (an aim spot), the end of its range, or the end of a segment. */
  readonly end: 'spot' | 'range' | 'segment'
}

/** The beams of one plane of one sensor, in order. */
export interface PlaneSpots {
  readonly sensor: string
  readonly plane: string
  readonly beams: readonly BeamSpot[]
}

/** For drawings: every beam of every sensor in one state of the door, as far as it runs. No verdict rests on it. */
export function beamSpots(door: Door, state: DoorState): PlaneSpots[] {
  return door.sensors.flatMap((sensor) => {
    if (sensor.kind === 'zone-only') return []
    const beams = beamsOf(sensor)
    const background = backgrounds(beams, state)
    const range = sensor.kind === 'ranging' ? sensor.maxRange_mm : Infinity
    return beams.planes.map(({ id, first, end }) => ({
      sensor: sensor.id,
      plane: id,
      beams: Array.from({ length: end - first }, (_, k): BeamSpot => {
        const i = first + k
        const runs = Math.min(background[i] as number, range, beams.length[i] as number)
        const from = [beams.originX[i] as number, beams.originY[i] as number, beams.originZ[i] as number] as const
        const along = [beams.directionX[i] as number, beams.directionY[i] as number, beams.directionZ[i] as number] as const
        return {
          from,
          to: [from[0] + runs * along[0], from[1] + runs * along[1], from[2] + runs * along[2]],
          end: runs === background[i] ? 'spot' : runs === beams.length[i] ? 'segment' : 'range',
        }
      }),
    }))
  })
}
