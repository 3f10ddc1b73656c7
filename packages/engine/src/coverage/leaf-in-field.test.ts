import { describe, expect, it } from 'vitest'
import { block, downward, level, lightGrid, plainDoor, plainState } from '../../cases/plain-door.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import type { DoorState, Leaf } from '../model/door.ts'
import type { Field, RangingSensor, SegmentSensor } from '../model/sensor.ts'
import { enterBox } from '../seeing/entry.kernel.ts'
import { type LeafMeeting, leafInField } from './leaf-in-field.ts'
import { fieldSight } from './scene.ts'
import type { FieldSight } from './seen-map.ts'

const opening = { width_mm: 2000, height_mm: 2500 }
const down: Leaf = { travel: 'down', thickness_mm: 40, bulge_mm: 30 } // 50 to either side

function sightOf(sensor: RangingSensor | SegmentSensor, state: DoorState = plainState()): FieldSight {
  const [field] = sensor.fields
  if (!field) throw new Error('the sensor must have a field')
  return fieldSight(plainDoor({ sensors: [sensor], states: [state] }), state, { sensor, field })
}

function meeting(sensor: RangingSensor | SegmentSensor, leaf: Leaf = down, state = plainState()): LeafMeeting | undefined {
  return leafInField(sightOf(sensor, state), { leaf, opening })
}

const at = (y_mm: number, z_mm: number, tilt_deg = 0, field: Partial<Field> = {}) =>
  downward([{ x_mm: 500, y_mm, z_mm }], {}, field, tilt_deg)
const rounded = (found: LeafMeeting | undefined) =>
  found?.met.map(({ from_mm, to_mm }) => [Math.round(from_mm * 1e6) / 1e6, Math.round(to_mm * 1e6) / 1e6])

// All figures: hand calculation.
describe('a vertical leaf', () => {
  it('meets a beam that hangs within half its thickness and its bulge at every position, and none farther out', () => {
    expect(meeting(at(40, 2600))).toEqual({ travel_mm: 2500, met: [{ from_mm: 0, to_mm: 2500 }] })
    expect(meeting(at(60, 2600))).toEqual({ travel_mm: 2500, met: [] })
    expect(meeting(at(40, 2600), { ...down, bulge_mm: 0 })?.met).toEqual([])
    expect(meeting(at(50, 2600))?.met).toEqual([]) // along its face
  })

  it('meets a beam that passes under the lintel while its edge is below the place of entry', () => {
    expect(rounded(meeting(at(300, 2000, -45)))).toEqual([[0, 1750]]) // enters at y = 50, z = 1750
    expect(rounded(meeting(at(-300, 2000, 45)))).toEqual([[0, 1750]]) // mirrored
  })

  it('is entered through its edge by a beam that rises', () => {
    expect(rounded(meeting(at(300, 500, -135)))).toEqual([[0, 850]]) // enters at z = 750, leaves the slab at z = 850
  })

  it('meets nothing outside of the field, behind the background, or beyond the range', () => {
    expect(meeting(at(300, 2000, -45, { yMin_mm: 60 }))?.met).toEqual([])
    expect(rounded(meeting(at(300, 2000, -45, { yMin_mm: 40 })))).toEqual([[0, 1750]])
    expect(meeting(at(300, 2000, -45), down, plainState({ obstacles: [block({ y_mm: 100, size_mm: [200, 50] })] }))?.met).toEqual([])
    expect(meeting(downward([{ x_mm: 500, y_mm: 300, z_mm: 2000 }], { maxRange_mm: 353 }, {}, -45))?.met).toEqual([])
    expect(meeting(downward([{ x_mm: 500, y_mm: 300, z_mm: 2000 }], { maxRange_mm: 354 }, {}, -45))?.met).toHaveLength(1) // 250 sqrt(2) = 353.6
  })

  it('interrupts a light grid from the height of its beam down, on a floor whose highest point is where the leaf is shut', () => {
    expect(meeting(lightGrid([400, 900]))?.met).toEqual([{ from_mm: 0, to_mm: 900 }])
    const threshold = plainState({
      floor: level(10, [
        [-100, 0],
        [0, 20],
        [100, 0],
      ]),
    })
    expect(meeting(lightGrid([400]), down, threshold)).toEqual({ travel_mm: 2480, met: [{ from_mm: 0, to_mm: 380 }] })
    expect(meeting(lightGrid([400], 60))?.met).toEqual([])
  })
})

