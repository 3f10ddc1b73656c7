import { describe, expect, it } from 'vitest'
import { findingsOf } from '../../cases/judged.ts'
import { plainDoor } from '../../cases/plain-door.ts'
import { wiredDoor } from '../../cases/wired-door.ts'
import type { ContactRating, Wiring } from '../model/wiring.ts'

const RATING = { largest_V: 30, largest_A: 0.5, least_A: 0.001 }
const rated = (rating: Partial<ContactRating> | undefined) => (wiring: Wiring) => ({
  ...wiring,
  sensors: wiring.sensors.map((sensor) => ({
    ...sensor,
    outputs: sensor.outputs.map((each) => ({ ...each, rating: rating && { ...RATING, ...rating } })),
  })),
})
const judged = (changes: (wiring: Wiring) => Wiring) => findingsOf('contact-rating', wiredDoor(changes))

describe('contact-rating', () => {
  it('holds each contact against the current that it really switches', () => {
    const found = judged(rated({}))
    expect(found.map(({ id, verdict }) => [id, verdict])).toEqual([
      ['contact-rating:scanner/opening', 'pass'],
      ['contact-rating:scanner/presence', 'pass'],
    ])
    // 27 V over 3000 ohm
    for (const { facts } of found) expect(facts['most_A']).toBeCloseTo(0.009, 3)
  })
  it.each([
    ['voltage', { largest_V: 24 }, 'V'],
    ['current', { largest_A: 0.008 }, 'A'],
    ['least', { least_A: 0.01 }, 'A'],
  ] as const)('fails by %s', (exceeds, rating, unit) => {
    for (const found of judged(rated(rating))) expect(found).toMatchObject({ verdict: 'fail', facts: { exceeds }, limit: { unit } })
  })
  it('counts what several inputs on one contact draw together', () => {
    const [alone] = judged(rated({})).filter(({ facts }) => facts['contact'] === 'presence')
    const doubled = judged((wiring) => {
      const { control } = rated({})(wiring)
      const inputs = control.inputs.map((input) => ({ ...input, plus: 'control.stop' }))
      return { ...rated({})(wiring), control: { ...control, inputs } }
    })
    const [both] = doubled.filter(({ facts }) => facts['contact'] === 'presence')
    expect(Number(both?.facts['most_A']) / Number(alone?.facts['most_A'])).toBeCloseTo(2, 2)
    // the other contact has nothing left to switch and is no subject
    expect(doubled).toHaveLength(1)
  })
  it('asks for rating, least current and copper', () => {
    const needs = (changes: (wiring: Wiring) => Wiring) =>
      judged(changes).map((each) => (each.verdict === 'undetermined' ? each.needs.join() : each.verdict))
    expect(needs(rated(undefined)).sort()).toEqual(['wiring/sensors/0/outputs/0/rating', 'wiring/sensors/0/outputs/1/rating'])
    expect(needs(rated({ least_A: undefined })).sort()).toEqual([
      'wiring/sensors/0/outputs/0/rating/least_A',
      'wiring/sensors/0/outputs/1/rating/least_A',
    ])
    expect(needs(rated({ largest_V: undefined, largest_A: undefined }))[0]).toBe(
      'wiring/sensors/0/outputs/1/rating/largest_V,wiring/sensors/0/outputs/1/rating/largest_A',
    )
    expect(needs((wiring) => ({ ...rated({})(wiring), copper: undefined }))).toEqual(['wiring/copper', 'wiring/copper'])
  })
  it('leaves transistors alone whose rating nobody stated, and has no subject without wiring', () => {
    const transistors = judged((wiring) => ({
      ...wiring,
      sensors: wiring.sensors.map((sensor) => ({
        ...sensor,
        outputs: sensor.outputs.map((each) => ({ ...each, rating: undefined, off_ohm: 1e5 })),
      })),
    }))
    expect(transistors).toMatchObject([{ verdict: 'not-applicable' }])
    expect(findingsOf('contact-rating', plainDoor())).toMatchObject([{ verdict: 'not-applicable' }])
  })
})

/** The presence contact as a transistor to plus: 24 V and 3000 ohm take 8 mA; 5 V on the input, up to which it is off, are 1.67 mA. */
const transistor = (change: object) => (wiring: Wiring) => ({
  ...wiring,
  sensors: wiring.sensors.map((sensor) => ({
    ...sensor,
    outputs: sensor.outputs.map((each) =>
      each.acts === 'presence' ? { ...each, rating: undefined, off_ohm: 100_000, ...change } : { ...each, rating: RATING },
    ),
  })),
})
const ofPresence = (change: object) => judged(transistor(change)).filter(({ facts }) => facts['contact'] === 'presence')

describe('contact-rating of a transistor', () => {
  it('is asked where its rating is stated, and then judged like that of a contact, without a least current', () => {
    expect(ofPresence({})).toEqual([])
    expect(ofPresence({ rating: { largest_V: 30, largest_A: 0.1 } })).toMatchObject([
      { verdict: 'pass', facts: { isTransistor: true, exceeds: 'nothing' } },
    ])
    expect(ofPresence({ rating: { largest_V: 30, largest_A: 0.005 } })).toMatchObject([{ verdict: 'fail', facts: { exceeds: 'current' } }])
    expect(ofPresence({ rating: { largest_V: 30, largest_A: 0.1, least_A: 0.02 } })).toMatchObject([
      { verdict: 'fail', facts: { exceeds: 'least' } },
    ])
    expect(ofPresence({ rating: { largest_A: 0.1 } })).toMatchObject([
      { verdict: 'undetermined', needs: [expect.stringContaining('rating/largest_V')] },
    ])
  })
  it('fails, stated or not, where it leaks so much that the input does not take it for off', () => {
    // 27 V over 3000 ohm and R leave 5 V at R = 13 200 ohm: 1.667 mA
    expect(ofPresence({ off_ohm: 14_000 })).toEqual([])
    const [found] = ofPresence({ off_ohm: 12_000 })
    expect(found).toMatchObject({
      verdict: 'fail',
      facts: { exceeds: 'leak', input: 'stop', leak_A: expect.closeTo(0.0018, 4) },
      limit: { unit: 'A', value: expect.closeTo(0.001667, 4) },
    })
  })
})
