import { describe, expect, it } from 'vitest'
import { closingFrom, type LeafDrive } from '../src/motion/leaf-run.ts'
import { newTally, type Passage, type Tally, worstOfPassage } from '../src/passing/worst-passage.ts'
import { steppedCase } from './stepped-cases.ts'

/** A random passage at one speed, all lengths times `length` and all times times `time`. */
function answer(seed: number, change: { readonly response?: number; readonly length?: number; readonly time?: number } = {}): Tally {
  const { given, speed } = steppedCase(seed)
  const { response = 1, length = 1, time = 1 } = change
  const perTime = length / time
  const limits = (v: number, a: number) => ({ speed: v * perTime, accel: (a * perTime) / time })
  const drive: LeafDrive = {
    way: given.way * length,
    close: limits(given.closeSpeed, given.closeAccel),
    open: limits(given.openSpeed, given.openAccel),
    stopDelay_s: given.delay_s * time,
    stopDecel: (Math.max(given.decel, given.closeAccel) * perTime) / time,
    reverseDelay_s: given.dwell_s === undefined ? undefined : given.dwell_s * time,
  }
  const visible = given.visible.map(([from, to]) => ({ from_mm: from * length, to_mm: to * length }))
  const passage: Passage = {
    enter_mm: given.enter_mm * length,
    leave_mm: given.leave_mm * length,
    clear: given.clear * length,
    views: [{ visible, response_s: given.response_s * response * time, hold_s: given.hold_s * time }],
    standing: visible,
  }
  const tally = newTally()
  worstOfPassage(closingFrom(drive, given.from * length), passage, [speed * perTime, speed * perTime], tally)
  return tally
}

// Laws, no figures: braking at least as hard as speeding up, 150 random passages
describe('the verdict on a passage', () => {
  it('never turns from not struck into struck by a faster response', () => {
    const turned: number[] = []
    let clear = 0
    for (let seed = 1; seed <= 150; seed++) {
      const slow = answer(seed)
      if (slow.struck !== undefined || slow.unproved.struck > 0) continue
      clear++
      if (answer(seed, { response: 0.5 }).struck !== undefined || answer(seed, { response: 0 }).struck !== undefined) turned.push(seed)
    }
    expect(turned).toEqual([])
    expect(clear).toBeGreaterThan(20)
  })

  it('keeps its kind when lengths or times are scaled, and scales its gap and its speed', () => {
    const wrong: string[] = []
    for (let seed = 1; seed <= 60; seed++) {
      const plain = answer(seed)
      if (plain.unproved.struck + plain.unproved.walked > 0 || plain.gap ** 2 < 4) continue
      for (const [length, time] of [
        [2, 1],
        [1, 2],
      ] as const) {
        const scaled = answer(seed, { length, time })
        const kinds = (tally: Tally) => `${tally.struck !== undefined} ${tally.walked !== undefined}`
        if (kinds(scaled) !== kinds(plain)) wrong.push(`${seed}: ${kinds(plain)}, scaled ${kinds(scaled)}`)
        // the fastest contact lies between what was found and what none exceeds
        const [found, most] = [scaled.struck?.relativeSpeed ?? 0, scaled.struckAtMost]
        const [foundPlain, mostPlain] = [plain.struck?.relativeSpeed ?? 0, plain.struckAtMost].map((speed) => (speed * length) / time)
        if (found > (mostPlain ?? 0) + 8 || (foundPlain ?? 0) > most + 8) wrong.push(`${seed}: speed ${found} of ${foundPlain}`)
        if (kinds(plain) === 'false false' && Math.abs(scaled.gap - plain.gap * length) > 1.5)
          wrong.push(`${seed}: gap ${scaled.gap} of ${plain.gap}`)
      }
    }
    expect(wrong).toEqual([])
  })

  it('is never struck for a body that is seen a millimetre before the plane and throughout, without response time and stopping way', () => {
    const struck: number[] = []
    let walked = 0
    for (let seed = 1; seed <= 150; seed++) {
      const { given, speed } = steppedCase(seed)
      const drive: LeafDrive = {
        way: given.way,
        close: { speed: given.closeSpeed, accel: given.closeAccel },
        open: { speed: given.openSpeed, accel: given.openAccel },
        stopDelay_s: 0,
        stopDecel: 1e9,
        reverseDelay_s: given.dwell_s,
      }
      const visible = [{ from_mm: given.enter_mm - 1, to_mm: given.leave_mm + 1 }]
      const views = [{ visible, response_s: 0, hold_s: given.hold_s }]
      const passage: Passage = { enter_mm: given.enter_mm, leave_mm: given.leave_mm, clear: given.clear, views, standing: visible }
      const tally = newTally()
      worstOfPassage(closingFrom(drive, given.from), passage, [speed, speed], tally)
      if (tally.struck !== undefined || tally.unproved.struck > 0) struck.push(seed)
      if (tally.walked !== undefined) walked++
    }
    expect(struck).toEqual([])
    expect(walked).toBeGreaterThan(50)
  })
})
