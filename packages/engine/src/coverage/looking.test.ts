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
  it('is seen as one part would be where it has one, and not where a part too dark to be seen stands before the others', () => {
    let seen = 0
    for (let seed = 1; seed <= 60; seed++) {
      const door = randomDoor(seed)
      const state = door.states[0]
      const zone = door.zones.find(({ purpose }) => purpose !== 'must-not-see')
      const box = door.bodies.flatMap(({ postures }) => postures).find(({ shape }) => shape === 'box')
      if (!zone || !state || box?.shape !== 'box' || door.sensors.some(({ kind }) => kind !== 'ranging')) continue
      const reflectance = 0.2
      const { a_mm, b_mm, c_mm } = box
      const part = { shape: 'box', name: 'part', alongX_mm: 0, alongY_mm: 0, from_mm: 0, reflectance, a_mm, b_mm, c_mm } as const
      const plain = { ...box, yawFrom_rad: 0, yawTo_rad: 0 }
      const mantle = { ...part, reflectance: 1e-9, a_mm: a_mm + 20, b_mm: b_mm + 20, c_mm: c_mm + 20 }
      const bodyOf = (id: string, posture: typeof plain) => ({
        id,
        name: id,
        reflectance,
        postures: [posture],
        source: { basis: 'invented', note: '' } as const,
      })
      const bodies = [
        bodyOf('plain', plain),
        bodyOf('one', { ...plain, parts: [part] }),
        bodyOf('wrapped', { ...plain, a_mm: a_mm + 20, b_mm: b_mm + 20, c_mm: c_mm + 20, parts: [part, mantle] }),
      ]
      const { stances, look } = looker({ ...door, bodies }, { ...zone, bodies: ['plain'] }, state)
      expect(stances.map(({ body }) => body.id)).toEqual(['plain', 'one', 'wrapped'])
      for (let i = 0; i < 30; i++) {
        const x_mm = zone.xMin_mm + ((i % 6) + 0.5) * ((zone.xMax_mm - zone.xMin_mm) / 6)
        const y_mm = zone.yMin_mm + (Math.floor(i / 6) + 0.5) * ((zone.yMax_mm - zone.yMin_mm) / 5)
        const [whole, one, wrapped] = stances.map((stance) => look(stance, x_mm, y_mm))
        expect({ seed, i, free: one?.free, fields: one?.fields.map(({ rays }) => rays) }).toEqual({
          seed,
          i,
          free: whole?.free,
          fields: whole?.fields.map(({ rays }) => rays),
        })
        expect(wrapped?.fields.some(({ sees }) => sees)).toBe(false)
        if (whole?.fields.some(({ sees }) => sees)) seen++
      }
    }
    expect(seen).toBeGreaterThan(100)
  })
})
