import { describe, expect, it } from 'vitest'
import { withFields, withRanging, withStates } from '../../cases/door-changes.ts'
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
import type { Body } from '../model/body.ts'
import type { Door } from '../model/door.ts'
import type { Cause } from '../model/finding.ts'
import type { Field, RangingSensor } from '../model/sensor.ts'
import { radians } from '../space/trigonometry.ts'
import { causesOf, type Remedy, remedies } from './causes.ts'
import { type CellSet, countCells, emptySet } from './grid.ts'
import { gridCoverage } from './grid-coverage.ts'
import { coverageMaps } from './maps.ts'
import { setOfRuns } from './pockets.ts'

function causesIn(door: Door): readonly Cause[] {
  const [zone = plainZone(), state = plainState()] = [door.zones[0], door.states.at(-1)]
  return gridCoverage(door, zone, state).pockets[0]?.causes ?? []
}

/** One beam straight down from (500, 0, 2000) onto the one cell about (500, 0). */
function underOneBeam(sensor: Partial<RangingSensor> = {}, field: Partial<Field> = {}, body: Partial<Body> = {}): Door {
  const sensors = [downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }], sensor, field)]
  return plainDoor({ sensors, bodies: [bodyOf([box(100, 100, 500)], body)] })
}

const inCell = (...kinds: readonly Cause['kind'][]) => kinds.map((kind) => ({ kind, cells: 1 }))

