import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, downward, ofParts, partBox, plainDoor, plainZone } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import { seenAlong } from '../coverage/seen-along.ts'
import type { BodyPart } from '../model/body.ts'
import type { Door } from '../model/door.ts'
import type { Lane } from '../model/traffic.ts'

const lorry = (parts: readonly BodyPart[]) => bodyOf([ofParts(parts)])
// a truck that carries its tines in front of a mast
const tines = partBox([800, 1000, 120], { y_mm: 700, name: 'tines' })
const mast = partBox([800, 400, 2100], { name: 'mast' })
const forkLift = lorry([tines, mast])

const judged = (rule: string, changes: Partial<Door>, lane: Partial<Lane> = {}) =>
  findingOf(rule, plainDoor({ bodies: [forkLift], sensors: wideGrid(), drive: driven(), zones: [], lanes: [laneOf(lane)], ...changes }))

describe('a body of several parts that passes', () => {
  // Hand calculation: opened to 1500, the edge stands above the tines (120) and below the mast (2100)
  it('meets the leaf with each part for itself: under a half-open leaf tines go through and a mast does not', () => {
    const drive = driven({ partialOpenings_mm: [1500] })
    expect(judged('walked-into', { drive })).toMatchObject({ verdict: 'fail', facts: { part: 'mast' } })
    expect(judged('walked-into', { drive, bodies: [lorry([tines])] }).verdict).toBe('pass')
    expect(judged('walked-into', { bodies: [lorry([{ ...mast, from_mm: 600 }])] })).toMatchObject({
      verdict: 'fail',
      facts: { part: 'mast', way_mm: 2500 },
    })
  })

  // Hand calculation: unseen at 1000 mm/s; the leaf has its full 500 mm/s at 2100, and slows to sqrt(2 * 1000 * 120) = 490 before it is at 120
  it('is struck by whatever part the leaf reaches, and the part is named', () => {
    const unseen = { sensors: [] }
    const found = judged('struck-by-leaf', unseen, { slowest_mm_per_s: 1000, fastest_mm_per_s: 1000 })
    expect(found).toMatchObject({ verdict: 'fail', measured: { value: Math.sqrt(500 * 500 + 1000 * 1000) }, facts: { part: 'mast' } })
  })

  it('turns with its way: from either side its front comes first, and both sides of a door that is alike from both meet alike', () => {
    const lane = { fastest_mm_per_s: 400, slowest_mm_per_s: 400 }
    const late = wideGrid({ response_s: 5 })
    const [fromA, fromB] = (['a', 'b'] as const).map((side) => judged('struck-by-leaf', { sensors: late }, { ...lane, from: [side] }))
    expect(fromA?.verdict).toBe('fail')
    expect(fromA).toMatchObject({ measured: fromB?.verdict === 'fail' ? fromB.measured : undefined })
    expect(fromA?.facts['part']).toBe(fromB?.facts['part'])
    const [yA = 0, yB = 0] = [fromA, fromB].map((found) => (found?.verdict === 'fail' ? found.worstCase?.y_mm : undefined))
    expect(yA).toBeCloseTo(-yB, 6)
  })

  it('does not pass for what only its longest part is seen: a gap in sight under the leaf is a place to be struck', () => {
    const apart = lorry([partBox([600, 800, 900], { y_mm: 1500 }), partBox([100, 2200, 200]), partBox([600, 800, 900], { y_mm: -1500 })])
    const narrow = wideGrid().map((grid) => ({ ...grid, planes: grid.planes.slice(12, 21) })) // y from -600 to 600
    const sensors = narrow.map((grid) => ({
      ...grid,
      fields: grid.fields.map((field) => ({ ...field, planes: grid.planes.map(({ id }) => id) })),
    }))
    const whole = lorry([partBox([600, 3800, 900])])
    expect(judged('struck-by-leaf', { sensors, bodies: [whole] }).verdict).toBe('pass')
    expect(judged('struck-by-leaf', { sensors, bodies: [apart] }).verdict).toBe('fail')
  })
})

describe('sight of several parts', () => {
  // Hand calculation: a beam straight down at y = 0. A plate without brightness hangs above the box, over y -50 to 50 of the body
  it('ends where a part that is too dark comes first', () => {
    const box = partBox([300, 400, 500])
    const plate = partBox([300, 100, 20], { from_mm: 900, reflectance: 1e-6 })
    const door = plainDoor({ bodies: [lorry([box, plate])], sensors: [downward([{ x_mm: 500, y_mm: 0, z_mm: 2000 }])] })
    const [state, body, sensor] = [door.states[0], door.bodies[0], door.sensors[0]]
    const [posture, field] = [body?.postures[0], sensor?.kind === 'ranging' ? sensor.fields[0] : undefined]
    if (!state || !body || !posture || !field || sensor?.kind !== 'ranging') throw new Error('the plain door must have all of these')
    const stretches = seenAlong(door, state, { sensor, field })({ body, posture, index: 0, yaw_rad: 0 })(500, -1000, 1000)
    expect(stretches.map(({ from_mm, to_mm }) => [Math.round(from_mm), Math.round(to_mm)])).toEqual([
      [-199, -51],
      [51, 199],
    ])
  })
})

describe('a zone', () => {
  it('never passes on a body of several parts, and says so', () => {
    const zones = [plainZone({ bodies: ['body'] })]
    expect(judged('zone-covered', { zones })).toMatchObject({ verdict: 'undetermined', reason: 'several-parts', needs: ['bodies/0'] })
    const other = bodyOf([{ shape: 'box', name: 'x', a_mm: 100, b_mm: 200, c_mm: 500, yawFrom_rad: 0, yawTo_rad: 0 }], { id: 'other' })
    const mixed = { zones: [plainZone({ bodies: ['body', 'other'] })], bodies: [forkLift, other] }
    expect(judged('zone-covered', { ...mixed, sensors: [] })).toMatchObject({ verdict: 'fail' })
    const near = plainZone({ bodies: ['other'] })
    expect(judged('zone-covered', { ...mixed, zones: [near] })).toMatchObject({ verdict: 'pass' })
    expect(judged('zone-covered', mixed)).toMatchObject({ verdict: 'undetermined', reason: 'several-parts' })
  })
})
