import { describe, expect, it } from 'vitest'
import type { ControlCycle } from '../model/traffic.ts'
import { closingFrom, type LeafDrive } from '../motion/leaf-run.ts'
import { NO_QUIET, quietAfter_s, quietOf } from './start-of-closing.ts'
import { foundWhileHeld } from './while-held.ts'
import { newTally, type Passage, worstOfPassage } from './worst-passage.ts'

const unsaid: ControlCycle = {
  holdOpenFrom: undefined,
  closesOnlyByTimer: undefined,
  preWarning_s: undefined,
  outputInWarning: undefined,
  attempts: undefined,
  attemptPause_s: undefined,
  attemptWhileHeld: undefined,
  afterAttempts: undefined,
}
const quiet = (cycle: Partial<ControlCycle>, holdOpen_s?: number) => quietOf({ cycle: { ...unsaid, ...cycle }, holdOpen_s })

/** Half a metre per second; a body at 500 mm/s that is seen far out, lost for 2 s, and seen again 200 mm before the leaf. */
const leaf: LeafDrive = {
  way: 2000,
  close: { speed: 500, accel: 1000 },
  open: { speed: 500, accel: 1000 },
  stopDelay_s: 0.1,
  stopDecel: 1000,
  reverseDelay_s: 0.2,
}
const visible = [
  { from_mm: -3300, to_mm: -1300 },
  { from_mm: -300, to_mm: 300 },
]
const passage: Passage = {
  enter_mm: -100,
  leave_mm: 100,
  clear: 1500,
  views: [{ visible, response_s: 0.1, hold_s: 0 }],
  standing: visible,
}
function struck(given: Passage['quiet'], drive = leaf) {
  const tally = newTally()
  worstOfPassage(closingFrom(drive, drive.way), { ...passage, quiet: given }, [500, 500], tally)
  return tally
}

describe('quietOf', () => {
  it('concludes nothing from what nobody said, from a command by hand, nor from attempts that begin while an output holds', () => {
    expect(quietOf({ cycle: undefined, holdOpen_s: 5 })).toEqual(NO_QUIET)
    for (const cycle of [{ holdOpenFrom: 'clear' }, { holdOpenFrom: 'clear', closesOnlyByTimer: false }] as const)
      expect(quiet(cycle, 5)).toEqual(NO_QUIET)
    const starts = { holdOpenFrom: 'clear', closesOnlyByTimer: true, attempts: 2, attemptWhileHeld: 'starts' } as const
    expect(quiet(starts, 5)).toEqual(NO_QUIET)
    expect(quiet({ ...starts, attempts: 0 }, 5).beforeCommand_s).toBe(5)
  })

  it('counts from the letting go only where the hold-open time does, and no more than the shortest pause between attempts', () => {
    expect(quiet({ holdOpenFrom: 'opened', closesOnlyByTimer: true }, 5).beforeCommand_s).toBe(0)
    expect(quiet({ holdOpenFrom: 'clear', closesOnlyByTimer: true, attempts: 1, attemptPause_s: 2 }, 5).beforeCommand_s).toBe(2)
    expect(quiet({ holdOpenFrom: 'clear', closesOnlyByTimer: true, attempts: 1 }, 5).beforeCommand_s).toBe(5)
  })

  it('adds a warning that an output calls off, and one that waits only after spans that outlast it', () => {
    const timer = { holdOpenFrom: 'clear', closesOnlyByTimer: true, preWarning_s: 2 } as const
    expect(quietAfter_s(quiet({ ...timer, outputInWarning: 'cancels' }, 5), 0.1)).toBe(7)
    expect([quietAfter_s(quiet(timer, 5), 1.9), quietAfter_s(quiet(timer, 5), 2)]).toEqual([0, 7])
    expect(quietAfter_s(quiet({ preWarning_s: 2, outputInWarning: 'cancels' }), 9)).toBe(2)
    expect(quietAfter_s(quiet({ preWarning_s: 2 }), 9)).toBe(0)
  })
})

describe('worstOfPassage', () => {
  // Hand calculation: 2 s lie between the letting go and the next change but for the response: 2.1 s. The leaf has 500 mm to go down to the body, which takes
  // 1.25 s, and is stopped 0.3 s before the body comes: it goes on for 0.1 s and brakes within 125 mm in 0.5 s. It gets to the body's height
  // if it began 1.25 s less about 0.35 s of this before the stop, and no closing begins then that waits for 2 s after the letting go
  it('is not struck between two sights where no closing begins so soon after the first', () => {
    expect(struck(undefined).struck?.leafSpeed).toBeGreaterThan(0)
    expect(struck({ warning_s: 0, cancels: false, beforeCommand_s: 2 }).struck).toBeUndefined()
    expect(struck({ warning_s: 2, cancels: true, beforeCommand_s: undefined }).struck).toBeUndefined()
    expect(struck({ warning_s: 2, cancels: true, beforeCommand_s: undefined }).unproved.struck).toBe(0)
  })

  // Hand calculation: the first sight lasts 4 s, its output 3.9 s; a warning of 5 s that waits may have begun before it
  it('is struck all the same where a command is on its way through the first sight', () => {
    expect(struck({ warning_s: 3.8, cancels: false, beforeCommand_s: 2 }).struck).toBeUndefined()
    expect(struck({ warning_s: 5, cancels: false, beforeCommand_s: 2 }).struck).toBeDefined()
    expect(struck({ warning_s: 5, cancels: true, beforeCommand_s: 2 }).struck).toBeUndefined()
  })
})

describe('foundWhileHeld', () => {
  const found = (clear: number, standing = visible) => {
    const tally = newTally()
    foundWhileHeld(closingFrom(leaf, leaf.way), { ...passage, clear, standing }, tally)
    return tally
  }

  // Hand calculation: 0.1 s at 1000 mm/s2 are 5 mm and 100 mm/s, and 5 mm more of braking: it rests at 1990
  it('strikes whoever stands where an output holds, if the leaf gets as low before it rests', () => {
    expect(found(1991)).toMatchObject({ struck: { whileHeld: true, stands: true, pace: 0 }, unproved: { struck: 0 } })
    const clear = found(1989)
    expect([clear.struck, clear.unproved]).toEqual([undefined, { struck: 0, walked: 0 }])
    expect(clear.gapAtLeast).toBeCloseTo(1, 9)
  })

  it('proves nothing of those who stand nowhere that an output holds, and asks nothing where no output ever acts', () => {
    expect(found(1991, []).unproved).toEqual({ struck: 1, walked: 1 })
    const tally = newTally()
    foundWhileHeld(closingFrom(leaf, leaf.way), { ...passage, clear: 1991, views: [] }, tally)
    expect([tally.struck, tally.unproved.struck]).toEqual([undefined, 0])
  })
})
