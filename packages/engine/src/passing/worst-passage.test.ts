import { describe, expect, it } from 'vitest'
import { closingFrom, type LeafDrive } from '../motion/leaf-run.ts'
import { newTally, type Passage, worstOfPassage } from './worst-passage.ts'

/** The leaf of method-cases T2; the body of T4, 200 mm along its way, past a leaf without thickness. */
const leaf: LeafDrive = {
  way: 2000,
  close: { speed: 500, accel: 1000 },
  open: { speed: 500, accel: 1000 },
  stopDelay_s: 0.1,
  stopDecel: 1000,
  reverseDelay_s: 0.2,
}
const seen = (from_mm: number, to_mm: number, response_s = 0.1, hold_s = 0): Passage => ({
  enter_mm: -100,
  leave_mm: 100,
  clear: 1500,
  views: [{ visible: [{ from_mm, to_mm }], response_s, hold_s }],
  standing: [{ from_mm, to_mm }],
})
const unseen: Passage = { enter_mm: -100, leave_mm: 100, clear: 1500, views: [], standing: [] }
function worst(passage: Passage, speeds: readonly [number, number], drive = leaf, from = drive.way) {
  const tally = newTally()
  worstOfPassage(closingFrom(drive, from), passage, speeds, tally)
  return tally
}

describe('worstOfPassage', () => {
  // method-cases T4, hand calculation: the leaf is open again when the body arrives
  it('is clear by opening less top, 500 mm, for a body at 250 mm/s that is seen within 2500 mm', () => {
    const tally = worst(seen(-2500, 2500), [250, 250])
    expect([tally.struck, tally.walked, tally.gap, tally.gapAtLeast]).toEqual([undefined, undefined, 500, 500])
  })

  // method-cases T5, hand calculation: the length of (500, 1000)
  it('is struck at 1118.0 mm/s where it is never seen and walks at 1000 mm/s', () => {
    const { struck } = worst(unseen, [1000, 1000])
    expect(struck?.relativeSpeed).toBeCloseTo(1118.034, 3)
    expect([struck?.bodySpeed, struck?.leafSpeed, struck?.seen_s, struck?.stands]).toEqual([1000, 500, undefined, false])
  })

  // Hand calculation: seen 300 mm before the leaf's plane it is there 0.3 s later; response and delay take 0.2 s, braking from 500 mm/s another
  // 0.5 s. A leaf in full motion that was 1 mm lower than 1500 mm at 0.3 s strikes with 500 - 0.1 * 1000 = 400 mm/s
  it('is struck by a braking leaf if it is seen too late, and the chain of times adds up', () => {
    const { struck } = worst(seen(-400, 400), [1000, 1000])
    expect(struck?.leafSpeed).toBeCloseTo(400, 0)
    expect(struck?.relativeSpeed).toBeCloseTo(Math.sqrt(1000 * 1000 + 400 * 400), 0)
    expect((struck?.stop_s ?? 0) - (struck?.seen_s ?? 0)).toBeCloseTo(0.1, 9)
    expect((struck?.enters_s ?? 0) - (struck?.seen_s ?? 0)).toBeCloseTo(0.3, 9)
  })

  // Hand calculation: seen 700 mm before the plane it arrives 0.7 s later, when the leaf has just come to rest: it walks into a leaf at rest
  it('walks into a leaf that rests, which is another finding than struck', () => {
    const { struck, walked } = worst(seen(-820, 820), [1000, 1000])
    expect(struck).toBeUndefined()
    expect(walked?.leafSpeed).toBe(0)
    expect(walked?.relativeSpeed).toBeCloseTo(1000, 9)
  })

  // Hand calculation: with slowing from 1000 mm/s within 0.0001 s and no delay the leaf stays where it is when the body comes into sight
  it('takes the phase in which the output is about to change, and that of a body which stands after it', () => {
    const drive = { ...leaf, stopDelay_s: 0, stopDecel: 1e7, reverseDelay_s: undefined }
    const passage = { ...seen(-2500, 2500, 0), clear: 300 }
    const { walked, struck } = worst(passage, [100, 2000], drive)
    expect(struck).toBeUndefined()
    expect(walked?.relativeSpeed).toBeCloseTo(2000, 6)
  })

  it('finds a place to stop in which nobody holds the body', () => {
    const { struck } = worst({ ...seen(-2500, 2500), standing: [{ from_mm: -2500, to_mm: 40 }] }, [250, 250])
    expect([struck?.stands, struck?.place_mm, struck?.leafSpeed]).toEqual([true, 70, 500])
  })

  it('walks into a partial opening that is lower than the body', () => {
    const { struck, walked } = worst({ ...seen(-2500, 2500), clear: 1200 }, [250, 400], leaf, 1000)
    expect([struck, walked?.relativeSpeed, walked?.way]).toEqual([undefined, 400, 1000])
  })

  // Hand calculation: the leaf of method-cases T2 closes from 1000 mm; unseen, a body of 1200 mm comes while the leaf is at its full 500 mm/s
  it('is struck by a leaf that closes from a partial opening lower than the body, if the body comes while it moves', () => {
    const { struck, walked } = worst({ ...unseen, clear: 1200 }, [1000, 1000], leaf, 1000)
    expect(struck?.relativeSpeed).toBeCloseTo(1118.034, 3)
    expect(walked?.relativeSpeed).toBe(1000)
  })

  // Law of the definition: zero response, zero stopping, seen everywhere
  it('never strikes a body that is seen everywhere if response and stopping take no time', () => {
    const drive = { ...leaf, stopDelay_s: 0, stopDecel: 1e12 }
    const tally = worst({ ...seen(-1e6, 1e6, 0), clear: 1900 }, [200, 3000], drive)
    expect([tally.struck, tally.unproved.struck]).toEqual([undefined, 0])
  })
})
