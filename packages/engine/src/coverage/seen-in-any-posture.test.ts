import { describe, expect, it } from 'vitest'
import { bodyOf, box, downward, plainDoor, plainState, plainZone } from '../../cases/plain-door.ts'
import { randomDoor } from '../../cases/random-doors.ts'
import { slowTwin } from '../../cases/slow-twin.ts'
import { countedFields } from './scene.ts'
import { reverseTest } from './seen-in-any-posture.ts'

describe('the reverse test', () => {
  const zone = plainZone({ purpose: 'must-not-see', pitch_mm: 100 })
  const state = plainState()
  const sensor = downward([{ x_mm: 450, y_mm: -50, z_mm: 2000 }])

  it('finds what is seen in one posture of several, with a case', () => {
    const door = plainDoor({ sensors: [sensor], zones: [zone], bodies: [bodyOf([box(90, 90, 500), box(290, 90, 500)])] })
    // the long posture reaches 145 to either side: its centres at 450 and 550 are both seen
    expect(reverseTest(door, zone, state, countedFields(door, zone))).toEqual({
      seen: 2,
      free: 4,
      seenArea_mm2: 20_000,
      extent: { xMin_mm: 400, xMax_mm: 600, yMin_mm: -100, yMax_mm: 0 },
      worstCase: { body: 'body', posture: 0, x_mm: 450, y_mm: -50, z_mm: 0, yaw_rad: 0, state: 'as surveyed' },
    })
  })

  it('finds nothing where no field looks', () => {
    const door = plainDoor({ sensors: [sensor], zones: [zone] })
    expect(reverseTest(door, zone, state, [])).toMatchObject({ seen: 0, free: 4, extent: undefined, worstCase: undefined })
  })

  it('agrees cell by cell with the slow twin on 20 random doors (seeds 1 to 20)', () => {
    let seen = 0
    for (let seed = 1; seed <= 20; seed++) {
      const door = randomDoor(seed)
      for (const zone of door.zones)
        for (const state of door.states) {
          const { cells } = slowTwin(door, zone.id, state.id)
          const test = reverseTest(door, zone, state, countedFields(door, zone))
          expect(test.seen, `seed ${seed}`).toBe(cells.filter(({ free, seen }) => free.some((isFree, p) => isFree && seen[p])).length)
          expect(test.free, `seed ${seed}`).toBe(cells.filter(({ free }) => free.includes(true)).length)
          seen += test.seen
        }
    }
    expect(seen).toBeGreaterThan(100)
  })
})
