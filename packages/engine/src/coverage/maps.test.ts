import { describe, expect, it } from 'vitest'
import {
  block,
  bodyOf,
  box,
  cylinder,
  downward,
  fan,
  lightGrid,
  plainDoor,
  plainState,
  plainZone,
  ranging,
  zoneOnly,
} from '../../cases/plain-door.ts'
import { randomScene } from '../../cases/random-scenes.ts'
import type { Door } from '../model/door.ts'
import { type CellSet, countCells, hasCell } from './grid.ts'
import { coverageMaps } from './maps.ts'

function mapsOf(door: Door) {
  return coverageMaps(door, door.zones[0] ?? plainZone(), door.states[0] ?? plainState())
}

/** Seen, blind and not free cells. */
function counts(door: Door): readonly [seen: number, blind: number, notFree: number] {
  const { grid, blind, notFree } = mapsOf(door)
  const [b, n] = [countCells(blind), countCells(notFree)]
  return [grid.columns * grid.rows - b - n, b, n]
}

const wide = plainZone({ xMin_mm: 0, xMax_mm: 1000, yMin_mm: -500, yMax_mm: 500, pitch_mm: 50 })
const cells = 20 * 20

describe('the maps of a zone', () => {
  it('are blind wherever nothing counts: no sensor, no field for the function, no plane that the field names, a zone-only device', () => {
    const sensors: readonly Door['sensors'][] = [
      [],
      [zoneOnly({ function: 'presence' })],
      [ranging([fan(-30, 30, 31)], {}, { function: 'opening' })],
      [ranging([fan(-30, 30, 31)], {}, { planes: ['elsewhere'] })],
      [ranging([], {}, { planes: ['p0'] })],
      [lightGrid([])],
    ]
    for (const some of sensors) expect(counts(plainDoor({ sensors: some, zones: [wide] }))).toEqual([0, cells, 0])
  })
  it('are not free wherever no posture has room, whatever is seen', () => {
    const state = plainState({ obstacles: [block({ size_mm: [9000, 9000], to_mm: 600 })] })
    expect(counts(plainDoor({ states: [state], zones: [wide] }))).toEqual([0, 0, cells])
    const overhead = plainState({ obstacles: [block({ size_mm: [9000, 9000], from_mm: 400, to_mm: 600 })] })
    const bodies = [bodyOf([box(100, 100, 500), box(100, 100, 300)])]
    expect(counts(plainDoor({ states: [overhead], bodies, sensors: [], zones: [wide] }))).toEqual([0, cells, 0])
  })
  it('say of each cell what their own sets say, in 60 random scenes with three postures of two bodies, seeds 1 to 60', () => {
    const totals = { seen: 0, blind: 0, notFree: 0 }
    for (let seed = 1; seed <= 60; seed++) {
      const door = threePostures(seed)
      const { grid, stances, free, seen, blind, notFree } = mapsOf(door)
      expect(stances.length).toBe(3)
      for (let row = 0; row < grid.rows; row++)
        for (let column = 0; column < 32 * grid.words; column++) {
          const has = (set: CellSet) => hasCell(set, grid, row, column)
          const isBlind = stances.some((_, s) => has(free[s] as CellSet) && !has(seen[s] as CellSet))
          const isNotFree = column < grid.columns && !stances.some((_, s) => has(free[s] as CellSet))
          if (has(blind) !== isBlind || has(notFree) !== isNotFree) expect.fail(`seed ${seed}, row ${row}, column ${column}`)
          if (column < grid.columns) totals[isBlind ? 'blind' : isNotFree ? 'notFree' : 'seen']++
        }
    }
    for (const count of Object.values(totals)) expect(count).toBeGreaterThan(500)
  })
  it('of several bodies are blind where one of them alone is, and not free where all of them are, seeds 1 to 60', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const door = threePostures(seed)
      const [zone = wide] = door.zones
      const all = mapsOf(door)
      const each = zone.bodies.map((id) => mapsOf({ ...door, zones: [{ ...zone, bodies: [id] }] }))
      for (let w = 0; w < all.blind.length; w++) {
        const words = (which: 'blind' | 'notFree') => each.map((maps) => maps[which][w] as number)
        if (all.blind[w] !== words('blind').reduce((a, b) => a | b, 0)) expect.fail(`seed ${seed}: blind`)
        if (all.notFree[w] !== words('notFree').reduce((a, b) => a & b, -1)) expect.fail(`seed ${seed}: not free`)
      }
    }
  })
  it('take the fields that they are given, so that what one sensor sees can be asked alone', () => {
    const sensors = [
      downward([{ x_mm: 225, y_mm: 25, z_mm: 2000 }], { id: 'left' }),
      downward([{ x_mm: 825, y_mm: 25, z_mm: 2000 }], { id: 'right' }),
    ]
    const door = plainDoor({ sensors, zones: [wide] })
    const { counted } = mapsOf(door)
    const seenBy = counted.map((one) => countCells(coverageMaps(door, wide, plainState(), [one]).seen[0] as CellSet))
    // a body of 100 on cells of 50: centres within 50 of the beam, those at 50 only touch it: 1 x 1 about (225, 25)
    expect(seenBy).toEqual([1, 1])
    expect(countCells(mapsOf(door).seen[0] as CellSet)).toBe(2)
  })
  it('of a zone that is only one cell, or a strip of one, are as those of any other', () => {
    expect(counts(plainDoor())).toEqual([1, 0, 0])
    const strip = plainZone({ xMin_mm: 0, xMax_mm: 50_000, yMin_mm: -1, yMax_mm: 1, pitch_mm: 10 })
    // centres at 5, 15, ... and a body of 100 under a beam at 500: |x - 500| < 50 holds for 455 ... 545
    expect(counts(plainDoor({ zones: [strip] }))).toEqual([10, 4990, 0])
  })
})

function threePostures(seed: number): Door {
  const door = randomScene(seed, { columns: 40, rows: 30 })
  const others = [box(300, 200, 400, 20), cylinder(120, 300)]
  const [body] = door.bodies
  const bodies = body ? [{ ...body, postures: [...body.postures, ...others.slice(0, 1)] }, bodyOf(others.slice(1), { id: 'other' })] : []
  return { ...door, bodies, zones: door.zones.map((zone) => ({ ...zone, bodies: ['body', 'other'] })) }
}
