import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { bodyOf, box, cylinder, downward, plainDoor, plainState, plainZone } from '../../cases/plain-door.ts'
import type { Posture } from '../model/body.ts'

const row = (spacing_mm: number, clusterBeams = 1, spotRadius_mm = 0) =>
  downward(
    [0, 1, 2, 3].map((i) => ({ x_mm: 100 + i * spacing_mm, y_mm: 0, z_mm: 2000 })),
    { spotRadius_mm },
    { clusterBeams },
  )
const zones = [plainZone({ xMin_mm: 0, xMax_mm: 2000, yMin_mm: -500, yMax_mm: 500 })]

function judged(sensor: ReturnType<typeof row>, ...postures: readonly Posture[]) {
  return findingOf('beam-gap-max', plainDoor({ sensors: [sensor], zones, bodies: [bodyOf(postures)] }))
}

describe('beam-gap-max', () => {
  it('passes where the gap is less than the shortest way across the face, and fails where both are equal: both edges could lie on beams', () => {
    expect(judged(row(199), box(300, 200, 500))).toMatchObject({
      id: 'beam-gap-max:zone/sensor/field',
      verdict: 'pass',
      measured: { value: 199, unit: 'mm' },
      limit: { value: 200, unit: 'mm' },
      facts: {
        zone: 'zone',
        output: 'OUT1',
        cluster: 1,
        gap_mm: 199,
        face: 'top',
        across_mm: 200,
        plane: 'p0',
        beam: 1,
        x_mm: 199.5,
        z_mm: 500,
        postureName: '300 x 200 x 500',
      },
    })
    expect(judged(row(200), box(300, 200, 500)).verdict).toBe('fail')
  })

  it('asks for room for as many neighbours as must agree, and takes the spot off', () => {
    expect(judged(row(70, 3), box(300, 200, 500))).toMatchObject({ verdict: 'fail', measured: { value: 70 }, limit: { value: 200 / 3 } })
    expect(judged(row(66, 3), box(300, 200, 500)).verdict).toBe('pass')
    expect(judged(row(170, 1, 15), box(300, 200, 500))).toMatchObject({ verdict: 'fail', limit: { value: 170 } })
    expect(judged(row(169, 1, 15), box(300, 200, 500)).verdict).toBe('pass')
  })

  it('is about the posture that leaves least room', () => {
    expect(judged(row(120), box(300, 200, 500), box(300, 100, 500), cylinder(100, 500))).toMatchObject({
      verdict: 'fail',
      facts: { posture: 1, across_mm: 100 },
    })
  })

  it('does not apply where no two neighbours meet a body, and says for which field', () => {
    const one = downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }])
    expect(judged(one, box(300, 200, 500))).toMatchObject({
      id: 'beam-gap-max:zone/sensor/field',
      verdict: 'not-applicable',
      facts: { field: 'field', cluster: 1 },
    })
  })

  it('does not pass on samples of a yaw range', () => {
    expect(judged(row(100), box(300, 200, 500, [0, 90]))).toMatchObject({ verdict: 'undetermined', reason: 'yaw-range-sampled' })
  })

  it('judges each counting field, zone and state', () => {
    const states = [plainState(), plainState({ id: 'up' })]
    const sensors = [row(100), downward([], { id: 'other' }, { function: 'opening' })]
    expect(findingsOf('beam-gap-max', plainDoor({ sensors, zones, states })).map(({ id }) => id)).toEqual([
      'beam-gap-max:zone/sensor/field@as surveyed',
      'beam-gap-max:zone/sensor/field@up',
    ])
  })
})
