import { describe, expect, it } from 'vitest'
import { findingOf, findingsOf } from '../../cases/judged.ts'
import { block, plainDoor, plainState, plainZone, zoneOnly } from '../../cases/plain-door.ts'
import type { DangerPoint, Dangers, Guard } from '../model/danger.ts'
import type { Door, Obstacle } from '../model/door.ts'
import { reachThrough } from '../values/gaps.ts'
import { farEnough_mm } from './danger-guards.ts'

const pointOf = (changes: Partial<DangerPoint> = {}): DangerPoint => ({
  id: 'point',
  name: 'the point',
  kind: 'draw-in',
  obstacle: undefined,
  gap_mm: 300,
  part: undefined,
  from_mm: undefined,
  place: { x_mm: 500, y_mm: 0 },
  guards: [],
  ...changes,
})
const dangers = (points: readonly DangerPoint[]): Dangers => ({ points, none: [] })
const judged = (changes: Partial<DangerPoint> = {}, door: Partial<Door> = {}) =>
  findingOf('danger-point', plainDoor({ dangers: dangers([pointOf(changes)]), ...door }))

const plate: Guard = { how: 'cover', upTo_mm: 2500, opening_mm: 0, shape: 'slot', distance_mm: 0 }
const mesh: Guard = { how: 'cover', upTo_mm: 2500, opening_mm: 20, shape: 'square', distance_mm: 120 }
/** The body meets the one beam wherever it stands in it. */
const small = plainZone({ xMin_mm: 490, xMax_mm: 510, yMin_mm: -10, yMax_mm: 10, pitch_mm: 20 })
const watched = (stops: boolean | undefined): Guard => ({ how: 'presence', id: 'zone', stops })
/** Read in the standard by somebody: then the gaps count. */
const confirmed = [{ value: 'minimum-gap', document: 'ISO 13854', edition: '2017', clause: 'table 1', by: 'A. Reader', on: '2026-11-01' }]

