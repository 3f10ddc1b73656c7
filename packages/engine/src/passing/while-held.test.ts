import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, plainDoor } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import { closingFrom } from '../motion/leaf-run.ts'
import { turningLeaf } from '../motion/turning-leaf.ts'
import { turningPassages } from './turning-ways.ts'
import { foundTurningWhileHeld } from './while-held.ts'
import { newTally } from './worst-passage.ts'

const hinged = { hinge: 'at-zero', opensTo: 'b', length_mm: 2000, secondPanel_mm: undefined, openAngle_rad: Math.PI / 2 } as const
const leaf = { travel: 'turning', thickness_mm: 40, bulge_mm: 0, hinged } as const

/** A body of 300 x 200, its side so far from the face of the leaf, seen everywhere. */
function found(gap_mm: number, held = true) {
  const door = plainDoor({ leaf, bodies: [bodyOf([box(300, 200, 1500)])] })
  const turning = turningLeaf(door)
  const [body] = door.bodies
  const [posture] = body?.postures ?? []
  if (turning === undefined || body === undefined || posture === undefined)
    throw new Error('the door must have a leaf that turns and a body')
  const open = { speed: 500, accel: 1000 }
  const drive = { way: turning.way_mm, close: { ...open, jerk: undefined }, open, stopDelay_s: 0.1, stopDecel: 1000 }
  const closing = closingFrom({ ...drive, reverseDelay_s: 0.2, stoppingCurve: undefined }, turning.way_mm)
  const visible = [{ from_mm: -5000, to_mm: 5000 }]
  const seen = { views: [{ visible, response_s: 0.1, hold_s: 0 }], standing: held ? visible : [] }
  const stance = { body, posture, index: 0, yaw_rad: 0 }
  const tally = newTally()
  for (const passage of turningPassages(turning, stance, 20 + gap_mm + 150, 'a', seen)) foundTurningWhileHeld(closing, passage, tally)
  return tally
}

describe('a leaf that turns, whose closing begins though an output forbids it', () => {
  // Hand calculation: 0.1 s at 1000 mm/s2 are 5 mm and 100 mm/s, and 5 mm more of braking: 10 mm along the arc of 2 m, so that its end comes 10 mm nearer, and
  // a hair less before the corner of a body that stands a little farther in
  it('strikes whoever stands within what it goes on for, and nobody farther off', () => {
    expect(found(9)).toMatchObject({ struck: { whileHeld: true, stands: true, pace: 0 }, unproved: { struck: 0, walked: 1 } })
    expect(found(11)).toMatchObject({ struck: undefined, unproved: { struck: 0, walked: 0 } })
    expect(found(11).gapAtLeast).toBeGreaterThan(0)
  })

  it('proves nothing of those who stand nowhere that an output holds', () => {
    expect(found(9, false)).toMatchObject({ struck: undefined, unproved: { struck: 1, walked: 1 } })
  })

  it('is judged: in order where nobody stands so near, and a fail where somebody does', () => {
    const unsaid = { holdOpenFrom: undefined, closesOnlyByTimer: undefined, preWarning_s: undefined, outputInWarning: undefined }
    const cycle = { ...unsaid, attempts: 1, attemptPause_s: undefined, attemptWhileHeld: 'starts', afterAttempts: undefined } as const
    const judged = (xMin_mm: number) => {
      const lanes = [laneOf({ xMin_mm, xMax_mm: 1700, from: ['a'], slowest_mm_per_s: 250, fastest_mm_per_s: 300 })]
      const door = {
        leaf,
        lanes,
        zones: [],
        drive: driven({ cycle }),
        bodies: [bodyOf([box(300, 200, 1500)])],
        sensors: wideGrid({ hold_s: 5 }),
      }
      return findingOf('struck-by-leaf', plainDoor(door))
    }
    expect(judged(400).verdict).toBe('pass')
    expect(judged(25)).toMatchObject({ verdict: 'fail', facts: { whileHeld: true } })
  })
})
