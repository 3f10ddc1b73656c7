import type { Field, SegmentSensor } from '../src/model/sensor.ts'
import type { Drive, Lane } from '../src/model/traffic.ts'
import { lightGrid } from './plain-door.ts'

/*
 * Drive, lane and outputs for the plain door, as in method-cases T2 and T4: half a metre per second, a walker at a quarter, seen within 2500 mm.
 */

export function driven(changes: Partial<Drive> = {}): Drive {
  return {
    closeSpeed_mm_per_s: 500,
    closeAccel_mm_per_s2: 1000,
    closeJerk_mm_per_s3: undefined,
    stopDelay_s: 0.1,
    stopDecel_mm_per_s2: 1000,
    stoppingCurve: [],
    afterStop: 'reverse',
    reverseDelay_s: 0.2,
    openSpeed_mm_per_s: 500,
    openAccel_mm_per_s2: 1000,
    partialOpenings_mm: [],
    movingMass_kg: undefined,
    ...changes,
  }
}

export function laneOf(changes: Partial<Lane> = {}): Lane {
  return {
    id: 'lane',
    name: 'middle',
    who: 'vehicles',
    xMin_mm: 400,
    xMax_mm: 1600,
    from: ['a', 'b'],
    slowest_mm_per_s: 250,
    fastest_mm_per_s: 400,
    bodies: ['body'],
    longestStay_s: 60,
    ...changes,
  }
}

/** Level beams along x every 150 mm from -2400 to 2400: a body 200 deep is seen without a break within 2500 mm. */
export function wideGrid(field: Partial<Field> = {}): readonly SegmentSensor[] {
  const planes = Array.from({ length: 33 }, (_, i) => ({
    id: `p${i}`,
    segments: [{ from_mm: [0, 150 * i - 2400, 300] as const, to_mm: [2000, 150 * i - 2400, 300] as const }],
  }))
  return [lightGrid([300], 0, { planes }, { planes: planes.map(({ id }) => id), response_s: 0.1, hold_s: 0, ...field })]
}
