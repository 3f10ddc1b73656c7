import { describe, expect, it } from 'vitest'
import { type PassingFile, passingFile, verifiedPassages } from './passing-doors.ts'
import { diceOf } from './random-numbers.ts'

/** A leaf of 1 m that opens to B by a quarter turn, hinged at x = 0, half a metre per second; a body of 300 x 200. */
function doorWith(grids_mm: readonly number[], leaf: object = {}): PassingFile {
  const file = passingFile(diceOf(1))
  const [grid] = file.sensors
  if (grid === undefined) throw new Error('the door must have a grid')
  file.survey.opening = { width_mm: 1000, height_mm: 2000 }
  const hinged = { hinge: 'at-zero', opensTo: 'b', length_mm: 1000, openAngle_deg: 90 }
  file.survey.leaf = { travel: 'turning', thickness_mm: 20, parked: 'none', hinged, ...leaf }
  file.survey.floor = { profile_mm: [[0, 0]], slopeX_percent: 0 }
  file.survey.drive = {
    closeSpeed_m_per_s: 0.5,
    closeAccel_m_per_s2: 1,
    stopDelay_s: 0.1,
    stopDecel_m_per_s2: 1,
    afterStop: 'stay',
  }
  file.survey.lanes = [{ id: 'lane', who: 'people', xMin_mm: 50, xMax_mm: 950, slowest_m_per_s: 1, fastest_m_per_s: 1, longestStay_s: 60 }]
  file.sensors = grids_mm.map((y) => {
    const at = structuredClone(grid)
    const [plane] = at.planes
    if (plane)
      plane.between_mm = [
        [-50, y],
        [1050, y],
      ]
    Object.assign(at.fields[0] ?? {}, { response_s: 0.1, hold_s: 0 })
    return at
  })
  file.bodies = [{ id: 'box', reflectance: 0.1, postures: [{ shape: 'box', size_mm: [300, 200, 1500] }] }]
  return file
}

/** `accepted`, or the place of what does not hold. */
function answer(file: PassingFile, change: object): string {
  const contact = { lane: 'lane', state: 'as-surveyed', body: 'box', posture: 0, yaw_deg: 0, x_mm: 500, from: 'a' }
  const closing = { opening_mm: (Math.PI / 2) * 1000, pace_mm_per_s: 0, standsAt_mm: 0, begins_s: 0 }
  const result = verifiedPassages(file, [], [{ ...contact, ...closing, ...change }])
  return result.ok ? 'accepted' : `${result.issues[0]?.code} ${result.issues[0]?.path}`
}

/** When the edge has so much still to go, at 500 mm/s after half a second of speeding up. */
function afterWay(left_mm: number): number {
  return 0.5 + ((Math.PI / 2) * 1000 - left_mm - 125) / 500
}

describe('a contact with a leaf that turns, hand calculation', () => {
  // Its face is 10 mm before its middle. The nearest corner, 350 mm from the hinge and 100 mm toward B, is on it where 350 sin - 100 cos = 10; that corner is
  // sqrt(350^2 + 100^2) = 364.0 mm from the hinge, about which the leaf turns with 0.5 rad/s
  const angle = Math.asin(10 / Math.hypot(350, 100)) + Math.atan(100 / 350)
  const contact_s = afterWay(1000 * angle)
  const relative_mm_per_s = 0.5 * Math.hypot(350, 100)

  it('is where the face of the leaf comes to the corner of a body that stands, with the speed of that point of the leaf', () => {
    expect(angle * 1000).toBeCloseTo(305.8, 1)
    expect(answer(doorWith([]), { contact_s, relative_mm_per_s })).toBe('accepted')
    expect(answer(doorWith([]), { contact_s, relative_mm_per_s: 500 })).toBe('not-shown contacts/0/relative_mm_per_s')
    expect(answer(doorWith([]), { contact_s: contact_s - 0.01, relative_mm_per_s })).toBe('not-shown contacts/0')
    expect(answer(doorWith([]), { contact_s: contact_s + 0.01, relative_mm_per_s })).toBe('not-shown contacts/0')
    expect(answer(doorWith([]), { contact_s: contact_s + 10, relative_mm_per_s })).toBe('not-shown contacts/0/contact_s')
  })

  it('is of a body that stands only where no field holds it', () => {
    expect(answer(doorWith([50]), { contact_s, relative_mm_per_s })).toBe('not-shown contacts/0')
    expect(answer(doorWith([200]), { contact_s, relative_mm_per_s })).toBe('accepted')
  })

  it('is none where nobody said how the leaf is hung, or where the sight of a field depends on the leaf', () => {
    expect(answer(doorWith([], { hinged: undefined }), { contact_s, relative_mm_per_s })).toBe('cannot-show survey/leaf/hinged')
    const hides = doorWith([5000])
    expect(answer(hides, { contact_s, relative_mm_per_s })).toBe('accepted')
    Object.assign(hides.sensors[0]?.fields[0] ?? {}, { leafHides: 'bodies' })
    expect(answer(hides, { contact_s, relative_mm_per_s })).toBe('cannot-show contacts/0')
  })

  // With 50 mm of bulge the open leaf fills x up to 60 mm, and a body whose side is at 50 mm comes against it on its way from B. Behind the leaf, its lower
  // side 55 mm beyond y = 0, it is touched where 50 sin + 55 cos = 60, near its corner 74.3 mm from the hinge
  it('is none of a body that has come against the leaf where it rested', () => {
    const door = doorWith([], { bulge_mm: 50 })
    const at = Math.asin(60 / Math.hypot(50, 55)) - Math.atan(55 / 50)
    const claim = {
      x_mm: 200,
      pace_mm_per_s: 1000,
      begins_s: 3,
      contact_s: timeNearShut(1000 * at),
      relative_mm_per_s: speedNearShut(1000 * at) * 0.0743,
    }
    expect(answer(door, { ...claim, from: 'a', standsAt_mm: -155 })).toBe('accepted')
    expect(answer(door, { ...claim, from: 'b', standsAt_mm: 155 })).toBe('not-shown contacts/0')
  })
})

/** Slowing begins 125 mm before shut. */
function timeNearShut(left_mm: number): number {
  return left_mm > 125 ? afterWay(left_mm) : afterWay(0) + 0.25 - Math.sqrt((2 * left_mm) / 1000)
}
function speedNearShut(left_mm: number): number {
  return left_mm > 125 ? 500 : 1000 * Math.sqrt((2 * left_mm) / 1000)
}
