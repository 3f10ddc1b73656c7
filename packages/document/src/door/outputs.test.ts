import type { Field, Sensor } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { SIX_VALUES } from '../../test/example-files.ts'
import { parseDocument } from '../parse.ts'
import { toDoor } from './resolve.ts'

const grid = {
  id: 'grid',
  device: 'segments',
  source: { basis: 'invented' },
  planes: [{ id: 'p', between_mm: [[0, 90], [1000, 90]], heights_mm: [200, 400] }], // biome-ignore format: one grid
}
const STOP = { name: 'STOP', function: 'presence', response_s: 0.08, hold_s: 0.5, presenceTime_s: 60, whileWarmingUp: 'detecting' } as const
const IMPULSE = { name: 'IMPULSE', function: 'opening', response_s: 0.3, whileWarmingUp: 'clear' } as const
const parsed = (sensor: object) => parseDocument(JSON.stringify({ ...SIX_VALUES, sensors: [{ ...grid, ...sensor }] }))

function sensorOf(sensor: object): Sensor & { readonly fields: readonly Field[] } {
  const result = parsed(sensor)
  if (!result.ok) throw new Error(JSON.stringify(result.issues))
  return toDoor(result.document, result.catalogue).sensors[0] as Sensor & { readonly fields: readonly Field[] }
}
const issuesOf = (sensor: object) => {
  const result = parsed(sensor)
  return result.ok ? [] : result.issues.map(({ code, path, expected, got }) => ({ code, path, expected, got }))
}

describe('outputs of a sensor', () => {
  it('give their fields function, response, hold and presence time, each its own', () => {
    const fields = [
      { id: 'near', output: 'STOP' },
      { id: 'far', output: 'IMPULSE' },
    ]
    const sensor = sensorOf({ outputs: [STOP, IMPULSE], fields, warmUp_s: 7 })
    expect(sensor.fields).toMatchObject([
      { id: 'near', function: 'presence', response_s: 0.08, hold_s: 0.5, presenceTime_s: 60 },
      { id: 'far', function: 'opening', response_s: 0.3, hold_s: undefined, presenceTime_s: undefined },
    ])
    expect(sensor).toMatchObject({
      warmUp_s: 7,
      outputs: [
        { name: 'STOP', function: 'presence', whileWarmingUp: 'detecting' },
        { name: 'IMPULSE', function: 'opening', whileWarmingUp: 'clear' },
      ],
    })
  })

  it('let a field have figures of its own', () => {
    const fields = [{ id: 'slow', output: 'STOP', response_s: 0.2, presenceTime_s: 'for-ever' }]
    expect(sensorOf({ outputs: [STOP], fields }).fields[0]).toMatchObject({ response_s: 0.2, hold_s: 0.5, presenceTime_s: Infinity })
  })

  it('need not be listed: a file of before means what it meant', () => {
    const { name: output, whileWarmingUp: _, ...rest } = STOP
    const [field] = sensorOf({ fields: [{ id: 'near', output, ...rest }] }).fields
    expect(field).toEqual(sensorOf({ outputs: [STOP], fields: [{ id: 'near', output: 'STOP' }] }).fields[0])
  })

  it('are refused with path, expected and got where they contradict their fields or each other', () => {
    expect(issuesOf({ outputs: [STOP], fields: [{ id: 'f', output: 'OUT 9' }] })).toEqual([
      { code: 'unknown-id', path: 'sensors/0/fields/0/output', expected: 'an output of this sensor ("STOP")', got: '"OUT 9"' },
    ])
    expect(issuesOf({ outputs: [STOP], fields: [{ id: 'f', output: 'STOP', function: 'call' }] })).toEqual([
      { code: 'does-not-fit', path: 'sensors/0/fields/0/function', expected: 'the function of its output, "presence"', got: '"call"' },
    ])
    expect(issuesOf({ outputs: [STOP, STOP], fields: [{ id: 'f', output: 'STOP' }] })).toMatchObject([{ path: 'sensors/0/outputs/1/name' }])
    expect(issuesOf({ fields: [{ id: 'f', output: 'STOP' }] })).toMatchObject([{ code: 'missing', path: 'sensors/0/fields/0/function' }])
    expect(issuesOf({ outputs: [{ ...IMPULSE, presenceTime_s: 5 }], fields: [{ id: 'f', output: 'IMPULSE' }] })).toMatchObject([
      { code: 'does-not-fit', path: 'sensors/0/outputs/0/presenceTime_s' },
    ])
    for (const warmUp_s of [-1, '5', 1e9, null]) expect(issuesOf({ warmUp_s })).toMatchObject([{ path: 'sensors/0/warmUp_s' }])
    const says = { ...STOP, whileWarmingUp: 'off' }
    expect(issuesOf({ outputs: [says], fields: [{ id: 'f', output: 'STOP' }] })).toMatchObject([
      { path: 'sensors/0/outputs/0/whileWarmingUp' },
    ])
  })
})

describe('a leaf in the field', () => {
  const field = { id: 'f', output: 'STOP', function: 'presence' } as const
  const row = {
    device: 'downward-row',
    maxRange_mm: 3000,
    rangeRef_mm: 3000,
    reflectanceRef: 0.1,
    planes: [{ id: 'p', places_mm: [[500, 90, 2000]] }],
  }

  it('is told by the field: whether it hides bodies, and a window that follows it', () => {
    const leafBlanking = { beside_mm: 40, before_mm: 150 }
    expect(sensorOf({ ...row, fields: [{ ...field, leafHides: 'bodies', leafBlanking }] }).fields[0]).toMatchObject({
      leafHides: true,
      leafBlanking,
    })
    const [plain] = sensorOf({ ...row, fields: [{ ...field, leafHides: 'nothing' }] }).fields
    expect([plain?.leafHides, plain?.leafBlanking]).toEqual([undefined, undefined])
  })

  it('is refused with its place where it does not fit or is no length', () => {
    const leafBlanking = { beside_mm: 40, before_mm: 150 }
    expect(issuesOf({ fields: [{ ...field, leafBlanking }] })).toMatchObject([
      { code: 'does-not-fit', path: 'sensors/0/fields/0/leafBlanking', expected: 'nothing here for device "segments"' },
    ])
    expect(issuesOf({ ...row, fields: [{ ...field, leafBlanking: { beside_mm: -1, before_mm: 150 } }] })).toMatchObject([
      { path: 'sensors/0/fields/0/leafBlanking/beside_mm' },
    ])
    expect(issuesOf({ ...row, fields: [{ ...field, leafHides: true }] })).toMatchObject([{ path: 'sensors/0/fields/0/leafHides' }])
  })
})
