import { describe, expect, it } from 'vitest'
import type { Door, Field, Plane, Sensor, State } from './plain.ts'
import { watchOfParts } from './seen-parts.ts'
import { shutLeaf } from './shut-leaf.ts'
import { readingsOf, type Setting } from './sights.ts'
import type { Placed } from './stances.ts'
import { AS_WRITTEN } from './tolerances.ts'

const state: State = { id: 'now', floor: { profile: [[0, 0]], slope: 0 }, obstacles: [] }
/** One level beam 1 m above the floor, from 2 m beyond y = 0 toward it and on. */
const plane: Plane = {
  id: 'p',
  beams: [{ from: [500, 2000, 1000], along: [0, -1, 0], length: Infinity }],
  middle: [500, 2000, 1000],
  yaw_deg: 0,
  lean_deg: 0,
}
const sensor: Sensor = {
  id: 's',
  segments: false,
  planes: [plane],
  maxRange: 9000,
  rangeRef: 9000,
  reflectanceRef: 0.1,
  margin: 0,
  spot: 0,
  learnedIn: 'now',
}
const open = [-Infinity, Infinity] as const
const fieldWith = (byLeaf: Field['byLeaf']): Field => ({
  name: 's/f',
  sensor,
  planes: ['p'],
  x: open,
  y: open,
  clearance: 0,
  top: Infinity,
  cluster: 1,
  acts: 'presence',
  presence_s: undefined,
  times: { response: 0, hold: 0 },
  blanks: false,
  byLeaf,
})
const leaf = shutLeaf(
  { leaf: { travel: 'down', half: 50 }, width: 1000, height: 2000 } as unknown as Parameters<typeof shutLeaf>[0],
  state.floor,
)
const box = (y: number, reflectance: number): Placed => ({
  shape: 'box',
  size: [400, 200, 1500],
  turn_deg: 0,
  x: 0,
  y,
  from: 0,
  reflectance,
  shades: false,
})

/** What a claim that the first part is seen, with the body's middle at this y, fails on; undefined where it holds. */
function fails(solids: readonly Placed[], y: number, byLeaf?: Field['byLeaf']): string | undefined {
  const field = fieldWith(byLeaf)
  const door: Door = { states: [state], fields: [field], bodies: [], zones: [], extinction: 0, tolerances: undefined }
  const setting: Setting = { door, state, tolerances: AS_WRITTEN, fields: [field], leaf }
  const sight = { field, plane, first: 0, seen: [[{ part: 0, faces: 2 }]] }
  const watch = watchOfParts(
    sight,
    solids,
    [0, 0, 0],
    setting,
    readingsOf(setting, () => undefined),
  )
  return watch({ xMin: 500, xMax: 500, yMin: y, yMax: y + 1 })?.fails
}

describe('a part that is claimed to be seen', () => {
  it('is not where another one is entered before it, and is where that stands behind it or beside the beam', () => {
    expect(fails([box(0, 0.1)], 0)).toBeUndefined()
    expect(fails([box(0, 0.1), box(300, 0)], 0)).toMatch(/^an entry before/)
    expect(fails([box(0, 0.1), box(-300, 0)], 0)).toBeUndefined()
    expect(fails([box(0, 0.1), { ...box(300, 0), x: 500 }], 0)).toBeUndefined()
    expect(fails([box(0, 0.1), { ...box(300, 0), from: 1100 }], 0)).toBeUndefined()
    const { shape: _, ...place } = box(300, 0)
    const post = (x: number): Placed => ({ ...place, shape: 'cylinder', radius: 100, height: 1500, x })
    expect([fails([box(0, 0.1), post(90)], 0) !== undefined, fails([box(0, 0.1), post(110)], 0)]).toEqual([true, undefined])
  })

  it('is asked for where it stands itself', () => {
    expect(fails([{ ...box(0, 0.1), x: 250 }], 0)).toMatch(/^step 1/)
    expect(fails([box(0, 0.0001)], 0)).toMatch(/^step 3/) // too dark at this distance
    expect(fails([box(1700, 0.0001)], 0)).toBeUndefined() // 200 mm away: it reaches 285
  })
})

describe('a field that the leaf hides bodies from', () => {
  it('sees what stands before the shut leaf, and nothing behind it', () => {
    const hides = { ignores: undefined }
    expect(fails([box(0, 0.1)], -500)).toBeUndefined()
    expect(fails([box(0, 0.1)], -500, hides)).toMatch(/^steps 3 and 4/)
    expect(fails([box(0, 0.1)], 500, hides)).toBeUndefined()
  })

  it('sees nothing so near to it as a window that follows it ignores', () => {
    // its face stands 200 to 201 mm from y = 0, of which 50 mm are the leaf's
    expect(fails([box(0, 0.1)], 100, { ignores: { beside: 140, before: 0 } })).toBeUndefined()
    expect(fails([box(0, 0.1)], 100, { ignores: { beside: 160, before: 0 } })).toMatch(/^steps 3 and 4/)
  })
})
