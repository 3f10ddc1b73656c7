import { describe, expect, it } from 'vitest'
import type { RangingSensor } from '../src/model/sensor.ts'
import { type Beams, beamsOf } from '../src/seeing/beams.ts'
import { enterBox, enterCylinder } from '../src/seeing/entry.kernel.ts'
import { reach } from '../src/seeing/reach.ts'
import { cos, radians, sin } from '../src/space/trigonometry.ts'
import { presenceReferenceBody } from '../src/values/doors.ts'
import { koschmiederContrast } from '../src/values/optics.ts'
import { methodCases } from './method-cases.ts'
import { beamSpacings, lambertRatio, meteorologicalRange, type OutsideFigure, presenceBody, transmission } from './outside-figures.ts'
import { beamsOfPlane, reachOf } from './slow-twin-beams.ts'
import { passageThrough, type Solid } from './slow-twin-solids.ts'

/** The engine's reach and the twin's, with one way to call them: reflectance and incidence in, mm out. */
interface ReachInput {
  readonly rangeRef_mm: number
  readonly reflectanceRef: number
  readonly extinction_per_mm?: number
  readonly maxRange_mm?: number
}
const reaches = [
  [
    'engine',
    (rho: number, cosine: number, { extinction_per_mm = 0, maxRange_mm = Infinity, ...rest }: ReachInput) =>
      reach(rho * cosine, { ...rest, extinction_per_mm, maxRange_mm }),
  ],
  [
    'slow twin',
    (rho: number, cosine: number, { extinction_per_mm = 0, maxRange_mm = Infinity, ...rest }: ReachInput) =>
      reachOf({ ...plainSensor(), ...rest, maxRange_mm }, rho, cosine, extinction_per_mm),
  ],
] as const

describe.each(reaches)('reach of the %s', (_, reachAt) => {
  it(title(lambertRatio), () => {
    const { dark, bright, ratio } = lambertRatio.value
    const sensor = { rangeRef_mm: 8000, reflectanceRef: 0.1 }
    expect(reachAt(dark, 1, sensor) / reachAt(bright, 1, sensor)).toBeCloseTo(ratio, 4)
    expect(reachAt(0.1, 1, sensor)).toBe(8000)
  })

  it(title(transmission), () => {
    const { path_m, visibility_m, oneWay, twoWay } = transmission.value
    // where one way lets 0.4573 pass, the light of a target is as weak as it is in clear air 1 / 0.4573 times as far away
    const extinction_per_mm = meteorologicalRange.value.constant / (visibility_m * 1000)
    const rangeRef_mm = (path_m * 1000) / oneWay
    expect(reachAt(0.1, 1, { rangeRef_mm, reflectanceRef: 0.1, extinction_per_mm }) / 1000).toBeCloseTo(path_m, 3)
    expect(reachAt(0.1 / twoWay, 1, { rangeRef_mm: path_m * 1000, reflectanceRef: 0.1, extinction_per_mm }) / 1000).toBeCloseTo(path_m, 2)
  })

  it('is cut by incidence and by the electronics (hand calculation: cos 60 degrees = 0.5 leaves the root of 0.5)', () => {
    const sensor = { rangeRef_mm: 1000, reflectanceRef: 0.1 }
    expect(reachAt(0.1, 0.5, sensor)).toBeCloseTo(707.107, 3)
    expect(reachAt(0.4, 1, sensor)).toBeCloseTo(2000, 9)
    expect(reachAt(0.4, 1, { ...sensor, maxRange_mm: 1500 })).toBe(1500)
  })

  it('in fog solves the equation of the method (hand calculation: R = 1000 where rangeRef is 1000 e)', () => {
    expect(reachAt(0.2, 1, { rangeRef_mm: 1000 * Math.E, reflectanceRef: 0.2, extinction_per_mm: 0.001 })).toBeCloseTo(1000, 9)
  })
})

describe('visibility', () => {
  it(title(meteorologicalRange), () => {
    const { contrast, constant } = meteorologicalRange.value
    expect(koschmiederContrast.value).toBe(contrast)
    expect(-Math.log(koschmiederContrast.value)).toBeCloseTo(constant, 3)
  })
})

