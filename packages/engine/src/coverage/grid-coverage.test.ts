import { describe, expect, it } from 'vitest'
import { mirrored, shifted } from '../../cases/door-changes.ts'
import { methodCases, pocketOfH11 } from '../../cases/method-cases.ts'
import {
  block,
  bodyOf,
  box,
  cylinder,
  downward,
  fan,
  level,
  lightGrid,
  plainDoor,
  plainState,
  plainZone,
  ranging,
} from '../../cases/plain-door.ts'
import { randomScene } from '../../cases/random-scenes.ts'
import type { Door } from '../model/door.ts'
import type { CellRun, Pocket, ZoneCoverage } from '../model/finding.ts'
import { beamSees } from '../seeing/sees.ts'
import { isEmpty, shapeOf } from '../seeing/shape.ts'
import { floorHeight, floorPieces } from '../space/floor.ts'
import { radians } from '../space/trigonometry.ts'
import { isTaken } from './free-map.ts'
import { gridCoverage } from './grid-coverage.ts'
import { countedFields, fieldSight } from './scene.ts'

const coverageOf = (door: Door): ZoneCoverage => gridCoverage(door, door.zones[0] ?? plainZone(), door.states[0] ?? plainState())

function scenes(first: number, last: number): readonly Door[] {
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const door = randomScene(first + i, { columns: 45, rows: 30 })
    const bodies = door.bodies.map((body) => ({ ...body, postures: [...body.postures, box(250, 150, 300, 25), cylinder(100, 250)] }))
    return { ...door, bodies }
  })
}

const cellsOf = (runs: readonly CellRun[]) =>
  runs.flatMap(([row, first, last]) => Array.from({ length: last - first + 1 }, (_, k) => `${row},${first + k}`))

describe('the grid answer of H11 (hand calculation)', () => {
  const { door } = methodCases.find(({ id }) => id === 'H11') ?? expect.fail('H11 is missing')
  const coverage = coverageOf(door)

  it('has 5 x 4 cells, 4 seen and 16 blind, in one pocket of 0.16 m2 with edges past the zone', () => {
    expect(coverage.grid).toEqual({ x0_mm: 300, y0_mm: -200, pitch_mm: 100, columns: 5, rows: 4 })
    expect(coverage.counts).toEqual({ seen: 4, blind: 16, notFree: 0 })
    expect(coverage.blindRuns).toEqual([
      [0, 0, 4],
      [1, 0, 0],
      [1, 3, 4],
      [2, 0, 0],
      [2, 3, 4],
      [3, 0, 4],
    ])
    expect(coverage.pockets.map(({ letter, cells, area_mm2, extent }) => ({ letter, cells, area_mm2, extent }))).toEqual([
      { letter: 'A', ...pocketOfH11 },
    ])
  })
  it('measures that pocket from corner to corner: 500 by 400', () => {
    expect(coverage.pockets[0]?.diameter_mm).toBeCloseTo(Math.sqrt(500 * 500 + 400 * 400), 9)
  })
})

