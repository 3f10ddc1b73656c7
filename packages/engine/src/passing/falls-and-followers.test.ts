import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, cylinder, downward, plainDoor } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { steppedCase } from '../../cases/stepped-cases.ts'
import { mayBegin, STEP_S, stepPass, stepPhase } from '../../cases/stepped-leaf.ts'
import { seenAlong } from '../coverage/seen-along.ts'
import type { Door } from '../model/door.ts'
import type { Lane } from '../model/traffic.ts'
import { closingFrom } from '../motion/leaf-run.ts'
import { worstOfFalls } from './falls.ts'
import { withAnother } from './follow-on.ts'
import { leafPlane } from './leaf-plane.ts'
import { newTally } from './worst-passage.ts'

// beams at 300: whoever stands is seen, whoever lies 250 high is not
const person = bodyOf([box(400, 300, 1700), { ...box(400, 1700, 250), lies: true }])
const judged = (changes: Partial<Door> = {}, lane: Partial<Lane> = {}) =>
  findingOf(
    'struck-by-leaf',
    plainDoor({
      bodies: [person],
      sensors: wideGrid(),
      drive: driven(),
      zones: [],
      lanes: [laneOf({ slowest_mm_per_s: 250, fastest_mm_per_s: 300, ...lane })],
      ...changes,
    }),
  )

describe('somebody who falls', () => {
  it('is struck where no field sees the body that lies, though it was seen upright all the way', () => {
    expect(judged().verdict).toBe('pass')
    // Hand calculation: the leaf slows over 125 mm; at 250 it still has its 500 mm/s
    expect(judged({}, { falls: true })).toMatchObject({
      verdict: 'fail',
      measured: { value: 500, unit: 'mm_per_s' },
      facts: { stands: true, body_mm_per_s: 0 },
      worstCase: { posture: 1 },
    })
  })

  it('is not struck where the field sees the body lying too, and holds it', () => {
    const seen = bodyOf([box(400, 300, 1700), { ...box(400, 1700, 350), lies: true }])
    expect(judged({ bodies: [seen] }, { falls: true }).verdict).toBe('pass')
    expect(judged({ bodies: [seen], sensors: wideGrid({ presenceTime_s: 20 }) }, { falls: true, longestStay_s: 60 }).verdict).toBe('fail')
  })

  it('needs a posture that lies', () => {
    expect(judged({ bodies: [bodyOf([box(400, 300, 1700)])] }, { falls: true })).toMatchObject({
      reason: 'missing-input',
      needs: ['bodies/0/postures'],
    })
  })

  // Second method, ours: the stepper lets the body walk, fall at a place and stay there
  it('is struck by no phase of the stepper where it is said to be safe (seeds 1 to 40)', () => {
    const wrong: string[] = []
    const kinds = new Set<boolean>()
    for (let seed = 1; seed <= 40; seed++) {
      const { given, speed } = steppedCase(seed)
      const random = randomNumbers(seed)
      const clear = given.way * random.between(0.05, 0.3)
      const from_mm = random.between(-2500, -1200)
      const gaps = random.chance(0.5) ? [[from_mm, random.between(-300, 300)]] : [[from_mm, 3000]]
      const upright = gaps.map(([a = 0, b = 0]) => ({ from_mm: a, to_mm: b }))
      const lying = [{ from_mm: random.chance(0.3) ? -200 : -3000, to_mm: 3000 }]
      const drive = {
        way: given.way,
        close: { speed: given.closeSpeed, accel: given.closeAccel },
        open: { speed: given.openSpeed, accel: given.openAccel },
        stopDelay_s: given.delay_s,
        stopDecel: Math.max(given.decel, given.closeAccel),
        reverseDelay_s: given.dwell_s,
      }
      const tally = newTally()
      const { response_s, hold_s } = given
      worstOfFalls(
        closingFrom(drive, given.way),
        { enter_mm: -400, leave_mm: 400, clear, views: [{ upright, lying, response_s, hold_s }] },
        [speed, speed],
        tally,
      )
      kinds.add(tally.struck === undefined)
      if (tally.struck !== undefined || tally.unproved.struck > 0) continue
      for (const falls_mm of [-201, random.between(-350, 350), 399]) {
        const before = upright.flatMap((each) =>
          each.from_mm < falls_mm ? [[each.from_mm, Math.min(each.to_mm, falls_mm - 1e-3)] as const] : [],
        )
        const isSeen = lying.some((each) => each.from_mm <= falls_mm && falls_mm <= each.to_mm)
        const visible = isSeen ? [...before, [falls_mm - 1e-3, falls_mm + 1] as const] : before
        const whole = {
          ...given,
          from: given.way,
          decel: drive.stopDecel,
          clear,
          enter_mm: falls_mm - 1e-6,
          leave_mm: falls_mm + 1,
          visible,
        }
        const pass = stepPass(whole, { speed, stopsAt_mm: falls_mm })
        const arrives = Math.floor((falls_mm - pass.start_mm) / speed / STEP_S)
        for (let k = -30_000; k <= arrives + 20_000; k += 700) {
          if (!mayBegin(pass, k)) continue
          const phase = stepPhase(whole, pass, k)
          if (phase.kind === 'struck' && phase.gap < -2) wrong.push(`seed ${seed}: fall at ${falls_mm}, phase ${k}, gap ${phase.gap}`)
        }
      }
    }
    expect(wrong).toEqual([])
    expect(kinds.size).toBe(2)
  })
})

describe('somebody who follows', () => {
  const small = bodyOf([cylinder(200, 1700)])
  it('is no worse off behind another where both are seen alike, and the finding says how far behind', () => {
    expect(judged({ bodies: [small] }, { followGap_mm: 500 })).toMatchObject({ verdict: 'pass', facts: { followGap_mm: 500 } })
  })

  // Hand calculation: a beam from (1500, 2400) down by 45 degrees toward side B meets a body at y = 0 at about 900; one ahead, 2300 high, is met before
  it('is hidden by one ahead that is too dark to be seen, and is not met in its place', () => {
    const sensor = downward([{ x_mm: 500, y_mm: 1500, z_mm: 2400 }], {}, {}, -45)
    const dark = bodyOf([box(600, 600, 2300)], { id: 'dark', reflectance: 1e-6 })
    const door = plainDoor({ bodies: [small, dark], sensors: [sensor] })
    const [state, field] = [door.states[0], sensor.fields[0]]
    const [self, other] = [small, dark].map((body) => ({ body, posture: body.postures[0], index: 0, yaw_rad: 0 }))
    if (!state || !field || !self?.posture || !other?.posture) throw new Error('the plain door must have all of these')
    const ask = seenAlong(door, state, { sensor, field })
    const alone = { ...self, posture: self.posture }
    const behind = withAnother(alone, { ...other, posture: other.posture }, 100, true)
    const sees = (stance: typeof behind) => ask(stance)(500, -100, 100).length > 0
    expect([sees(alone), sees(behind)]).toEqual([true, false])
    expect(leafPlane(door, state)?.met(behind, 500)).toEqual([{ name: '', index: 0, from_mm: -200, to_mm: 200, clear: 1700 }])
  })
})
