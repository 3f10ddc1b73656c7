import { describe, expect, it } from 'vitest'
import { bodyOf, box, plainDoor } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import { judge } from '../judge/judge.ts'
import type { Door } from '../model/door.ts'
import type { Field } from '../model/sensor.ts'
import { type RepairStep, repaired } from './repair.ts'
import { type Repairs, repairs } from './repairs.ts'

const STRUCK = 'struck-by-leaf:lane'

/** At 250 mm/s a body is seen 9.6 s before the leaf: 2400 + 100 mm less its own 120 (hand calculation: (2500 - 120) / 250 = 9.52 s). */
function late(field: Partial<Field>, changes: Partial<Door> = {}): Door {
  return plainDoor({
    bodies: [bodyOf([box(300, 200, 1500)])],
    sensors: wideGrid({ response_s: 9.3, ...field }),
    drive: driven(),
    lanes: [laneOf({ who: 'people', slowest_mm_per_s: 250, fastest_mm_per_s: 250 })],
    ...changes,
  })
}

function found(door: Door): Repairs {
  const work = repairs(door, judge(door), STRUCK)
  let step = work.next()
  while (!step.done) step = work.next()
  return step.value
}

const ofKind = ({ offered }: Repairs, kind: RepairStep['kind']) =>
  offered.flatMap(({ steps }) => (steps.length === 1 && steps[0]?.kind === kind ? [steps[0]] : []))

describe('a repair in time', () => {
  // Hand calculation: 9.52 s of sight, known to 1 mm or 4 ms, less 0.1 s of delay and 500 / 1000 s of braking, leave 8.916 to 8.92 s for the response
  it('makes an output faster by no more than it takes, in hundredths, and no faster than the device can be set', () => {
    expect(ofKind(found(late({ fastestResponse_s: 0.05 })), 'set-outputs')).toEqual([
      { kind: 'set-outputs', part: 'response_s', fields: [expect.objectContaining({ field: 'field' })], from: 9.3, to: 8.91 },
    ])
    expect(ofKind(found(late({ fastestResponse_s: 9 })), 'set-outputs')).toEqual([])
  })

  it('offers no faster response where nobody said that the device has one', () => {
    expect(ofKind(found(late({})), 'set-outputs')).toEqual([])
  })

  // Hand calculation: 9.52 - 9.1955 - 0.1 leaves 0.2245 s for braking, known to 4 ms: at 2 m/s2 from 441 to 449 mm/s
  it('slows the leaf by no more than it takes, in hundredths of a metre per second', () => {
    const door = late({ response_s: 9.1955 }, { drive: driven({ stopDecel_mm_per_s2: 2000 }) })
    expect(found(door).offered.map(({ steps }) => steps)).toContainEqual([
      { kind: 'set-drive', part: 'closeSpeed_mm_per_s', from: 500, to: 440 },
    ])
  })

  it('keeps what it promises: judged from scratch nothing fails that did not fail before', () => {
    const door = late({ fastestResponse_s: 0.05 })
    const failing = (of: Door) => judge(of).findings.flatMap(({ id, verdict }) => (verdict === 'fail' ? [id] : []))
    const before = failing(door)
    for (const { steps } of found(door).offered) {
      const after = failing(repaired(door, steps))
      expect(after.filter((id) => !before.includes(id))).toEqual([])
      expect(after).not.toContain(STRUCK)
    }
  })

  // Hand calculation: the line of the grid is met 2500 mm before y = 0, the slab 20 mm before it: 2480 / 1600 = 1.55 s, less 0.1 of delay and 1.2 of response leave 0.25 s at 1000 mm/s2
  it('slows a leaf that turns, and judges the slower one exactly', () => {
    const hinged = { hinge: 'at-zero', opensTo: 'b', length_mm: 1900, secondPanel_mm: undefined, openAngle_rad: 1.5 } as const
    const door = late(
      { response_s: 1.2, hold_s: 6 },
      {
        leaf: { travel: 'turning', thickness_mm: 40, bulge_mm: 0, hinged },
        lanes: [
          laneOf({
            who: 'people',
            from: ['a'],
            xMin_mm: 850,
            xMax_mm: 1150,
            slowest_mm_per_s: 1600,
            fastest_mm_per_s: 1600,
            longestStay_s: 0,
          }),
        ],
      },
    )
    const { offered } = found(door)
    expect(offered.flatMap(({ steps }) => steps)).toContainEqual(
      expect.objectContaining({ kind: 'set-drive', part: 'closeSpeed_mm_per_s' }),
    )
    for (const { steps } of offered) expect(judge(repaired(door, steps)).findings.find(({ id }) => id === STRUCK)?.verdict).toBe('pass')
  })
})
