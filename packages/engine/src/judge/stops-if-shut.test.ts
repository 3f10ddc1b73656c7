import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, fromMemory, measured, plainDoor } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import type { Door } from '../model/door.ts'
import type { Braking } from '../model/traffic.ts'

const truck = bodyOf([box(300, 200, 1500)])
const braking = (changes: Partial<Braking> = {}): Braking => ({
  reaction_s: 1,
  decel_mm_per_s2: 1000,
  fall: 0,
  source: measured,
  ...changes,
})
const lane = (fastest_mm_per_s: number, changes: Partial<Braking> = {}) => [laneOf({ fastest_mm_per_s, braking: braking(changes) })]
const judged = (changes: Partial<Door> = {}) => {
  const sensors = wideGrid({ function: 'call' })
  return findingOf(
    'stops-if-shut',
    plainDoor({ bodies: [truck], sensors, drive: driven({ openDelay_s: 0.4 }), lanes: lane(1000), ...changes }),
  )
}

// The grid calls 2380 mm before the leaf, at most 1 mm less, with a response of 0.1 s.
describe('stops-if-shut', () => {
  // Hand calculation: 1000 mm/s for 0.1 + 0.4 s, then 1000 * 1 + 1000^2 / 2000: 500 + 1500 = 2000
  // Hand calculation (passing/leaf-approach.test.ts): found 2400 before y = 0, 1810.4 of which the leaf runs over; on the other side 20
  it('lets the vehicle stop before all that a leaf that swings runs over', () => {
    const hinged = { hinge: 'at-zero', opensTo: 'a', length_mm: 2000, secondPanel_mm: undefined, openAngle_rad: Math.PI / 2 } as const
    const leaf = { travel: 'turning', thickness_mm: 40, bulge_mm: 0, hinged } as const
    const from = (side: 'a' | 'b') =>
      judged({ leaf, lanes: lane(1000).map((each) => ({ ...each, xMin_mm: 850, xMax_mm: 1150, from: [side] })) })
    expect([from('a').verdict, from('b').verdict]).toEqual(['fail', 'pass'])
    expect(from('a').facts['left_mm']).toBeLessThan(590 - 2000)
  })

  it('passes where the vehicle stands before the leaf although it stayed shut', () => {
    expect(judged()).toMatchObject({ verdict: 'pass', limit: { value: 2000 }, facts: { wait_s: 0.5, stopping_mm: 1500 } })
  })

  // Hand calculation: 1200 * 0.5 + 1200 + 720 = 2520; the pace that would do solves 1.5 v + v^2 / 2000 = 2380: 1147.6 mm/s
  it('fails where it does not, and says the pace at which it would', () => {
    const late = judged({ lanes: lane(1200) })
    expect(late).toMatchObject({ verdict: 'fail', limit: { value: 2520 } })
    const slower = Number(late.facts['slower_mm_per_s'])
    expect(Math.abs(slower - 1147.6)).toBeLessThan(1)
    expect(judged({ lanes: lane(slower - 0.01) }).verdict).toBe('pass')
  })

  // Hand calculation: 1000 - 0.05 * 9806.65 = 509.67 are left: 500 + 1000 + 1e6 / 1019.34 = 2481.03
  it('takes the fall of the way off the braking', () => {
    const falling = judged({ lanes: lane(1000, { fall: 0.05 }) })
    expect(falling.verdict).toBe('fail')
    expect(falling.verdict === 'fail' && falling.limit.value).toBeCloseTo(2481.03, 1)
  })

  it('does not pass by braking that is only remembered, and asks for braking that nobody entered', () => {
    expect(judged({ lanes: lane(1000, { source: fromMemory }) })).toMatchObject({ verdict: 'undetermined', reason: 'limit-from-memory' })
    expect(judged({ lanes: [laneOf()] })).toMatchObject({ needs: ['survey/lanes/0/braking'] })
  })
})
