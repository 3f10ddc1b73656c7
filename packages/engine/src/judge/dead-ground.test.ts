import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { bodyOf, box, downward, lightGrid, plainDoor, plainZone } from '../../cases/plain-door.ts'
import type { Sensor } from '../model/sensor.ts'

/** As worked in coverage/dead-ground.test.ts: ten cells of 100 at the foot, 200 along and 500 out. */
const leaning = downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], {}, {}, 45)
const helper = downward(
  [50, 150, 250, 350, 450].map((y_mm) => ({ x_mm: 500, y_mm, z_mm: 2000 })),
  { id: 'helper' },
)
const bodies = [bodyOf([box(102, 100, 1500)])]

function door(sensors: readonly Sensor[], allowedPocket_mm = 0) {
  return plainDoor({ sensors, bodies, zones: [plainZone({ yMin_mm: 0, yMax_mm: 1000, pitch_mm: 100, allowedPocket_mm })] })
}

describe('dead-ground', () => {
  it('fails by its diameter, and says how far it reaches out from the leaf', () => {
    const finding = findingOf('dead-ground', door([leaning]))
    expect(finding).toMatchObject({
      id: 'dead-ground:zone/sensor',
      verdict: 'fail',
      provisional: 'grid',
      facts: { cells: 10, area_mm2: 100_000, depth_mm: 500, yMin_mm: 0, yMax_mm: 500, leftCells: 10, sensorName: 'sensor' },
      worstCase: { body: 'body' },
    })
    expect(finding.verdict === 'fail' && finding.measured.value).toBeCloseTo(Math.sqrt(200 * 200 + 500 * 500), 9)
  })

  it('passes up to the allowed pocket', () => {
    expect(findingOf('dead-ground', door([leaning], 538)).verdict).toBe('fail') // 538.52
    expect(findingOf('dead-ground', door([leaning], 539)).verdict).toBe('pass')
  })

  it('does not hold against a sensor what another one sees', () => {
    const found = findingsOf('dead-ground', door([leaning, helper]))
    expect(found.map(({ id, verdict, facts }) => [id, verdict, facts['cells'], facts['leftCells']])).toEqual([
      ['dead-ground:zone/helper', 'pass', 0, 0],
      ['dead-ground:zone/sensor', 'pass', 10, 0],
    ])
  })

  it('is only about ranging sensors that count for presence at the leaf', () => {
    expect(findingOf('dead-ground', door([lightGrid([300])])).verdict).toBe('not-applicable')
    expect(findingOf('dead-ground', door([downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], {}, { function: 'call' })])).verdict).toBe(
      'not-applicable',
    )
    expect(findingOf('dead-ground', plainDoor({ zones: [plainZone({ purpose: 'call' })] })).verdict).toBe('not-applicable')
  })
})
