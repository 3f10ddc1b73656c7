import { describe, expect, it } from 'vitest'
import { block, downward, level, plainState } from '../../cases/plain-door.ts'
import { randomDoor } from '../../cases/random-doors.ts'
import { backgrounds } from '../seeing/background.ts'
import { beamsOf } from '../seeing/beams.ts'
import { nearestThings } from './nearest-things.ts'

describe('what ends a beam', () => {
  const beams = beamsOf(downward([500, 900].map((x_mm) => ({ x_mm, y_mm: 0, z_mm: 2000 }))))

  it('has a name and a distance', () => {
    const table = block({ id: 'table', from_mm: 0, to_mm: 800 })
    const { distances_mm, things } = nearestThings(beams, plainState({ obstacles: [block({ id: 'low', to_mm: 300 }), table] }))
    expect([...distances_mm]).toEqual([1200, 2000])
    expect(things).toEqual([table, 'floor'])
  })

  it('is 0 away inside of an obstacle and under the floor, and nothing where nothing ends it', () => {
    const inside = block({ from_mm: 1900, to_mm: 2100 })
    expect(nearestThings(beams, plainState({ obstacles: [inside] }))).toMatchObject({ things: [inside, 'floor'] })
    expect([...nearestThings(beams, plainState({ obstacles: [inside] })).distances_mm]).toEqual([0, 2000])
    expect(nearestThings(beams, plainState({ floor: level(0, [[0, 2001]]) })).things).toEqual(['floor', 'floor'])
    const upward = beamsOf(downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], {}, {}, 180))
    expect(nearestThings(upward, plainState())).toEqual({ distances_mm: Float64Array.of(Infinity), things: [undefined] })
  })

  it('is as far away as the background on 60 random doors (seeds 1 to 60)', () => {
    for (let seed = 1; seed <= 60; seed++)
      for (const sensor of randomDoor(seed).sensors)
        for (const state of randomDoor(seed).states)
          if (sensor.kind !== 'zone-only')
            expect(nearestThings(beamsOf(sensor), state).distances_mm).toEqual(backgrounds(beamsOf(sensor), state))
  })
})