describe('the grid answer', () => {
  const answers = scenes(1, 40).map((door) => ({ door, coverage: coverageOf(door) }))

  it('counts every cell once, and its pockets hold every blind cell once, largest first, in 40 random scenes with three postures, seeds 1 to 40', () => {
    let pockets = 0
    for (const { coverage } of answers) {
      const { grid, counts, blindRuns, notFreeRuns, pockets: found } = coverage
      expect(counts.seen + counts.blind + counts.notFree).toBe(grid.columns * grid.rows)
      const [blind, notFree] = [cellsOf(blindRuns), cellsOf(notFreeRuns)]
      expect([blind.length, notFree.length]).toEqual([counts.blind, counts.notFree])
      expect(new Set([...blind, ...notFree]).size).toBe(blind.length + notFree.length)
      expect(found.flatMap(({ runs }) => cellsOf(runs)).sort()).toEqual([...blind].sort())
      expect(found.map(({ cells }) => cells)).toEqual(found.map(({ runs }) => cellsOf(runs).length).sort((a, b) => b - a))
      for (const pocket of found) expectMeasured(pocket, grid)
      pockets += found.length
    }
    expect(pockets).toBeGreaterThan(40)
  })

  it('shows a worst case in each pocket that stands free and is unseen by the predicate, in the posture that is blind most often, seeds 1 to 40', () => {
    let shown = 0
    for (const { door, coverage } of answers) {
      const isBlind = blindnessIn(door)
      const { x0_mm, y0_mm, pitch_mm } = coverage.grid
      for (const { worstCase, worstPosture, runs } of coverage.pockets) {
        const cell = `${Math.round((worstCase.y_mm - y0_mm) / pitch_mm - 0.5)},${Math.round((worstCase.x_mm - x0_mm) / pitch_mm - 0.5)}`
        expect(cellsOf(runs)).toContain(cell)
        expect(coverage.postures[worstPosture]).toEqual({ body: worstCase.body, posture: worstCase.posture, yaw_rad: worstCase.yaw_rad })
        expect(isBlind(worstPosture, worstCase.x_mm, worstCase.y_mm)).toBe(true)
        expect(worstCase.z_mm).toBe(floorHeight(floorPieces(door.states[0]?.floor ?? level()), worstCase.x_mm, worstCase.y_mm))
        if (shown++ % 8 === 0) {
          const blindIn = coverage.postures.map((_, s) => cellsOf(runs).filter((name) => isBlind(s, ...centre(name, coverage.grid))).length)
          expect(worstPosture).toBe(blindIn.indexOf(Math.max(...blindIn)))
        }
      }
    }
    expect(shown).toBeGreaterThan(40)
  })

  it('gives every pocket causes that count no more than its cells, and some for every cell, seeds 1 to 40', () => {
    for (const { coverage } of answers)
      for (const { cells, causes } of coverage.pockets) {
        const counted = causes.map((cause) => cause.cells)
        expect(Math.max(...counted)).toBeLessThanOrEqual(cells)
        expect(counted.reduce((a, b) => a + b, 0)).toBeGreaterThanOrEqual(cells)
        expect(counted).toEqual([...counted].sort((a, b) => b - a))
        expect(Math.min(...counted)).toBeGreaterThan(0)
      }
  })

  it('of a mirrored door is the mirror image, cell by cell, where all lengths are exact in binary (hand-made doors, yaw and roll of any kind)', () => {
    for (const door of exactDoors()) {
      const [coverage, twin] = [coverageOf(door), coverageOf(mirrored(door, 1000))]
      const { columns } = coverage.grid
      const turned = (runs: readonly CellRun[]) =>
        cellsOf(runs)
          .map((name) => name.replace(/\d+$/, (column) => `${columns - 1 - Number(column)}`))
          .sort()
      expect(cellsOf(twin.blindRuns).sort()).toEqual(turned(coverage.blindRuns))
      expect(cellsOf(twin.notFreeRuns).sort()).toEqual(turned(coverage.notFreeRuns))
      expect(twin.pockets.map(({ cells, diameter_mm }) => [cells, diameter_mm])).toEqual(
        coverage.pockets.map(({ cells, diameter_mm }) => [cells, diameter_mm]),
      )
      expect(coverage.counts.blind).toBeGreaterThan(0)
    }
  })

  it('of a shifted door is the same, shifted, 65 m away too', () => {
    const by = { x_mm: 65_536, y_mm: -32_768, z_mm: 1024 }
    for (const door of exactDoors()) {
      const [coverage, moved] = [coverageOf(door), coverageOf(shifted(door, by))]
      expect([moved.counts, moved.blindRuns, moved.notFreeRuns]).toEqual([coverage.counts, coverage.blindRuns, coverage.notFreeRuns])
      const back = moved.pockets.map(({ worstCase, extent, ...rest }) => ({
        ...rest,
        worstCase: { ...worstCase, x_mm: worstCase.x_mm - by.x_mm, y_mm: worstCase.y_mm - by.y_mm, z_mm: worstCase.z_mm - by.z_mm },
        extent: {
          xMin_mm: extent.xMin_mm - by.x_mm,
          xMax_mm: extent.xMax_mm - by.x_mm,
          yMin_mm: extent.yMin_mm - by.y_mm,
          yMax_mm: extent.yMax_mm - by.y_mm,
        },
      }))
      expect(back).toEqual(coverage.pockets)
    }
  })
})

