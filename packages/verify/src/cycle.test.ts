import { describe, expect, it } from 'vitest'
import { cycleOf, forbids, waitAfter } from './cycle.ts'
import { Refusal } from './json.ts'

const span = { on: 10, off: 14 }
const times = [9.9, 10.1, 13.9, 14.1, 15.9, 16.1, 18.9, 19.1]
const free = (cycle: Parameters<typeof forbids>[0], one = span) => times.filter((time) => !forbids(cycle, one, time, 0))

describe('what the control waits for', () => {
  it('is read from hold-open time, pause, warning and attempts, and is nothing where nobody said that the timer alone closes', () => {
    const drive = { holdOpen_s: 5 }
    expect(cycleOf({}, drive)).toEqual({ warning: 0, cancels: false, pause: undefined })
    expect(cycleOf({ closesOnlyByTimer: 'yes' }, drive).pause).toBe(0)
    const clear = { closesOnlyByTimer: 'yes', holdOpenFrom: 'clear' }
    expect(cycleOf(clear, drive).pause).toBe(5)
    expect(cycleOf({ ...clear, attempts: 2, attemptPause_s: 3 }, drive).pause).toBe(3)
    expect(cycleOf({ ...clear, attempts: 0, attemptPause_s: 3 }, drive).pause).toBe(5)
    expect(() => cycleOf({ attempts: 1, attemptWhileHeld: 'starts' }, drive)).toThrow(Refusal)
    expect(() => cycleOf({ preWarning_s: -1 }, drive)).toThrow(Refusal)
    expect(() => cycleOf({ preWarning_s: 'x' }, drive)).toThrow(Refusal)
  })

  // Worked on paper: an output on from 10 to 14 s, a warning of 2 s, a hold-open time of 3 s
  it('keeps closings off for the warning where an output cancels it, and for the hold-open time by the timer', () => {
    expect(free({ warning: 2, cancels: true, pause: undefined })).toEqual([9.9, 16.1, 18.9, 19.1])
    expect(free({ warning: 2, cancels: true, pause: 3 })).toEqual([9.9, 19.1])
    expect(free({ warning: 2, cancels: false, pause: undefined })).toEqual([9.9, 14.1, 15.9, 16.1, 18.9, 19.1])
    expect(free({ warning: 2, cancels: false, pause: 3 })).toEqual([9.9, 19.1])
    // a warning of 6 s outlasts the output: what was commanded before it may begin up to 16 s
    expect(free({ warning: 6, cancels: false, pause: 0 })).toEqual([9.9, 14.1, 15.9])
    expect([4, 3.9].map((lasted) => waitAfter({ warning: 4, cancels: false, pause: 3 }, lasted))).toEqual([7, 0])
  })
})
