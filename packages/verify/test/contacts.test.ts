import { describe, expect, it } from 'vitest'
import { type PassingFile, passingFile, verifiedPassages } from './passing-doors.ts'
import { diceOf } from './random-numbers.ts'

/** The leaf of method-cases T2, 20 mm thick; a body of 300 x 200 from side A at 1000 mm/s, so that its middle is at most 110 mm away when it is met. */
function doorWith(height_mm: number, grids_mm: readonly number[]): PassingFile {
  const file = passingFile(diceOf(1))
  const [grid] = file.sensors
  if (grid === undefined) throw new Error('the door must have a grid')
  file.survey.opening = { width_mm: 1000, height_mm: 2000 }
  file.survey.leaf = { travel: 'down', thickness_mm: 20, parked: 'none' }
  file.survey.floor = { profile_mm: [[0, 0]], slopeX_percent: 0 }
  file.survey.drive = {
    closeSpeed_m_per_s: 0.5,
    closeAccel_m_per_s2: 1,
    stopDelay_s: 0.1,
    stopDecel_m_per_s2: 1,
    afterStop: 'reverse',
    reverseDelay_s: 0.2,
    openSpeed_m_per_s: 0.5,
    openAccel_m_per_s2: 1,
  }
  file.survey.lanes = [
    {
      id: 'lane',
      who: 'people',
      xMin_mm: 100,
      xMax_mm: 900,
      slowest_m_per_s: 1,
      fastest_m_per_s: 1,
      directions: ['from-a'],
      longestStay_s: 60,
    },
  ]
  file.sensors = grids_mm.map((y) => {
    const at = structuredClone(grid)
    const [plane] = at.planes
    const [field] = at.fields
    if (plane === undefined || field === undefined) throw new Error('the grid must have a plane and a field')
    plane.between_mm = [
      [-50, y],
      [1050, y],
    ]
    Object.assign(field, { response_s: 0.1, hold_s: 0 })
    return at
  })
  file.bodies = [{ id: 'box', reflectance: 0.1, postures: [{ shape: 'box', size_mm: [300, 200, height_mm] }] }]
  return file
}

/** `accepted`, or the place of what does not hold. */
function answer(file: PassingFile, change: object): string {
  const contact = { lane: 'lane', state: 'as-surveyed', body: 'box', posture: 0, yaw_deg: 0, x_mm: 500, from: 'a', opening_mm: 2000 }
  const result = verifiedPassages(file, [], [{ ...contact, pace_mm_per_s: 1000, standsAt_mm: null, ...change }])
  return result.ok ? 'accepted' : `${result.issues[0]?.code} ${result.issues[0]?.path}`
}

describe('a contact, hand calculation', () => {
  // after 1.3 s the leaf has gone 125 + 400 mm and has 1475 to go, at 500 mm/s
  it('is where the leaf is lower than the body, and nowhere else', () => {
    const unseen = doorWith(1500, [])
    const relative_mm_per_s = Math.sqrt(1000 * 1000 + 500 * 500)
    expect(answer(unseen, { begins_s: -1.4, contact_s: 1.3, relative_mm_per_s })).toBe('accepted')
    expect(answer(unseen, { begins_s: -1.1, contact_s: 1, relative_mm_per_s })).toBe('not-shown contacts/0') // 1625 mm
  })

  it('is one wherever the leaf changes what a presence field sees, unless stops are weak; and none where times are not known', () => {
    const claim = { begins_s: -1.4, contact_s: 1.3, relative_mm_per_s: Math.sqrt(1000 * 1000 + 500 * 500) }
    const far = doorWith(1500, [-5000]) // behind the leaf, and sees nobody before the contact
    expect(answer(far, claim)).toBe('accepted')
    const changed = (change: object) => {
      const file = doorWith(1500, [-5000])
      Object.assign(file.sensors[0]?.fields[0] ?? {}, change)
      return file
    }
    expect(answer(changed({ hold_s: undefined }), claim)).toBe('cannot-show contacts/0')
    expect(answer(changed({ leafHides: 'what nobody knows' }), claim)).toBe('unknown sensors/0/fields/0/leafHides')
    // it can only see less than with the leaf away, and a stop that comes later is no better
    for (const change of [
      { leafHides: 'bodies' },
      { leafBlanking: { beside_mm: 10, before_mm: 10 } },
      { blanking: [{ from_mm: 0, to_mm: 10 }] },
    ]) {
      const file = changed(change)
      expect(answer(file, claim)).toBe('accepted')
      file.survey.drive['stopDecel_m_per_s2'] = 0.9
      expect(answer(file, claim)).toBe('cannot-show contacts/0')
    }
  })

  it("is while the body is in the leaf's plane", () => {
    const relative_mm_per_s = Math.sqrt(1000 * 1000 + 500 * 500)
    expect(answer(doorWith(1500, []), { begins_s: -2, contact_s: 1.3, relative_mm_per_s })).toBe('not-shown contacts/0/contact_s')
  })

  // A grid 500 mm before the leaf sees the body from 0.6 to 0.4 s before it is at y = 0, so that its output forbids closing from 0.5 to 0.4 s before
  it('is in a closing that no output forbids to begin', () => {
    const seen = doorWith(1990, [500])
    const slow = { contact_s: 0.4, relative_mm_per_s: Math.sqrt(1000 * 1000 + 400 * 400) } // 80 mm down at 400 mm/s
    expect(answer(seen, { ...slow, begins_s: -0.45 })).toBe('not-shown contacts/0/begins_s')
    expect(answer(seen, { ...slow, begins_s: -0.35 })).toBe('accepted')
  })

  // Begun 0.8 s before, it is told to stop after 0.3 s, brakes from 400 mm/s after 0.4 s and rests after 0.8 s, 160 mm down
  it('is while the leaf still moves, stopped by the first output that changes', () => {
    const seen = doorWith(1990, [500])
    const at = (contact_s: number, leaf: number) => ({ begins_s: -0.8, contact_s, relative_mm_per_s: Math.sqrt(1000 * 1000 + leaf * leaf) })
    expect(answer(seen, at(0.7, 100))).toBe('accepted')
    expect(answer(seen, at(0.85, 0))).toBe('not-shown contacts/0/contact_s')
    expect(answer(seen, at(0.7, 500))).toBe('not-shown contacts/0/relative_mm_per_s')
  })

  it('is of a body that stands only where no field holds it', () => {
    const standing = { pace_mm_per_s: 0, standsAt_mm: 0, begins_s: 0, contact_s: 1.3, relative_mm_per_s: 500 }
    expect(answer(doorWith(1500, []), standing)).toBe('accepted')
    expect(answer(doorWith(1500, [50]), standing)).toBe('not-shown contacts/0')
  })
})
