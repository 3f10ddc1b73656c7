import { describe, expect, it } from 'vitest'
import { bodyOf, box, downward, fan, plainDoor, ranging } from '../../cases/plain-door.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { beamsOfPlane } from '../../cases/slow-twin-beams.ts'
import { passageThrough, type Solid, solidOfBody } from '../../cases/slow-twin-solids.ts'
import type { Door, Leaf } from '../model/door.ts'
import type { LeafBlanking, RangingSensor } from '../model/sensor.ts'
import { sightBehindLeaf } from './leaf-sight.ts'
import { stancesOfBodies } from './scene.ts'
import { seenAlong } from './seen-along.ts'

const LEAF: Leaf = { travel: 'down', thickness_mm: 40, bulge_mm: 30 } // 50 to either side

function windowsOf(sensor: RangingSensor, way_mm: number, leaf = LEAF) {
  const door = { ...plainDoor({ leaf, sensors: [sensor] }), leaf }
  const [state, field] = [door.states[0], sensor.fields[0]]
  if (!state || !field) throw new Error('the plain door must have a state and a field')
  const { windows } = sightBehindLeaf(door, state, { sensor, field }, way_mm)
  const ends = Array.from({ length: windows.first[1] ?? 0 }, (_, i) => [windows.from[i] ?? 0, windows.to[i] ?? 0])
  return ends.map((pair) => pair.map((t) => Math.round(t * 1e3) / 1e3))
}

describe('sightBehindLeaf', () => {
  // Hand calculation: from (300, 2400) at 45 degrees the beam is at the leaf's face y = 50, z = 2150 after 250 sqrt 2, at the other one at z = 2050, and ends on
  // the floor after 2400 sqrt 2
  it('ends a beam at the leaf as soon as that is low enough, and not before', () => {
    const across = downward([{ x_mm: 500, y_mm: 300, z_mm: 2400 }], {}, { leafHides: true }, -45)
    const [face, floor] = [250, 2400].map((mm) => Math.round(mm * Math.SQRT2 * 1e3) / 1e3)
    expect(windowsOf(across, 2150)).toEqual([[0, floor]])
    expect(windowsOf(across, 2049)).toEqual([[0, face]])
    expect(windowsOf(across, 0)).toEqual([[0, face]])
    expect(windowsOf(across, 2149)).toEqual([[0, face]])
  })

  it('leaves alone what passes beside the leaf, and ends at a sliding one too', () => {
    const beside = downward([{ x_mm: 500, y_mm: 51, z_mm: 2400 }], {}, { leafHides: true })
    expect(windowsOf(beside, 0)).toEqual([[0, 2400]])
    const sliding = { ...LEAF, travel: 'toward-zero' } as const
    const ahead = downward([{ x_mm: 500, y_mm: 300, z_mm: 2400 }], {}, {}, -45)
    expect(windowsOf(ahead, 600, sliding)[0]?.[1]).toBeCloseTo(2400 * Math.SQRT2, 2)
    expect(windowsOf(ahead, 400, sliding)[0]?.[1]).toBeCloseTo(250 * Math.SQRT2, 2)
  })

  // Hand calculation: 60 from the middle, 10 from the face; with the edge at 1000 and 150 before it, heights above 850 are ignored: 2400 - 850
  it('does not count what is entered within the window that follows the leaf', () => {
    const near = { leafBlanking: { beside_mm: 20, before_mm: 150 } }
    const down = downward([{ x_mm: 500, y_mm: 60, z_mm: 2400 }], {}, near)
    expect(windowsOf(down, 1000)).toEqual([[1550, 2400]])
    expect(windowsOf(down, 100)).toEqual([])
    const outside = downward([{ x_mm: 500, y_mm: 71, z_mm: 2400 }], {}, near)
    expect(windowsOf(outside, 100)).toEqual([[0, 2400]])
  })

  it('is right at its own height and sound for every higher leaf, place by place, by the slow twin (60 scenes, seed 4)', () => {
    const random = randomNumbers(4)
    let [seen, hidden] = [0, 0]
    for (let n = 0; n < 60; n++) {
      const leaf: Leaf = {
        travel: random.pick(['down', 'down', 'toward-zero', 'both-inward']),
        thickness_mm: 40,
        bulge_mm: random.pick([0, 30, 120]),
      }
      const leafBlanking = random.chance(0.5) ? { beside_mm: random.between(0, 200), before_mm: random.between(0, 400) } : undefined
      const pose = {
        x_mm: random.between(100, 1900),
        y_mm: random.between(-400, 400),
        z_mm: random.between(1500, 2480),
        yaw_rad: random.between(-0.4, 0.4),
        tilt_rad: random.between(-0.9, 0.9),
        roll_rad: 0,
      }
      const sensor = ranging(
        [fan(-30, 40, random.whole(1, 12))],
        { pose, maxRange_mm: 1e5, rangeRef_mm: 1e8 },
        { leafBlanking, leafHides: true },
      )
      const door: Door & { leaf: Leaf } = {
        ...plainDoor({ sensors: [sensor], bodies: [bodyOf([box(300, 200, random.between(200, 1700))])] }),
        leaf,
      }
      const [state, field, stance] = [door.states[0], sensor.fields[0], stancesOfBodies(door, ['body'], 'test').stances[0]]
      if (!state || !field || !stance) throw new Error('the plain door must have a state, a field and a body')
      const way_mm = random.between(0, 1900)
      const x_mm = random.between(300, 1700)
      const stretches = seenAlong(door, state, { sensor, field }, sightBehindLeaf(door, state, { sensor, field }, way_mm))(stance)(
        x_mm,
        -2500,
        2500,
      )
      const twin = (y_mm: number, at_mm: number) =>
        twinSees(door, sensor, leafBlanking, solidOfBody(stance.posture, 0, state.floor, x_mm, y_mm), at_mm)
      for (let k = 0; k < 60; k++) {
        const y_mm = random.between(-2000, 2000)
        const proved = stretches.some(({ from_mm, to_mm }) => from_mm <= y_mm && y_mm <= to_mm)
        const isClose = stretches.some(({ from_mm, to_mm }) => Math.min(Math.abs(from_mm - y_mm), Math.abs(to_mm - y_mm)) < 1.1)
        const higher_mm = random.between(way_mm, 2400)
        if (proved) expect({ n, y_mm, higher_mm, sees: twin(y_mm, higher_mm) }).toMatchObject({ sees: true })
        if (!isClose) expect({ n, y_mm, way_mm, sees: twin(y_mm, way_mm) }).toMatchObject({ sees: proved })
        if (proved) seen++
        else if (twin(y_mm, 2500)) hidden++
      }
    }
    expect([seen > 200, hidden > 50]).toEqual([true, true])
  })
})

