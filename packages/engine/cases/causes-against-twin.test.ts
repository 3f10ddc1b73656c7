import { describe, expect, it } from 'vitest'
import { gridCoverage } from '../src/coverage/grid-coverage.ts'
import type { Door } from '../src/model/door.ts'
import type { Cause, CellRun, ZoneCoverage } from '../src/model/finding.ts'
import { withFields, withRanging, withStates } from './door-changes.ts'
import { randomDoor } from './random-doors.ts'
import { slowTwin, type TwinCell } from './slow-twin.ts'
import { reachOf } from './slow-twin-beams.ts'

const SEEDS = 200
const openSides = { xMin_mm: -Infinity, xMax_mm: Infinity, yMin_mm: -Infinity, yMax_mm: Infinity }
const anyLight = { rangeRef_mm: 1e9, reflectanceRef: 1e-9 }

/** The door without one rule (docs/method.md, section 3, "Causes"). */
const lifted: Partial<Record<Cause['kind'], (door: Door) => Door>> = {
  'beyond-reach': (door) => ({ ...withRanging(door, (sensor) => ({ ...sensor, ...anyLight, maxRange_mm: 1e9 })), extinction_per_mm: 0 }),
  'too-dark': (door) => {
    const headOn = withRanging(door, (sensor) => ({
      ...sensor,
      ...anyLight,
      maxRange_mm: reachOf(sensor, sensor.reflectanceRef, 1, door.extinction_per_mm),
    }))
    return { ...headOn, extinction_per_mm: 0 }
  },
  fog: (door) => ({ ...door, extinction_per_mm: 0 }),
  'too-close-to-background': (door) => withRanging(door, (sensor) => ({ ...sensor, backgroundMargin_mm: 0 })),
  'outside-sides': (door) => withFields(door, (field) => ({ ...field, ...openSides })),
  'below-clearance': (door) => withFields(door, (field) => ({ ...field, clearance_mm: -Infinity })),
  'above-top': (door) => withFields(door, (field) => ({ ...field, top_mm: Infinity })),
  'too-few-neighbours': (door) => withFields(door, (field) => ({ ...field, clusterBeams: 1 })),
}

describe(`the causes of blind pockets are what the slow twin sees once one rule or one obstacle is lifted (random doors, seeds 1 to ${SEEDS})`, () => {
  it.each(Object.entries(lifted))('%s: as many cells in every pocket', (kind, lift) => {
    const met = compareAll((door) => [{ kind, without: lift(door), obstacle: undefined }])
    expect(met).toBeGreaterThan(0)
  })

  it('hidden-behind: as many cells in every pocket, obstacle by obstacle', () => {
    const met = compareAll((door, state) => {
      const ids = door.states.find(({ id }) => id === state)?.obstacles.map(({ id }) => id) ?? []
      return ids.map((gone) => ({
        kind: 'hidden-behind',
        without: withStates(door, (each) => ({ ...each, obstacles: each.obstacles.filter(({ id }) => id !== gone) })),
        obstacle: gone,
      }))
    })
    expect(met).toBeGreaterThan(0)
  })
})

interface Lifting {
  readonly kind: string
  readonly without: Door
  readonly obstacle: string | undefined
}

interface Judged {
  readonly seed: number
  readonly door: Door
  readonly state: string
  readonly coverage: ZoneCoverage
  readonly asIs: readonly TwinCell[]
}

/** Every zone of every door in every state that has pockets at all, computed once. */
const judged: readonly Judged[] = Array.from({ length: SEEDS }, (_, i) => i + 1).flatMap((seed) => {
  const door = randomDoor(seed)
  return door.zones.flatMap((zone) =>
    door.states.map((state) => ({
      seed,
      door,
      state: state.id,
      coverage: gridCoverage(door, zone, state),
      asIs: slowTwin(door, zone.id, state.id).cells,
    })),
  )
})

/** Compares every pocket; returns how many pockets had the cause at all. */
function compareAll(liftings: (door: Door, state: string) => readonly Lifting[]): number {
  let met = 0
  for (const { seed, door, state, coverage, asIs } of judged.filter(({ coverage }) => coverage.pockets.length > 0)) {
    for (const { kind, without, obstacle } of liftings(door, state)) {
      const then = slowTwin(without, coverage.zone, state).cells
      for (const { letter, causes, runs } of coverage.pockets) {
        const expected = cellsOf(runs, coverage.grid.columns).filter((c) => isMended(asIs[c], then[c])).length
        const claimed = causes.find((cause) => cause.kind === kind && cause.obstacle === obstacle)?.cells ?? 0
        if (claimed > 0) met++
        if (claimed !== expected)
          expect.fail(
            `seed ${seed}, ${coverage.zone}, ${state}, pocket ${letter}, ${kind} ${obstacle ?? ''}: ${claimed} cells, twin ${expected}`,
          )
      }
    }
  }
  return met
}

/** Wherever the body could be before, it would now be seen. An obstacle that is lifted hides nothing but still stands in the body's way. */
function isMended(before: TwinCell | undefined, after: TwinCell | undefined): boolean {
  return before?.free.every((isFree, p) => !isFree || after?.seen[p]) ?? false
}

function cellsOf(runs: readonly CellRun[], columns: number): readonly number[] {
  return runs.flatMap(([row, first, last]) => Array.from({ length: last - first + 1 }, (_, i) => row * columns + first + i))
}