describe('unusual sizes', () => {
  const answer = (door: Door) => {
    const { counts, pockets } = coverageOf(door)
    return { ...counts, pockets: pockets.length }
  }
  it('a zone of one cell has one pocket or none', () => {
    expect(answer(plainDoor())).toEqual({ seen: 1, blind: 0, notFree: 0, pockets: 0 })
    expect(answer(plainDoor({ sensors: [] }))).toEqual({ seen: 0, blind: 1, notFree: 0, pockets: 1 })
  })
  it.each([
    [5000, 1],
    [1, 5000],
  ])('a zone of %i x %i cells under one beam has a pocket on either side (hand calculation: body 100, pitch 10)', (columns, rows) => {
    const zone = plainZone({ xMin_mm: 0, xMax_mm: 10 * columns, yMin_mm: 0, yMax_mm: 10 * rows, pitch_mm: 10 })
    const sensors = [downward([{ x_mm: columns > 1 ? 500 : 5, y_mm: rows > 1 ? 500 : 5, z_mm: 2000 }])]
    expect(answer(plainDoor({ zones: [zone], sensors }))).toEqual({ seen: 10, blind: 4990, notFree: 0, pockets: 2 })
  })
  it('a door without sensors is one pocket as large as the zone', () => {
    const zone = plainZone({ xMin_mm: 0, xMax_mm: 5000, yMin_mm: 0, yMax_mm: 3000, pitch_mm: 50 })
    const [pocket] = coverageOf(plainDoor({ zones: [zone], sensors: [] })).pockets
    expect(pocket).toMatchObject({ cells: 6000, area_mm2: 15e6, extent: { xMin_mm: 0, xMax_mm: 5000, yMin_mm: 0, yMax_mm: 3000 } })
    expect(pocket?.diameter_mm).toBeCloseTo(Math.sqrt(34e6), 6)
  })
  it('a body larger than the zone, a posture thinner than the spot, a plane of one beam in a cluster of 2', () => {
    expect(answer(plainDoor({ bodies: [bodyOf([box(9000, 9000, 500)])] }))).toEqual({ seen: 1, blind: 0, notFree: 0, pockets: 0 })
    const spot = [downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], { spotRadius_mm: 60 })]
    expect(answer(plainDoor({ sensors: spot, bodies: [bodyOf([box(200, 200, 500), box(100, 200, 500)])] }))).toEqual({
      seen: 0,
      blind: 1,
      notFree: 0,
      pockets: 1,
    })
    expect(answer(plainDoor({ sensors: spot, bodies: [bodyOf([box(200, 200, 500)])] }))).toEqual({
      seen: 1,
      blind: 0,
      notFree: 0,
      pockets: 0,
    })
    const pair = [ranging([fan(0, 0, 1)], {}, { clusterBeams: 2 })]
    expect(answer(plainDoor({ sensors: pair }))).toEqual({ seen: 0, blind: 1, notFree: 0, pockets: 1 })
  })
  it('a pocket of as many runs as a comb of 100,000 cells has is measured, not refused', () => {
    // light beams 20 apart see a body of 19 between the cells: every second column is blind, joined by a blind first row
    const heights = Array.from({ length: 250 }, (_, k) => ({
      from_mm: [20 * k + 5, 15, 10] as const,
      to_mm: [20 * k + 5, 4000, 10] as const,
    }))
    const sensors = [lightGrid([], 0, { planes: [{ id: 'p0', segments: heights }] })]
    const zone = plainZone({ xMin_mm: 0, xMax_mm: 5000, yMin_mm: 0, yMax_mm: 2000, pitch_mm: 10 })
    const coverage = coverageOf(plainDoor({ zones: [zone], sensors, bodies: [bodyOf([box(9, 9, 50)])] }))
    expect(coverage.pockets.map(({ cells, runs }) => [cells, runs.length])).toEqual([[500 + 250 * 199, 1 + 250 * 199]])
    expect(coverage.pockets[0]?.extent).toEqual({ xMin_mm: 0, xMax_mm: 5000, yMin_mm: 0, yMax_mm: 2000 })
  })
})