describe('spacing of beams', () => {
  it.each([
    ['engine', (fan: RangingSensor) => directionsOf(beamsOf(fan))],
    ['slow twin', (fan: RangingSensor) => fan.planes.flatMap((plane) => beamsOfPlane(plane, fan.pose)).map(({ along }) => along)],
  ])(`${title(beamSpacings)} (%s)`, (_, directions) => {
    for (const { distance_m, step_deg, gap_mm } of beamSpacings.value) {
      const half_rad = radians(step_deg / 2)
      const [left, right] = directions(fanOfTwo(half_rad))
      // both beams cut by the plane square to their middle, straight below at the distance
      const gap = ((right?.[0] ?? 0) / -(right?.[2] ?? 0) - (left?.[0] ?? 0) / -(left?.[2] ?? 0)) * distance_m * 1000
      expect(gap).toBeCloseTo(gap_mm, 2)
    }
  })
})

describe('incidence against hand geometry (hand calculation)', () => {
  const along = [0.6, 0, -0.8] as const
  const box: Solid = { shape: 'box', x: 0, y: 0, halfA: 100, halfB: 100, yaw_rad: 0, bottom: 0, top: 400 }
  const turned: Solid = { ...box, yaw_rad: radians(30) }
  const cylinder: Solid = { shape: 'cylinder', x: 0, y: 0, radius: 100, bottom: 0, top: 400 }
  it.each<[string, Solid, readonly [number, number, number], number, number]>([
    ['the top is met at its angle to straight down', box, [-600, 0, 1200], 1000, 0.8],
    ['a side that is met square in plan keeps the level part', box, [-400, 0, 600], 500, 0.6],
    ['at an edge the smaller of both counts', box, [-700, 0, 1200], 1000, 0.6],
    [
      'a side turned by 30 degrees takes another cosine of 30 degrees',
      turned,
      [-600 - 100 / Math.cos(Math.PI / 6), 0, 1000],
      1000,
      0.6 * Math.sqrt(0.75),
    ],
    ['a cylinder 60 beside its axis of radius 100 is met at 0.8 of the level part', cylinder, [-380, 60, 600], 500, 0.48],
  ])('%s', (_, solid, from, t, cosine) => {
    const passage = passageThrough({ from, along }, solid)
    expect(passage?.enters).toBeCloseTo(t, 9)
    expect(passage?.cosine).toBeCloseTo(cosine, 12)
    const out = new Float64Array(3)
    const [x, y, z] = from
    if (solid.shape === 'cylinder') enterCylinder(out, x, y, z, ...along, 0, 0, 0, solid.radius, 0, 400)
    else enterBox(out, x, y, z, ...along, 0, 0, 0, 100, 100, 0, 400, cos(solid.yaw_rad), sin(solid.yaw_rad))
    expect(out[0]).toBeCloseTo(t, 9)
    expect(out[1]).toBeCloseTo(cosine, 12)
  })
})

describe('reference bodies', () => {
  it(title(presenceBody), () => {
    expect(presenceReferenceBody.value).toEqual(presenceBody.value)
    expect(presenceReferenceBody.source.basis).toBe(presenceBody.source.basis)
  })
})

/** The basis stands in every title: a value from memory is never reported as an outside check. */
function title({ id, says, source }: OutsideFigure<unknown>): string {
  return `${says} (${source.basis}: ${source.document}, check value ${id})`
}

function plainSensor(): RangingSensor {
  const sensor = methodCases[0]?.door.sensors[0]
  if (sensor?.kind !== 'ranging') throw new Error('the first case on paper must have a ranging sensor')
  return sensor
}

function fanOfTwo(half_rad: number): RangingSensor {
  return { ...plainSensor(), planes: [{ kind: 'fan', id: 'p0', offset_rad: 0, fovMin_rad: -half_rad, fovMax_rad: half_rad, beamCount: 2 }] }
}

function directionsOf({ directionX, directionY, directionZ }: Beams): readonly (readonly number[])[] {
  return Array.from(directionX, (x, i) => [x, directionY[i] ?? 0, directionZ[i] ?? 0])
}