describe('the one cause of a blind cell (hand calculation: a beam straight down, a top met 1500 away)', () => {
  it('is the reach, where the electronics end before', () => {
    expect(causesIn(underOneBeam({ maxRange_mm: 1499 }))).toEqual(inCell('beyond-reach'))
    expect(causesIn(underOneBeam({ maxRange_mm: 1500 }))).toEqual([])
  })
  it('is the darkness too, where 1600 shrinks to 1600 sqrt(0.02 / 0.1) = 715, and not where 1400 would not do for the reference', () => {
    const dark = { reflectance: 0.02 }
    expect(causesIn(underOneBeam({ rangeRef_mm: 1600 }, {}, dark))).toEqual(inCell('beyond-reach', 'too-dark'))
    expect(causesIn(underOneBeam({ rangeRef_mm: 1400 }, {}, dark))).toEqual(inCell('beyond-reach'))
  })
  it('is the fog too, where 2000 shrinks to 1234 (method, H7)', () => {
    const fog = { ...underOneBeam({ rangeRef_mm: 2000 }), extinction_per_mm: 3.912 / 10_000 }
    expect(causesIn(fog)).toEqual(inCell('beyond-reach', 'fog'))
    expect(causesIn({ ...fog, extinction_per_mm: 3.912 / 1e6 })).toEqual([])
  })
  it('is the margin, where the top lies 50 before the floor and so does the margin end (method, H4)', () => {
    const bodies = [bodyOf([box(100, 100, 50)])]
    expect(causesIn({ ...underOneBeam({ backgroundMargin_mm: 50 }), bodies })).toEqual(inCell('too-close-to-background'))
    expect(causesIn({ ...underOneBeam({ backgroundMargin_mm: 49 }), bodies })).toEqual([])
  })
  it.each<[Partial<Field>]>([[{ xMin_mm: 501 }], [{ xMax_mm: 499 }], [{ yMin_mm: 1 }], [{ yMax_mm: -1 }]])(
    'is the sides of the field, where %j leaves x = 500, y = 0 out',
    (sides) => {
      expect(causesIn(underOneBeam({}, sides))).toEqual(inCell('outside-sides'))
    },
  )
  it('is the clearance or the top, where they leave a height of 500 out', () => {
    expect(causesIn(underOneBeam({}, { clearance_mm: 501 }))).toEqual(inCell('below-clearance'))
    expect(causesIn(underOneBeam({}, { top_mm: 499 }))).toEqual(inCell('above-top'))
    expect(causesIn(underOneBeam({}, { clearance_mm: 500, top_mm: 500 }))).toEqual([])
  })
  it('is that one beam has no neighbour (method, H6)', () => {
    expect(causesIn(underOneBeam({}, { clusterBeams: 2 }))).toEqual(inCell('too-few-neighbours'))
  })
  it('is the obstacle in the way, and no other one', () => {
    const [shelf, elsewhere, behind] = [
      block({ id: 'shelf', from_mm: 1000, to_mm: 1100 }),
      block({ id: 'elsewhere', x_mm: 900, to_mm: 300 }),
      block({ id: 'behind', from_mm: -100, to_mm: -50 }),
    ]
    const door = { ...underOneBeam(), states: [plainState({ obstacles: [elsewhere, shelf, behind] })] }
    expect(causesIn(door)).toEqual([{ kind: 'hidden-behind', obstacle: 'shelf', cells: 1 }])
    const grid = plainDoor({ sensors: [lightGrid([300])], states: [plainState({ obstacles: [elsewhere] })] })
    expect(causesIn(grid)).toEqual([])
    const low = { ...elsewhere, to_mm: 301 }
    expect(causesIn({ ...grid, states: [plainState({ obstacles: [shelf, low] })] })).toEqual([
      { kind: 'hidden-behind', obstacle: 'elsewhere', cells: 1 },
    ])
  })
  it('is the obstacle that stood there when the sensor learned, though it is gone', () => {
    const states = [
      plainState({ id: 'trailer there', obstacles: [block({ id: 'trailer', from_mm: 900, to_mm: 1600 })] }),
      plainState({ id: 'gone' }),
    ]
    expect(causesIn({ ...underOneBeam({ learnedIn: 'trailer there' }), states })).toEqual([
      { kind: 'hidden-behind', obstacle: 'trailer', cells: 1 },
    ])
    expect(causesIn({ ...underOneBeam({ learnedIn: 'gone' }), states })).toEqual([])
  })
  it('is that it lies between beams, where two run out to 45 degrees on either side', () => {
    expect(causesIn(plainDoor({ sensors: [ranging([fan(-45, 45, 2)])] }))).toEqual(inCell('between-beams'))
    expect(causesIn(plainDoor({ sensors: [ranging([fan(-45, 45, 2)])], bodies: [bodyOf([cylinder(50, 500)])] }))).toEqual(
      inCell('between-beams'),
    )
  })
  it('is that no plane passes, where the only one runs along the leaf and the body lies 1000 before it', () => {
    const zone = plainZone({ yMin_mm: 900, yMax_mm: 1100 })
    expect(causesIn(plainDoor({ sensors: [ranging([fan(-45, 45, 181)])], zones: [zone] }))).toEqual(inCell('no-plane-here'))
    const behind = plainZone({ yMin_mm: -1100, yMax_mm: -900 })
    expect(causesIn(plainDoor({ sensors: [ranging([fan(-45, 45, 181)])], zones: [behind] }))).toEqual(inCell('no-plane-here'))
  })
  it('is that no plane passes for a sensor turned to face along the wall, and on a floor that falls', () => {
    const pose = { x_mm: 500, y_mm: 0, z_mm: 2000, yaw_rad: radians(90), tilt_rad: radians(10), roll_rad: 0 }
    const zone = plainZone({ xMin_mm: 1400, xMax_mm: 1600 })
    const falling = plainState({ floor: { ...level(), slopeX: -0.2 } })
    const door = plainDoor({ sensors: [ranging([fan(-45, 45, 181)], { pose })], zones: [zone], states: [falling] })
    expect(causesIn(door)).toEqual(inCell('no-plane-here'))
  })
  it('is several together, where two of them would have to go', () => {
    const low = [bodyOf([box(100, 100, 40)])]
    expect(causesIn({ ...underOneBeam({ backgroundMargin_mm: 50 }, { clearance_mm: 45 }), bodies: low })).toEqual(
      inCell('several-together'),
    )
    const shelves = [1000, 1300].map((from_mm) => block({ id: `shelf ${from_mm}`, from_mm, to_mm: from_mm + 100 }))
    expect(causesIn({ ...underOneBeam(), states: [plainState({ obstacles: shelves })] })).toEqual(inCell('several-together'))
    expect(causesIn(plainDoor({ sensors: [] }))).toEqual(inCell('several-together'))
  })
})