describe('a sliding leaf', () => {
  const beam = at(0, 2600) // hangs at x = 500
  it.each([
    { travel: 'toward-width', travel_mm: 2000, met: [[0, 1500]] },
    { travel: 'toward-zero', travel_mm: 2000, met: [[0, 500]] },
    { travel: 'both-inward', travel_mm: 1000, met: [[0, 500]] },
  ] as const)('that travels $travel meets a beam at x = 500 of 2000 over $met', ({ travel, travel_mm, met }) => {
    const found = meeting(beam, { ...down, travel })
    expect(found?.travel_mm).toBe(travel_mm)
    expect(rounded(found)).toEqual(met)
  })

  it('is entered through its edge by a beam along its way', () => {
    const alongX = { ...lightGrid([]), planes: [{ id: 'p0', segments: [{ from_mm: [100, 0, 900], to_mm: [1500, 0, 900] } as const] }] }
    expect(meeting(alongX, { ...down, travel: 'toward-width' })?.met).toEqual([{ from_mm: 0, to_mm: 1900 }])
    expect(meeting(alongX, { ...down, travel: 'both-inward' })?.met).toEqual([{ from_mm: 0, to_mm: 900 }])
  })
})

it('a turning leaf is not computed', () => {
  expect(meeting(at(0, 2600), { ...down, travel: 'turning' })).toBeUndefined()
})

describe('against the leaf as a box at single positions (another method)', () => {
  it.each(['down', 'toward-zero', 'toward-width'] as const)(
    'every position of a leaf that travels %s is met just when its box is (seed 99)',
    (travel) => {
      const dice = randomNumbers(99)
      let met = 0
      for (let n = 0; n < 150; n++) {
        const from = { x_mm: dice.between(-300, 2300), y_mm: dice.between(-600, 600), z_mm: dice.between(100, 2900) }
        const yaw_rad = dice.pick([0, 0, dice.between(-3, 3)])
        const plane = { kind: 'fan', id: 'p0', offset_rad: 0, fovMin_rad: dice.between(-2.5, 2.5), fovMax_rad: 3, beamCount: 1 } as const
        const field = { clearance_mm: dice.between(0, 300), yMax_mm: dice.pick([Infinity, dice.between(-100, 300)]) }
        const sensor = {
          ...downward([], { backgroundMargin_mm: dice.between(0, 60) }, field),
          planes: [plane],
          pose: { ...from, yaw_rad, tilt_rad: dice.between(-1.5, 1.5), roll_rad: 0 },
        }
        const sight = sightOf(sensor)
        const found = leafInField(sight, { leaf: { ...down, travel }, opening })
        for (let k = 0; k < 20; k++) {
          const way_mm = dice.between(0, found?.travel_mm ?? 0)
          const expected = boxIsMet(sight, travel, way_mm)
          if (expected) met++
          expect(
            found?.met.some(({ from_mm, to_mm }) => from_mm <= way_mm && way_mm <= to_mm),
            `n ${n}, way ${way_mm}`,
          ).toBe(expected)
        }
      }
      expect(met).toBeGreaterThan(50)
    },
  )
})

/** The leaf at one position as a box; whether the one beam enters it inside of a window. */
function boxIsMet({ sight, windows }: FieldSight, travel: 'down' | 'toward-zero' | 'toward-width', way_mm: number): boolean {
  const { beams, ends_mm } = sight
  const { width_mm: w, height_mm: h } = opening
  const [x0, x1, z0] = travel === 'down' ? [0, w, way_mm] : travel === 'toward-zero' ? [way_mm, w, -1e6] : [0, w - way_mm, -1e6]
  const out = new Float64Array(3)
  const [ox = 0, oy = 0, oz = 0] = [beams.originX[0], beams.originY[0], beams.originZ[0]]
  const [dx = 0, dy = 0, dz = 0] = [beams.directionX[0], beams.directionY[0], beams.directionZ[0]]
  if (!enterBox(out, ox, oy, oz, dx, dy, dz, (x0 + x1) / 2, 0, 0, (x1 - x0) / 2, 50, z0, h, 1, 0)) return false
  const t = out[0] ?? 0
  if (!(t > 0 && t < (ends_mm[0] ?? 0))) return false
  return Array.from({ length: windows.first[1] ?? 0 }, (_, i) => (windows.from[i] ?? 0) <= t && t <= (windows.to[i] ?? 0)).some(Boolean)
}
