import { describe, expect, it } from 'vitest'
import { downward, level, lightGrid, plainState } from '../../cases/plain-door.ts'
import type { RangingSensor, SegmentSensor } from '../model/sensor.ts'
import { fieldEdges } from './field-edges.ts'

function edges(sensor: RangingSensor | SegmentSensor, state = plainState()) {
  const [field] = sensor.fields
  if (!field) throw new Error('the sensor must have a field')
  return fieldEdges({ sensor, field }, state)
}

describe('the edges of a field', () => {
  it('are the clearance and top of a ranging sensor as set', () => {
    const places = [{ x_mm: 500, y_mm: 0, z_mm: 2000 }]
    expect(edges(downward(places, {}, { clearance_mm: 80, top_mm: 1900 }))).toEqual({ lower_mm: 80, upper_mm: 1900 })
    expect(edges(downward(places, {}, { clearance_mm: -Infinity }))).toEqual({ lower_mm: 0, upper_mm: Infinity })
  })

  it('are the lowest and highest beam of a grid over a level floor', () => {
    expect(edges(lightGrid([900, 150, 1800]))).toEqual({ lower_mm: 150, upper_mm: 1800 })
  })

  it('lie where the floor across makes them worst', () => {
    // 2 % over 2000 mm is 40 mm: at x = 2000 the floor is 40 lower, the beams 40 higher
    expect(edges(lightGrid([150, 1800]), plainState({ floor: { ...level(), slopeX: -0.02 } }))).toEqual({ lower_mm: 190, upper_mm: 1800 })
  })

  it('leave out planes that the field does not name', () => {
    const grid = lightGrid([150])
    expect(edges({ ...grid, fields: grid.fields.map((field) => ({ ...field, planes: ['other'] })) })).toEqual({
      lower_mm: Infinity,
      upper_mm: 0,
    })
  })
})