describe('the causes of a pocket', () => {
  it('are ranked by the cells that each alone would make seen, the rest several together (hand calculation: beams over four cells in a row)', () => {
    // centres at 100, 300, 500, 700: a shelf over the first two and one over the third, a low top's worth of nothing over the last
    const places = [100, 300, 500, 700].map((x_mm) => ({ x_mm, y_mm: 0, z_mm: 2000 }))
    const zone = plainZone({ xMin_mm: 0, xMax_mm: 800 })
    const obstacles = [
      block({ id: 'short', from_mm: 1000, to_mm: 1100 }),
      block({ id: 'long', x_mm: 200, size_mm: [300, 100], from_mm: 1000, to_mm: 1100 }),
    ]
    const door = plainDoor({ sensors: [downward(places, {}, { xMax_mm: 600 })], zones: [zone], states: [plainState({ obstacles })] })
    expect(causesIn(door)).toEqual([
      { kind: 'hidden-behind', obstacle: 'long', cells: 2 },
      { kind: 'outside-sides', cells: 1 },
      { kind: 'hidden-behind', obstacle: 'short', cells: 1 },
    ])
  })
  it('count a cell under each of two that would do alone, and as several together only what none would', () => {
    const grid = { x0: 0, y0: 0, pitch: 1, columns: 10, rows: 1, words: 1 }
    const cells = (first: number, last: number) => setOfRuns([[0, first, last]], grid)
    const found: readonly Remedy[] = [
      { kind: 'above-top', cells: cells(0, 4) },
      { kind: 'hidden-behind', obstacle: 'o', cells: cells(3, 9) },
    ]
    expect(causesOf(cells(2, 8), 7, found)).toEqual([
      { kind: 'hidden-behind', obstacle: 'o', cells: 6 },
      { kind: 'above-top', cells: 3 },
    ])
    expect(causesOf(cells(0, 9), 10, found.slice(0, 1))).toEqual([
      { kind: 'above-top', cells: 5 },
      { kind: 'several-together', cells: 5 },
    ])
  })
})

describe('what a lifting would make seen', () => {
  const lifted: readonly (readonly [Cause['kind'], (door: Door) => Door])[] = [
    [
      'beyond-reach',
      (door) => withRanging({ ...door, extinction_per_mm: 0 }, (sensor) => ({ ...sensor, maxRange_mm: 1e7, rangeRef_mm: 1e100 })),
    ],
    ['fog', (door) => ({ ...door, extinction_per_mm: 0 })],
    ['too-close-to-background', (door) => withRanging(door, (sensor) => ({ ...sensor, backgroundMargin_mm: 0 }))],
    [
      'outside-sides',
      (door) => withFields(door, (field) => ({ ...field, xMin_mm: -Infinity, xMax_mm: Infinity, yMin_mm: -Infinity, yMax_mm: Infinity })),
    ],
    ['below-clearance', (door) => withFields(door, (field) => ({ ...field, clearance_mm: -Infinity }))],
    ['above-top', (door) => withFields(door, (field) => ({ ...field, top_mm: Infinity }))],
    ['too-few-neighbours', (door) => withFields(door, (field) => ({ ...field, clusterBeams: 1 }))],
  ]

  it('is what the door without it sees of the blind cells, for every rule and obstacle, in 150 random scenes, seeds 1 to 150', () => {
    const told: Partial<Record<Cause['kind'], number>> = {}
    for (let seed = 1; seed <= 150; seed++) {
      const scene = randomScene(seed, { columns: 40, rows: 25 })
      const door = seed % 3 === 0 ? { ...scene, extinction_per_mm: 3.912 / 4000 } : scene
      const [state = plainState()] = door.states
      const maps = coverageMaps(door, door.zones[0] ?? plainZone(), state)
      const found = remedies(door, state, maps)
      const expectCells = (kind: Cause['kind'], other: Door, obstacle?: string) => {
        const cells = found.find((remedy) => remedy.kind === kind && remedy.obstacle === obstacle)?.cells ?? emptySet(maps.grid)
        const expected = madeSeen(maps, other)
        if (cells.some((word, w) => word !== expected[w])) expect.fail(`seed ${seed}, ${kind} ${obstacle ?? ''}`)
        if (countCells(cells) > 0) told[kind] = (told[kind] ?? 0) + 1
      }
      for (const [kind, change] of lifted) expectCells(kind, change(door))
      for (const obstacle of state.obstacles)
        expectCells(
          'hidden-behind',
          withStates(door, (each) => ({ ...each, obstacles: each.obstacles.filter((o) => o !== obstacle) })),
          obstacle.id,
        )
    }
    expect(Object.keys(told).sort()).toEqual([...lifted.map(([kind]) => kind), 'hidden-behind'].sort())
  })
  it('is nothing where nothing is blind', () => {
    const door = plainDoor()
    expect(remedies(door, plainState(), coverageMaps(door, plainZone(), plainState()))).toEqual([])
  })
})

/** Blind cells that are blind in no stance by what another door sees; what is free stays as it was. */
function madeSeen({ blind, free }: ReturnType<typeof coverageMaps>, other: Door): CellSet {
  const { seen } = coverageMaps(other, other.zones[0] ?? plainZone(), other.states[0] ?? plainState())
  return blind.map(
    (word, w) => word & ~free.reduce((still, set, s) => still | ((set[w] as number) & ~((seen[s] as CellSet)[w] as number)), 0),
  )
}
