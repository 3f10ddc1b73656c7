import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, cylinder, plainDoor } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import { randomNumbers } from '../../cases/random-numbers.ts'
import { mayBegin, phase, STEP_S, walk } from '../../cases/stepped-turning.ts'
import { forEngine, turningCase } from '../../cases/turning-cases.ts'
import type { Door } from '../model/door.ts'
import type { Lane } from '../model/traffic.ts'
import { worstOfTurningFalls } from './turning-falls.ts'
import { turningPassages } from './turning-ways.ts'
import { newTally } from './worst-passage.ts'

const hinged = { hinge: 'at-zero', opensTo: 'a', length_mm: 1000, secondPanel_mm: 1000, openAngle_rad: 1.4 } as const
const leaf = { travel: 'turning', thickness_mm: 40, bulge_mm: 0, hinged } as const
const person = bodyOf([box(400, 300, 1700), { ...box(400, 1200, 250), lies: true }])
const seen = bodyOf([box(400, 300, 1700), { ...box(400, 1200, 350), lies: true }])
const judged = (changes: Partial<Door> = {}, lane: Partial<Lane> = {}) =>
  findingOf(
    'struck-by-leaf',
    plainDoor({
      leaf,
      bodies: [person],
      sensors: wideGrid({ hold_s: 1 }),
      drive: driven(),
      zones: [],
      lanes: [laneOf({ xMin_mm: 900, xMax_mm: 1300, from: ['a'], slowest_mm_per_s: 250, fastest_mm_per_s: 300, ...lane })],
      ...changes,
    }),
  )

describe('somebody who falls before a leaf that folds', () => {
  // beams at 300: whoever stands is seen, whoever lies 250 high is not
  it('is struck where no field sees the body that lies, though it was seen upright all the way', () => {
    expect(judged().verdict).toBe('pass')
    expect(judged({}, { falls: true })).toMatchObject({
      verdict: 'fail',
      facts: { stands: true, body_mm_per_s: 0 },
      worstCase: { posture: 1 },
    })
  })

  it('is not struck where the field sees the body lying too, and holds it', () => {
    expect(judged({ bodies: [seen] }, { falls: true }).verdict).toBe('pass')
  })

  // Second method, ours: the stepper lets the body come, fall at a place and stay there
  it('is struck by no phase of the stepper where it is said to be safe, and by one where it is said to be struck (seeds 1 to 24)', () => {
    const wrong: string[] = []
    const kinds = { struck: 0, clear: 0, unproved: 0 }
    for (let seed = 1; seed <= 24; seed++) {
      const given = { ...turningCase(seed), fromAngle: turningCase(seed).openAngle, stoppingCurve: undefined }
      const random = randomNumbers(seed)
      const from_mm = given.begins - random.between(300, 1500)
      const upright = [{ from_mm, to_mm: random.chance(0.4) ? random.between(given.begins, given.ends) : given.ends + 500 }]
      const lying = [{ from_mm: random.chance(0.2) ? given.begins + 200 : given.begins - 3000, to_mm: given.ends + 3000 }]
      const { closing, leaf: hung, stance } = forEngine({ ...given, decel: Math.max(given.decel, given.closeAccel) })
      const { response_s, hold_s, speed, heading } = given
      const tally = newTally()
      for (const passage of turningPassages(hung, stance, given.body.x, heading > 0 ? 'b' : 'a', { views: [], standing: [] }))
        worstOfTurningFalls(closing, passage, [{ upright, lying, response_s, hold_s }], [speed, speed], tally)
      const kind = tally.struck ? 'struck' : tally.unproved.struck > 0 ? 'unproved' : 'clear'
      kinds[kind]++
      const places = [0.15, 0.4, 0.6, 0.85].map((share) => given.begins + share * (given.ends - given.begins))
      let stepped = 0
      for (const falls_mm of [...places, ...(tally.struck ? [tally.struck.place_mm] : [])]) {
        const before = upright.flatMap((each) =>
          each.from_mm < falls_mm ? [[each.from_mm, Math.min(each.to_mm, falls_mm - 1e-3)] as const] : [],
        )
        const isSeen = lying.some((each) => each.from_mm <= falls_mm && falls_mm <= each.to_mm)
        const visible = isSeen ? [...before, [falls_mm - 1e-3, falls_mm + 1] as const] : before
        const whole = { ...given, decel: Math.max(given.decel, given.closeAccel), begins: falls_mm - 1e-6, visible }
        const pass = walk(whole, falls_mm)
        const arrives = Math.floor((falls_mm - pass.start) / speed / STEP_S)
        for (let k = -30_000; k <= Math.min(pass.steps, arrives + 25_000); k += 700)
          if (mayBegin(pass, k) && phase(whole, pass, k).kind === 'struck') stepped++
      }
      if (kind === 'clear' && stepped > 0) wrong.push(`seed ${seed}: ${stepped} phases struck where none was to be`)
      if (kind === 'struck' && stepped === 0) wrong.push(`seed ${seed}: no phase struck`)
    }
    expect(wrong).toEqual([])
    expect(kinds.struck).toBeGreaterThan(3)
    expect(kinds.clear).toBeGreaterThan(3)
    expect(kinds.unproved).toBeLessThan(4)
  })
})

describe('somebody who follows through a leaf that folds', () => {
  const small = bodyOf([cylinder(200, 1700)])
  it('is no worse off behind another where both are seen alike, and the finding says how far behind', () => {
    expect(judged({ bodies: [small] }, { followGap_mm: 500 })).toMatchObject({ verdict: 'pass', facts: { followGap_mm: 500 } })
  })

  it('is struck for itself: one ahead that is seen does not hold the leaf for one that is not', () => {
    // the grid ends at y = 150: whoever is beyond is unseen, and his outputs let go after a second
    const short = wideGrid({ hold_s: 0.2 }).map((sensor) => ({ ...sensor, planes: sensor.planes.slice(16) }))
    const found = judged({ bodies: [small], sensors: short }, { followGap_mm: 300, from: ['b'] })
    expect(found.verdict).toBe('fail')
  })
})
