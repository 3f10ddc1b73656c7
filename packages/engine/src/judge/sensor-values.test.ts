import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { block, downward, lightGrid, plainDoor, plainState } from '../../cases/plain-door.ts'
import type { Door } from '../model/door.ts'

const place = { x_mm: 500, y_mm: 0, z_mm: 2000 }
const judged = (changes: Partial<Door>) => findingOf('sensor-values', plainDoor(changes))

describe('sensor-values', () => {
  it('passes for a sensor with all its figures, in the open', () => {
    expect(judged({})).toMatchObject({
      id: 'sensor-values:sensor',
      verdict: 'pass',
      measured: { value: 0 },
      facts: { beams: 1, missing: 0, enclosed: 0 },
    })
  })

  it('fails where a beam starts inside of an obstacle or under the floor in some state, and names it', () => {
    const closet = block({ id: 'closet', name: 'closet' })
    const states = [plainState(), plainState({ id: 'up', obstacles: [closet] })]
    expect(judged({ states })).toMatchObject({
      verdict: 'fail',
      measured: { value: 1 },
      facts: { state: 'up', obstacle: 'closet', obstacleName: 'closet', enclosed: 1 },
    })
    const sunk = judged({ sensors: [downward([{ ...place, z_mm: -1 }, place])] })
    expect(sunk).toMatchObject({ verdict: 'fail', measured: { value: 1 }, facts: { beams: 2 } })
    expect(sunk.facts).not.toHaveProperty('obstacle')
  })

  it('does not mind an origin on a face that looks away from it', () => {
    expect(judged({ states: [plainState({ obstacles: [block({ from_mm: 2000 })] })] }).verdict).toBe('pass')
  })

  it('asks for figures that are none, and for those that nobody entered', () => {
    const sensors = [downward([place], { maxRange_mm: Number.NaN, reflectanceRef: 0 })]
    expect(judged({ sensors })).toMatchObject({
      verdict: 'undetermined',
      reason: 'missing-input',
      needs: ['sensors/0/maxRange_mm', 'sensors/0/reflectanceRef'],
    })
    expect(judged({ assumed: ['sensors/0/backgroundMargin_mm'] })).toMatchObject({
      needs: ['sensors/0/backgroundMargin_mm'],
      facts: { missing: 1 },
    })
    expect(judged({ assumed: ['sensors/1/backgroundMargin_mm'] }).verdict).toBe('pass')
    expect(judged({ assumed: ['sensors/0/x_mm'] })).toMatchObject({
      reason: 'rests-on-assumption',
      needs: ['sensors/0/x_mm'],
      facts: { missing: 0 },
    })
  })

  it('is about each ranging sensor, and no other', () => {
    const sensors = [downward([place], { id: 'a' }), lightGrid([300]), downward([place], { id: 'b' })]
    expect(findingsOf('sensor-values', plainDoor({ sensors })).map(({ id }) => id)).toEqual(['sensor-values:a', 'sensor-values:b'])
    expect(judged({ sensors: [lightGrid([300])] }).verdict).toBe('not-applicable')
  })
})
