import { describe, expect, it } from 'vitest'
import { randomDoor } from '../../cases/random-doors.ts'
import { gridCoverage } from './grid-coverage.ts'
import { looker } from './looking.ts'

describe('a body that is moved through a zone', () => {
  it('is seen where the map of all postures says so, and blind where some posture is (doors 1 to 300, every third cell)', () => {
    let asked = 0
    for (let seed = 1; seed <= 300; seed++) {
      const door = randomDoor(seed)
      for (const zone of door.zones.filter(({ purpose }) => purpose !== 'must-not-see').slice(0, 1)) {
        for (const state of door.states) {
          const { grid, blindRuns, notFreeRuns, yawSampled } = gridCoverage(door, zone, state)
          if (yawSampled) continue
          const { stances, look } = looker(door, zone, state)
          const inside = (runs: readonly (readonly [number, number, number])[], row: number, column: number) =>
            runs.some(([r, first, last]) => r === row && column >= first && column <= last)
          for (let cell = seed % 3; cell < grid.rows * grid.columns; cell += 3) {
            const row = Math.floor(cell / grid.columns)
            const column = cell % grid.columns
            const x_mm = grid.x0_mm + (column + 0.5) * grid.pitch_mm
            const y_mm = grid.y0_mm + (row + 0.5) * grid.pitch_mm
            const looks = stances.map((stance) => look(stance, x_mm, y_mm))
            const free = looks.filter((each) => each.free)
            const blind = free.some(({ fields }) => fields.every(({ sees }) => !sees))
            expect({ seed, row, column, blind }).toEqual({ seed, row, column, blind: inside(blindRuns, row, column) })
            if (free.length === 0) expect(inside(notFreeRuns, row, column)).toBe(true)
            asked++
          }
        }
      }
    }
    expect(asked).toBeGreaterThan(3000)
  })
})