describe('danger-point', () => {
  // ISO 13854, from memory: 500 for a body, 120 for an arm, 25 for a finger
  it('fails where less than the least gap for what gets in is left and nothing guards it', () => {
    expect(judged()).toMatchObject({
      id: 'danger-point:point',
      verdict: 'fail',
      measured: { value: 300, unit: 'mm' },
      limit: { value: 500, unit: 'mm' },
      facts: { by: 'nothing', caught: 'body', guards: 0 },
    })
    expect(judged({ part: 'arm', gap_mm: 119 }).verdict).toBe('fail')
    expect(judged({ part: 'finger', gap_mm: 24 })).toMatchObject({ verdict: 'fail', limit: { value: 25 } })
  })

  it('does not pass by a gap from memory until somebody confirms it', () => {
    expect(judged({ part: 'arm' })).toMatchObject({
      verdict: 'undetermined',
      reason: 'limit-from-memory',
      needs: ['confirmations/minimum-gap'],
    })
    expect(judged({ part: 'arm', gap_mm: 120 }, { confirmations: confirmed })).toMatchObject({ verdict: 'pass', facts: { by: 'gap' } })
    expect(judged({}, { confirmations: confirmed }).verdict).toBe('fail')
  })

  it('passes above the guarded height, a published one, and not just below it', () => {
    expect(judged({ from_mm: 2500 })).toMatchObject({
      verdict: 'pass',
      measured: { value: 2500 },
      limit: { value: 2500 },
      facts: { by: 'height' },
    })
    expect(judged({ from_mm: 2499 }).verdict).toBe('fail')
  })

  it('asks for a gap that nobody measured', () => {
    expect(judged({ gap_mm: undefined })).toMatchObject({ verdict: 'undetermined', needs: ['survey/dangers/points/0/gap_mm'] })
  })

  it('passes behind a cover that is high enough and through which nobody reaches', () => {
    expect(judged({ guards: [plate] })).toMatchObject({ verdict: 'pass', measured: { value: 1, unit: '1' }, facts: { by: 'cover' } })
    expect(judged({ guards: [mesh] }).verdict).toBe('pass')
    expect(judged({ guards: [{ ...mesh, distance_mm: 119 }] }).verdict).toBe('fail')
    expect(judged({ guards: [{ ...mesh, shape: 'slot', opening_mm: 21, distance_mm: 849 }] }).verdict).toBe('fail')
    expect(judged({ guards: [{ ...plate, upTo_mm: 2000 }] }).verdict).toBe('fail')
    expect(judged({ guards: [{ ...plate, upTo_mm: 2000 }] }, { opening: { width_mm: 2000, height_mm: 2000 } }).verdict).toBe('pass')
    expect(judged({ guards: [{ ...mesh, opening_mm: 121, distance_mm: 5000 }] }).verdict).toBe('fail')
  })

  it('knows how far people of 14 or older reach, and passes no mesh where others come', () => {
    const concept = { people: 'public', drive: 'automatic', closingEdge: 'contact-free' } as const
    expect(judged({ guards: [mesh] }, { concept })).toMatchObject({
      verdict: 'undetermined',
      reason: 'not-computable',
      facts: { by: 'cover' },
    })
    expect(judged({ guards: [plate] }, { concept }).verdict).toBe('pass')
    expect(judged({ guards: [{ ...mesh, distance_mm: 119 }] }, { concept }).verdict).toBe('fail')
  })

  it('passes by presence where the zone holds the place, is covered, and its output stops this movement', () => {
    const seen = (changes: Partial<DangerPoint>, door: Partial<Door> = {}) => judged(changes, { zones: [small], ...door })
    expect(seen({ guards: [watched(true)] })).toMatchObject({ verdict: 'pass', facts: { by: 'presence' } })
    expect(seen({ guards: [watched(undefined)] })).toMatchObject({
      verdict: 'undetermined',
      needs: ['survey/dangers/points/0/guards/0/stops'],
    })
    expect(seen({ guards: [watched(false)] }).verdict).toBe('fail')
    expect(seen({ guards: [watched(true)], place: { x_mm: 511, y_mm: 0 } }).verdict).toBe('fail')
    expect(seen({ guards: [watched(true)], place: undefined })).toMatchObject({
      needs: ['survey/dangers/points/0/x_mm', 'survey/dangers/points/0/y_mm'],
    })
    expect(seen({ guards: [watched(true)] }, { zones: [plainZone({ xMin_mm: 0, xMax_mm: 1000 })] }).verdict).toBe('fail') // not covered
    expect(seen({ guards: [watched(true)] }, { assumed: ['sensors/0/backgroundMargin_mm'] })).toMatchObject({
      reason: 'rests-on-assumption',
    })
  })

  it('leaves an edge to measurement, and takes none that does not stop this movement', () => {
    const edge = (stops: boolean): Guard => ({ how: 'edge', id: 'strip', stops })
    const sensors = [zoneOnly({ id: 'strip', function: 'presence' })]
    expect(judged({ guards: [edge(true)] }, { sensors })).toMatchObject({ verdict: 'undetermined', reason: 'not-computable' })
    expect(judged({ guards: [edge(false)] }, { sensors }).verdict).toBe('fail')
    expect(judged({ guards: [edge(true)] }, { sensors: [zoneOnly({ id: 'strip' })] }).verdict).toBe('fail') // only opens the door
  })

  it('asks of lifting whether there is anything to hold, not for a gap', () => {
    expect(judged({ kind: 'lifting' })).toMatchObject({ verdict: 'fail', measured: { value: 0, unit: '1' } })
    expect(judged({ kind: 'lifting', guards: [{ how: 'nothing-to-hold' }] }).verdict).toBe('pass')
    expect(judged({ kind: 'lifting', guards: [{ how: 'load-stop' }] })).toMatchObject({ verdict: 'undetermined', reason: 'not-computable' })
    expect(judged({ kind: 'draw-in', guards: [{ how: 'nothing-to-hold' }] }).verdict).toBe('fail')
  })

  const parked = block({ id: 'parked-leaf', implied: true, x_mm: 3050, size_mm: [2100, 40] }) // tail at 4100
  const sliding = (obstacles: readonly Obstacle[], points: readonly DangerPoint[] = []): Partial<Door> => ({
    leaf: { travel: 'toward-zero', thickness_mm: 40, bulge_mm: 0 },
    states: [plainState({ obstacles: [parked, ...obstacles] })],
    dangers: dangers(points),
  })
  const fence = block({ id: 'fence', name: 'rear fence', x_mm: 4500, size_mm: [100, 100] })

  it('finds a fence behind the tail that nobody listed, and takes its guard where somebody did', () => {
    expect(findingOf('danger-point', plainDoor(sliding([fence])))).toMatchObject({
      id: 'danger-point:tail/fence',
      verdict: 'fail',
      measured: { value: 350 },
      facts: { kind: 'tail', obstacleName: 'rear fence' },
    })
    const listed = pointOf({ kind: 'tail', obstacle: 'fence', gap_mm: 9000, guards: [plate] })
    expect(findingOf('danger-point', plainDoor(sliding([fence], [listed])))).toMatchObject({ id: 'danger-point:point', verdict: 'pass' })
    expect(findingOf('danger-point', plainDoor(sliding([fence], [{ ...listed, guards: [] }])))).toMatchObject({ measured: { value: 350 } })
  })

  it('shows the nearest obstacle where all leave room, each that does not, and none that begins above', () => {
    const far = block({ id: 'far', x_mm: 5000 })
    const ids = (obstacles: readonly Obstacle[]) =>
      findingsOf('danger-point', plainDoor(sliding(obstacles))).map(({ id, verdict }) => [id, verdict])
    expect(ids([far, block({ id: 'farther', x_mm: 6000 })])).toEqual([['danger-point:tail/far', 'undetermined']])
    expect(ids([far, fence, { ...fence, id: 'post' }])).toEqual([
      ['danger-point:tail/fence', 'fail'],
      ['danger-point:tail/post', 'fail'],
    ])
    const high = plainDoor(sliding([{ ...fence, from_mm: 2500, to_mm: 3000 }]))
    const leafUp = {
      ...high,
      states: high.states.map((state) => ({ ...state, obstacles: state.obstacles.map((each) => ({ ...each, to_mm: 3000 })) })),
    }
    expect(findingOf('danger-point', leafUp)).toMatchObject({ verdict: 'pass', facts: { by: 'height' } })
  })

  // Hand calculation: the tail ends at 4100, a fence 100 wide about x begins at x - 50; with each face 5 off, 10 are taken from the gap
  it('settles no computed gap that is enough as written and not with both faces off by the stated tolerance', () => {
    const tolerances = { length_mm: 5, position_mm: 5, tilt_rad: 0, roll_rad: 0, yaw_rad: 0, floor_mm: 0, range: 0 }
    const at = (x_mm: number) =>
      findingOf('danger-point', plainDoor({ ...sliding([{ ...fence, x_mm }]), confirmations: confirmed, tolerances }))
    expect(at(4659)).toMatchObject({
      verdict: 'undetermined',
      reason: 'within-tolerance',
      measured: { value: 509 },
      needs: ['tolerances/length_mm'],
    })
    expect(at(4660).verdict).toBe('pass')
    expect(at(4649).verdict).toBe('fail')
  })

  it('asks for the parked leaf where a listed point is against an obstacle', () => {
    const point = pointOf({ kind: 'sweep', obstacle: 'fence' })
    expect(judged(point)).toMatchObject({ verdict: 'undetermined', needs: ['survey/leaf/parked'] })
  })

  it('does not apply where the door is held to run, and where nothing is listed or computed', () => {
    const concept = { people: 'trained', drive: 'hold-to-run', closingEdge: 'none' } as const
    expect(judged({}, { concept })).toMatchObject({ verdict: 'not-applicable', reason: 'not-required-by-concept' })
    expect(findingOf('danger-point', plainDoor())).toMatchObject({ verdict: 'not-applicable', reason: 'no-subject' })
  })
})

// sep-22: DGUV Information 208-022 (2017), 6, table 2, published
describe('the distance behind an opening', () => {
  it.each([
    [4, 2, 2, 2],
    [4.1, 10, 5, 5],
    [10, 80, 25, 20],
    [12.5, 120, 120, 120],
    [25, 850, 120, 120],
    [35, 850, 200, 120],
    [120, 850, 850, 850],
  ])('at %d mm is %d behind a slot, %d behind a square, %d behind a round hole', (opening_mm, slot, square, round) => {
    const found = (['slot', 'square', 'round'] as const).map((shape) => farEnough_mm(reachThrough.value, shape, opening_mm))
    expect(found).toEqual([slot, square, round])
  })
  it('does not exist where the table ends', () => {
    expect(farEnough_mm(reachThrough.value, 'square', 121)).toBe(Infinity)
  })
})
