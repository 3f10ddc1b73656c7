import { describe, expect, it } from 'vitest'
import { type CellSet, hasCell } from '../src/coverage/grid.ts'
import { gridCoverage } from '../src/coverage/grid-coverage.ts'
import { coverageMaps } from '../src/coverage/maps.ts'
import type { Door } from '../src/model/door.ts'
import type { ZoneCoverage } from '../src/model/finding.ts'
import { methodCases, pocketOfH11 } from './method-cases.ts'
import { randomDoor } from './random-doors.ts'
import { slowTwin, type TwinCell } from './slow-twin.ts'

const DOORS = 2000
const BATCH = 250
const REPORTED = 5 // every fifth door through the whole report with its pockets and causes, which take most of the time

describe(`the maps of the engine equal those of the slow twin, written from the method's text alone`, () => {
  it.each(Array.from({ length: DOORS / BATCH }, (_, i) => i * BATCH + 1))(
    `random doors of ${BATCH} seeds from %i: every cell, posture by posture`,
    (first) => {
      const differences = Array.from({ length: BATCH }, (_, i) => first + i).flatMap((seed) => differencesOf(randomDoor(seed), seed))
      expect(differences).toEqual([])
    },
  )
})

describe('the engine gives the answers worked on paper (hand calculation)', () => {
  it.each(methodCases)('$id: $setting gives $answer', ({ door, answer, why }) => {
    const [coverage] = coverages(door)
    expect(coverage?.counts, why).toEqual(answer)
  })

  it('H11: the blind cells are one pocket of 0.16 m2 with its outer edges past the zone', () => {
    const [coverage] = coverages(methodCases.find(({ id }) => id === 'H11')?.door ?? expect.fail('H11 is missing'))
    expect(coverage?.pockets.map(({ cells, area_mm2, extent }) => ({ cells, area_mm2, extent }))).toEqual([pocketOfH11])
  })
})

function coverages(door: Door): readonly ZoneCoverage[] {
  return door.zones.flatMap((zone) => door.states.map((state) => gridCoverage(door, zone, state)))
}

/** What to print of a door whose maps differ: seed, zone, state and the first cells. */
function differencesOf(door: Door, seed: number): readonly string[] {
  return door.zones.flatMap((zone) =>
    door.states.flatMap((state) => {
      const twin = slowTwin(door, zone.id, state.id)
      const { grid, stances, free, seen, blind, notFree } = coverageMaps(door, zone, state)
      const verdicts = seed % REPORTED === 0 ? verdictsOf(gridCoverage(door, zone, state)) : undefined
      const say = (what: unknown) => [`seed ${seed}, ${zone.id}, ${state.id}: ${what}`]
      if (grid.columns !== twin.columns || grid.rows !== twin.rows)
        return say(`${grid.columns} x ${grid.rows} cells, twin ${twin.columns} x ${twin.rows}`)
      const [tried, expected] = [stances.map(stanceName), twin.postures.map((each) => stanceName({ ...each, index: each.posture }))]
      if (tried.join() !== expected.join()) return say(`postures ${tried.join()}, twin ${expected.join()}`)
      const wrong = twin.cells.flatMap((cell, c) => {
        const has = (set: CellSet) => hasCell(set, grid, Math.floor(c / grid.columns), c % grid.columns)
        const ours: TwinCell = {
          ...cell,
          verdict: verdicts === undefined ? verdictOf(has(blind), has(notFree)) : (verdicts[c] ?? 'seen'),
          free: free.map(has),
          seen: seen.map(has),
        }
        return JSON.stringify(ours) === JSON.stringify(cell) ? [] : [`${JSON.stringify(ours)}, twin ${JSON.stringify(cell)}`]
      })
      return wrong.length === 0 ? [] : say(`${wrong.length} of ${twin.cells.length} cells differ, first ${wrong[0]}`)
    }),
  )
}

function verdictOf(isBlind: boolean, isNotFree: boolean): TwinCell['verdict'] {
  return isBlind ? 'blind' : isNotFree ? 'not free' : 'seen'
}

function stanceName({
  body,
  index,
  yaw_rad,
}: {
  readonly body: { readonly id: string }
  readonly index: number
  readonly yaw_rad: number
}): string {
  return `${body.id}/${index} at ${yaw_rad.toFixed(12)}`
}

/** Row by row, from the runs that a coverage lists. */
function verdictsOf({ grid: { columns, rows }, blindRuns, notFreeRuns }: ZoneCoverage): readonly TwinCell['verdict'][] {
  const verdicts = new Array<TwinCell['verdict']>(columns * rows).fill('seen')
  for (const [row, first, last] of blindRuns) verdicts.fill('blind', row * columns + first, row * columns + last + 1)
  for (const [row, first, last] of notFreeRuns) verdicts.fill('not free', row * columns + first, row * columns + last + 1)
  return verdicts
}
