import { describe, expect, it } from 'vitest'
import { findingOf } from '../../cases/judged.ts'
import { bodyOf, box, plainDoor } from '../../cases/plain-door.ts'
import { driven, laneOf, wideGrid } from '../../cases/plain-traffic.ts'
import type { Door } from '../model/door.ts'

const standing = bodyOf([box(300, 200, 1500)])
const judged = (changes: Partial<Door> = {}) =>
  findingOf('struck-by-leaf', plainDoor({ bodies: [standing], sensors: wideGrid(), drive: driven(), lanes: [laneOf()], ...changes }))

describe('struck-by-leaf', () => {
  // method-cases T4, hand calculation, in a doorway of 2500 mm: the leaf is open again when the body arrives
  it('passes with the gap of the open leaf where a body is seen long before it arrives', () => {
    expect(judged({ lanes: [laneOf({ fastest_mm_per_s: 300 })] })).toMatchObject({
      id: 'struck-by-leaf:lane',
      verdict: 'pass',
      measured: { value: 1000, unit: 'mm' },
      facts: { lane: 'lane', who: 'vehicles', passages: 6 },
    })
  })

  // method-cases T5, hand calculation
  it('fails at 1118.0 mm/s where nobody is seen and walks at 1000 mm/s, and says what meets', () => {
    const lane = laneOf({ slowest_mm_per_s: 1000, fastest_mm_per_s: 1000 })
    const finding = judged({ sensors: [], lanes: [lane], drive: driven({ movingMass_kg: 100 }) })
    expect(finding).toMatchObject({
      verdict: 'fail',
      measured: { value: Math.sqrt(500 * 500 + 1000 * 1000), unit: 'mm_per_s' },
      facts: { body_mm_per_s: 1000, leaf_mm_per_s: 500, isSeen: false, energy_J: 12.5 },
      worstCase: { body: 'body', posture: 0, z_mm: 0 },
    })
    expect(finding.steps.map(({ name }) => name)).toContain('relative speed')
  })

  it('shows the chain of times where the output comes too late', () => {
    const finding = judged({ sensors: wideGrid({ response_s: 9.3 }), lanes: [laneOf({ slowest_mm_per_s: 250, fastest_mm_per_s: 250 })] })
    expect(finding.verdict).toBe('fail')
    const at = (name: string) => finding.steps.find((step) => step.name === name)?.quantity.value ?? Number.NaN
    expect(at('output changes') - at('body becomes visible')).toBeCloseTo(9.3, 9)
  })

  it('asks for everything that nobody entered', () => {
    expect(judged({ drive: undefined })).toMatchObject({ reason: 'missing-input', needs: ['survey/drive'] })
    const drive = driven({ stopDelay_s: undefined, afterStop: undefined })
    expect(judged({ drive })).toMatchObject({ needs: ['survey/drive/stopDelay_s', 'survey/drive/afterStop'] })
    expect(judged({ lanes: [laneOf({ fastest_mm_per_s: undefined })] })).toMatchObject({ needs: ['survey/lanes/0/fastest_m_per_s'] })
    expect(judged({ sensors: wideGrid({ hold_s: undefined }).slice(0, 1) })).toMatchObject({ needs: ['sensors/0/fields/0/hold_s'] })
  })

  it('asks how a leaf without a brake coasts, takes no figure of braking for it, and judges by it', () => {
    const coasting = (coastDecel_mm_per_s2?: number) => driven({ brake: 'none', stopDecel_mm_per_s2: 5000, coastDecel_mm_per_s2 })
    expect(judged({ drive: coasting() })).toMatchObject({
      verdict: 'undetermined',
      reason: 'missing-input',
      needs: ['survey/drive/coastDecel_m_per_s2'],
    })
    const as = (drive: ReturnType<typeof driven>) => {
      const { verdict, measured } = judged({ drive, lanes: [laneOf({ fastest_mm_per_s: 900 })] }) as {
        verdict: string
        measured?: { value: number }
      }
      return [verdict, measured?.value]
    }
    expect(as(coasting(60))).toEqual(as(driven({ stopDecel_mm_per_s2: 60 })))
    expect([as(coasting(60))[0], as(driven({ stopDecel_mm_per_s2: 5000 }))[0]]).toEqual(['fail', 'pass'])
  })

  it('tells when the closing was commanded before its warning, and since when no output acted at the latest', () => {
    const cycle = {
      holdOpenFrom: 'clear',
      closesOnlyByTimer: true,
      preWarning_s: 1.5,
      outputInWarning: 'cancels',
      attempts: 2,
      attemptPause_s: 3,
      attemptWhileHeld: 'waits',
      afterAttempts: 'stays-open',
    } as const
    const finding = judged({ sensors: wideGrid({ response_s: 9.3 }), drive: driven({ holdOpen_s: 4, cycle }) })
    expect(finding.facts).toMatchObject({ warning_s: 1.5, commandedAfter_s: 3, attempts: 2 })
    expect(finding.course?.warns_s).toBe(-1.5)
    const at = (name: string) => finding.steps.find((step) => step.name === name)?.quantity.value
    expect(at('closing is commanded, the warning begins')).toBe(-1.5)
    expect(at('the last output before has let go, at the latest')).toBe(-4.5)
    expect(finding.course?.leaf[0]?.[0]).toBeLessThanOrEqual(-1.5)
  })

  it('strikes whoever stands where an output holds, where attempts begin all the same and the leaf gets so low', () => {
    const cycle = {
      holdOpenFrom: undefined,
      closesOnlyByTimer: undefined,
      preWarning_s: undefined,
      outputInWarning: undefined,
      attempts: 1,
      attemptPause_s: undefined,
      attemptWhileHeld: 'starts',
      afterAttempts: undefined,
    } as const
    const tall = bodyOf([box(300, 200, 2495)])
    const lanes = [laneOf({ fastest_mm_per_s: 300 })]
    expect(judged({ lanes, bodies: [tall], drive: driven({ cycle }) })).toMatchObject({ verdict: 'fail', facts: { whileHeld: true } })
    expect(judged({ lanes, drive: driven({ cycle }) })).toMatchObject({ verdict: 'pass', measured: { value: 990 } }) // 10 mm down, on paper
  })

  it('asks how a leaf that turns is hung', () => {
    const leaf = { travel: 'turning', thickness_mm: 40, bulge_mm: 0 } as const
    expect(judged({ leaf })).toMatchObject({ verdict: 'undetermined', reason: 'missing-input', needs: ['survey/leaf/hinged'] })
  })

  it('counts on a field with blanking windows down to the window, and settles nothing that it may see', () => {
    const blanked = (to_mm: number) => judged({ sensors: wideGrid({ blanking: [{ from_mm: 0, to_mm }] }) })
    expect(blanked(100)).toMatchObject({ verdict: 'pass', facts: { leafMatters: true } })
    // open, it does not act either: whoever stands there is struck, if nothing is seen
    expect(blanked(2500)).toMatchObject({ verdict: 'undetermined', reason: 'not-proved', facts: { isSeen: false, leafMatters: true } })
  })

  it('fails where somebody would be struck though the leaf were away, and does not judge sights that the leaf changes where brakes are weak', () => {
    const short = wideGrid({ blanking: [{ from_mm: 0, to_mm: 100 }], response_s: 20 })
    expect(judged({ sensors: short })).toMatchObject({ verdict: 'fail' })
    const weak = { sensors: wideGrid({ leafHides: true }), drive: driven({ stopDecel_mm_per_s2: 100 }) }
    expect(judged(weak)).toMatchObject({ verdict: 'undetermined', reason: 'not-computable' })
  })

  it('fails where only some yaws were tried and one is struck, and does not pass by them', () => {
    const turned = bodyOf([box(300, 200, 1500, [0, 20])])
    expect(judged({ bodies: [turned] })).toMatchObject({ verdict: 'undetermined', reason: 'yaw-range-sampled' })
    expect(judged({ bodies: [turned], sensors: [] }).verdict).toBe('fail')
  })

  // Hand calculation: the edge of a leaf 2000 long at a right angle goes 3141.6 mm; unseen, the body is met by a leaf at full speed, 0.25 per s at its edge
  it('knows leaves that swing: one is clear while the body is seen all the way, and strikes one that nobody sees', () => {
    const hinged = { hinge: 'at-zero', opensTo: 'a', length_mm: 2000, secondPanel_mm: undefined, openAngle_rad: Math.PI / 2 } as const
    const leaf = { travel: 'turning', thickness_mm: 40, bulge_mm: 0, hinged } as const
    const lanes = [laneOf({ xMin_mm: 900, xMax_mm: 1100, slowest_mm_per_s: 300, fastest_mm_per_s: 400, from: ['b'] })]
    const seen = judged({ leaf, lanes })
    const unseen = judged({ leaf, lanes, sensors: [] })
    expect([seen.verdict, unseen.verdict]).toEqual(['pass', 'fail'])
    expect(unseen.verdict === 'fail' && unseen.measured.value).toBeLessThanOrEqual(400 + 500)
    expect(unseen.facts['angle_deg']).toBeGreaterThan(0)
  })

  it('has no subject without lanes', () => {
    expect(judged({ lanes: [] })).toMatchObject({ verdict: 'not-applicable', reason: 'no-subject' })
  })

  // Hand calculation: a leaf from x = 2000 toward 0 meets a body 300 wide in the middle when its edge has 1150 still to go
  it('knows sliding leaves: the edge has to stay beyond the side of the body', () => {
    const leaf = { travel: 'toward-zero', thickness_mm: 40, bulge_mm: 0 } as const
    expect(judged({ leaf, lanes: [laneOf({ xMin_mm: 900, xMax_mm: 1100 })] })).toMatchObject({ verdict: 'pass', measured: { value: 850 } })
    const found = judged({ leaf, sensors: [] })
    expect([found.verdict, found.facts['leaf_mm_per_s']]).toEqual(['fail', 500])
  })
})