/** Beam by beam, from the method's text: some beam enters the body before it meets the leaf, and not within the window that follows it. */
function twinSees(
  door: Door & { leaf: Leaf },
  sensor: RangingSensor,
  window: LeafBlanking | undefined,
  body: Solid,
  way_mm: number,
): boolean {
  const half = door.leaf.thickness_mm / 2 + door.leaf.bulge_mm
  const { travel } = door.leaf
  const solids = travel === 'down' ? [part([0, 2000], half, [way_mm, 2500])] : travel === 'toward-zero' ? [part([way_mm, 2000], half, [-10, 2500])] : [part([1000 + way_mm, 2000], half, [-10, 2500]), part([0, 1000 - way_mm], half, [-10, 2500])] // biome-ignore format: one case each
  return sensor.planes.some((plane) =>
    beamsOfPlane(plane, sensor.pose).some((beam) => {
      const entry = passageThrough(beam, body)
      if (!entry || entry.enters <= 0 || entry.point[2] < 0) return false
      const leaf = solids.map((solid) => solid && passageThrough(beam, solid)).filter((each) => each && each.leaves > 0)
      if (leaf.some((each) => each && entry.enters >= each.enters)) return false
      if (!window || Math.abs(entry.point[1]) > half + window.beside_mm) return true
      const edge = way_mm - window.before_mm
      if (travel === 'down') return entry.point[2] < edge
      if (travel === 'toward-zero') return entry.point[0] < edge || entry.point[0] > 2000
      return Math.abs(entry.point[0] - 1000) < edge || entry.point[0] < 0 || entry.point[0] > 2000
    }),
  )
}

function part(x: readonly [number, number], half: number, z: readonly [number, number]): Solid | undefined {
  if (x[0] >= x[1] || z[0] >= z[1]) return undefined
  return { shape: 'box', x: (x[0] + x[1]) / 2, y: 0, halfA: (x[1] - x[0]) / 2, halfB: half, yaw_rad: 0, bottom: z[0], top: z[1] }
}
