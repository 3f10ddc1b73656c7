import { describe, expect, it } from 'vitest'
import { bodyOf, box, downward, plainDoor, plainState } from '../../cases/plain-door.ts'
import type { Crossing } from '../model/traffic.ts'
import { shareThatOpens, trackSights } from './passers-by.ts'

const crossing = (changes: Partial<Crossing> = {}): Crossing => ({
  id: 'aisle',
  name: 'aisle',
  yMin_mm: 1000,
  yMax_mm: 2000,
  slowest_mm_per_s: 500,
  fastest_mm_per_s: 1500,
  bodies: ['body'],
  perDay: 200,
  mostPerDay: undefined,
  ...changes,
})

describe('trackSights', () => {
  // Hand calculation: beams straight down at y = 1000, x = 600 to 1400 every 100 mm see a body 300 x 200 while its middle is within 100 of y = 1000 and
  // between x = 450 and 1550: 1100 mm, on tracks up to y = 1100; place by place of 25 mm that is at most one place off at each end
  it('finds how long a passer-by is seen on each track, and nothing beside the beams', () => {
    const places = Array.from({ length: 9 }, (_, i) => ({ x_mm: 600 + 100 * i, y_mm: 1000, z_mm: 2400 }))
    const sensor = downward(places, {}, { function: 'opening', xMin_mm: -1000, xMax_mm: 3000 })
    const [field] = sensor.fields
    if (!field) throw new Error('the sensor must have a field')
    const body = bodyOf([box(300, 200, 1500)])
    const tracks = trackSights(plainDoor({ sensors: [sensor], bodies: [body] }), plainState(), crossing(), body, [{ sensor, field }])
    expect(tracks).toHaveLength(40)
    for (const { y_mm, longest_mm } of tracks)
      if (y_mm < 1100) expect(Math.abs((longest_mm[0] ?? 0) - 1100)).toBeLessThanOrEqual(50)
      else expect(longest_mm).toEqual([0])
  })
})

describe('shareThatOpens', () => {
  const tracks = (...longest: readonly number[]) => longest.map((length_mm, i) => ({ y_mm: i, longest_mm: [length_mm] }))
  const paces = { slowest_mm_per_s: 500, fastest_mm_per_s: 1500 }

  // Hand calculation: 500 mm in 0.5 s is 1000 mm/s, half of the paces; 750 mm is 1500 mm/s, all of them; 250 mm is 500 mm/s, none; nothing seen, none
  it('is the mean over tracks of the paces that stay in sight for the response', () => {
    expect(shareThatOpens(tracks(500), [0.5], paces)).toBe(0.5)
    expect(shareThatOpens(tracks(500, 750, 250, 0), [0.5], paces)).toBe(0.375)
  })
  it('is all who are seen at all where the output answers at once, and steps where there is one pace', () => {
    expect(shareThatOpens(tracks(25, 0), [0], paces)).toBe(0.5)
    const one = { slowest_mm_per_s: 1000, fastest_mm_per_s: 1000 }
    expect(shareThatOpens(tracks(500, 499), [0.5], one)).toBe(0.5)
  })
  it('takes the field that answers to the fastest on each track', () => {
    const both = [{ y_mm: 0, longest_mm: [250, 600] }]
    expect(shareThatOpens(both, [0.5, 0.6], paces)).toBe(0.5)
  })
  it('never falls with a longer sight or a faster output', () => {
    for (let length = 0; length < 2000; length += 50) {
      expect(shareThatOpens(tracks(length + 50), [0.5], paces)).toBeGreaterThanOrEqual(shareThatOpens(tracks(length), [0.5], paces))
      expect(shareThatOpens(tracks(length), [0.4], paces)).toBeGreaterThanOrEqual(shareThatOpens(tracks(length), [0.5], paces))
    }
  })
})