/** Round lengths, awkward angles. */
function exactDoors(): readonly Door[] {
  const zone = plainZone({ xMin_mm: 0, xMax_mm: 1600, yMin_mm: -800, yMax_mm: 800, pitch_mm: 50 })
  const obstacles = [
    block({ id: 'a', x_mm: 300, y_mm: 400, size_mm: [200, 100], yaw_rad: 0.5, to_mm: 700 }),
    block({ id: 'b', x_mm: 1300, y_mm: -300, size_mm: [150, 300], from_mm: 600, to_mm: 900 }),
  ]
  const pose = { x_mm: 300, y_mm: 100, z_mm: 2400, yaw_rad: 0.3, tilt_rad: 0.2, roll_rad: 0.1 }
  const scanner = ranging(
    [fan(-50, 40, 37), { kind: 'fan', id: 'p1', offset_rad: -0.2, fovMin_rad: radians(-50), fovMax_rad: radians(40), beamCount: 19 }],
    { pose, backgroundMargin_mm: 50 },
    { clearance_mm: 100 },
  )
  const bodies = [bodyOf([box(300, 200, 500, 35), cylinder(150, 300)])]
  const sloped = {
    ...level(0, [
      [-512, 0],
      [0, 32],
      [256, -32],
    ]),
    slopeX: 1 / 64,
  }
  const doors = [plainDoor({ zones: [zone], sensors: [scanner], bodies, states: [plainState({ obstacles })] })]
  return [
    ...doors,
    plainDoor({
      zones: [zone],
      sensors: [ranging([fan(-50, 40, 37)], { pose }, { clusterBeams: 2 }), lightGrid([200, 400], 125)],
      bodies,
      states: [plainState({ obstacles })],
    }),
    plainDoor({
      zones: [{ ...zone, xMin_mm: -600, xMax_mm: 1000 }],
      sensors: [scanner],
      bodies,
      states: [plainState({ floor: { ...sloped, slopeX: 0 }, obstacles })],
    }),
  ]
}

function centre(cell: string, { x0_mm, y0_mm, pitch_mm }: ZoneCoverage['grid']): readonly [number, number] {
  const [row = 0, column = 0] = cell.split(',').map(Number)
  return [x0_mm + (column + 0.5) * pitch_mm, y0_mm + (row + 0.5) * pitch_mm]
}

function expectMeasured({ runs, cells, area_mm2, extent }: Pocket, { x0_mm, y0_mm, pitch_mm }: ZoneCoverage['grid']): void {
  const corners = cellsOf(runs).map((name) => name.split(',').map(Number) as [number, number])
  const [rows, columns] = [corners.map(([row]) => row), corners.map(([, column]) => column)]
  expect(area_mm2).toBeCloseTo(cells * pitch_mm * pitch_mm, 6)
  expect(extent.xMin_mm).toBeCloseTo(x0_mm + Math.min(...columns) * pitch_mm, 9)
  expect(extent.xMax_mm).toBeCloseTo(x0_mm + (Math.max(...columns) + 1) * pitch_mm, 9)
  expect(extent.yMin_mm).toBeCloseTo(y0_mm + Math.min(...rows) * pitch_mm, 9)
  expect(extent.yMax_mm).toBeCloseTo(y0_mm + (Math.max(...rows) + 1) * pitch_mm, 9)
}

const scratch = new Float64Array(3)

/** Whether a placement is free and unseen in a posture of the one body, asked of the predicates. */
function blindnessIn(door: Door): (posture: number, x_mm: number, y_mm: number) => boolean {
  const [zone = plainZone(), state = plainState(), body = bodyOf([])] = [door.zones[0], door.states[0], door.bodies[0]]
  const floor = floorPieces(state.floor)
  const watchers = countedFields(door, zone).map((counted) => ({
    ...fieldSight(door, state, counted),
    spotRadius_mm: counted.sensor.spotRadius_mm,
  }))
  return (index, x_mm, y_mm) => {
    const posture = body.postures[index] ?? box(1, 1, 1)
    const yaw_rad = posture.shape === 'box' ? posture.yawFrom_rad : 0
    if (isTaken(shapeOf(posture, yaw_rad, 1, 0), state.obstacles, floor, x_mm, y_mm)) return false
    return !watchers.some(({ sight, planes, clusterBeams, spotRadius_mm }) => {
      const shape = shapeOf(posture, yaw_rad, body.reflectance, spotRadius_mm)
      const sees = (i: number) => !isEmpty(shape) && beamSees(sight, i, shape, x_mm, y_mm, scratch)
      return planes.some(({ first, end }) => {
        const row = Array.from({ length: end - first }, (_, k) => (sees(first + k) ? '1' : '0')).join('')
        return row.includes('1'.repeat(clusterBeams))
      })
    })
  }
}
