import { describe, expect, it } from 'vitest'
import { type Edge, holdOf, rollOf, slope_percent, standOf, turnedRound, upOf } from './rise.ts'

const SINE_30 = 0.5
const COSINE_30 = Math.sqrt(3) / 2

describe('up, as the device has it', () => {
  it.each([
    ['flat, screen up', 0, 0, { x: 0, y: 0, z: 1 }],
    ['upright on its bottom edge', 90, 0, { x: 0, y: 1, z: 0 }],
    ['upright on its top edge', -90, 0, { x: 0, y: -1, z: 0 }],
    ['on its left edge', 0, -90, { x: 1, y: 0, z: 0 }],
    ['on its right edge', 0, 90, { x: -1, y: 0, z: 0 }],
    ['screen down', 180, 0, { x: 0, y: 0, z: -1 }],
    ['top lifted by 30 degrees from flat', 30, 0, { x: 0, y: SINE_30, z: COSINE_30 }],
  ])('%s', (_how, beta_deg, gamma_deg, up) => {
    const found = upOf({ beta_deg, gamma_deg })
    for (const axis of ['x', 'y', 'z'] as const) expect(found[axis]).toBeCloseTo(up[axis], 12)
  })
  it('has the length 1 whatever is read', () => {
    for (let beta_deg = -180; beta_deg <= 180; beta_deg += 15)
      for (let gamma_deg = -90; gamma_deg <= 90; gamma_deg += 15) {
        const { x, y, z } = upOf({ beta_deg, gamma_deg })
        expect(x * x + y * y + z * z).toBeCloseTo(1, 12)
      }
  })
})

describe('a device that stands on an edge', () => {
  /**
   * Worked on paper: looked at from the front, the device on the edge is turned left by the angle that its edge rises to the right. Up then has, of
   * what points up and of what points right on the screen, the cosine and the sine: (up) cos 30, (right) sin 30.
   */
  it.each<[Edge, { x: number; y: number }]>([
    ['bottom', { x: SINE_30, y: COSINE_30 }], // right is x, up is y
    ['left', { x: COSINE_30, y: -SINE_30 }], // up is x, right is -y
    ['top', { x: -SINE_30, y: -COSINE_30 }], // right is -x, up is -y
    ['right', { x: -COSINE_30, y: SINE_30 }], // up is -x, right is y
  ])('reads +30 degrees on its %s edge where the right goes up, and -30 where it goes down', (edge, { x, y }) => {
    const rising = standOf({ x, y, z: 0 })
    expect(rising?.edge).toBe(edge)
    expect(rising?.rise_deg).toBeCloseTo(30, 12)
    const falling = edge === 'bottom' || edge === 'top' ? { x: -x, y, z: 0 } : { x, y: -y, z: 0 }
    expect(standOf(falling)?.rise_deg).toBeCloseTo(-30, 12)
  })
  it('reads the same surface whether it leans back or not: 6 degrees under 20 degrees of lean', () => {
    // an edge along (cos 6, 0, sin 6) in the room; leaning about that edge turns up about x of the device and leaves its share along x
    const along = Math.sin((6 * Math.PI) / 180)
    const rest = Math.cos((6 * Math.PI) / 180)
    for (const lean_deg of [0, 20, 40]) {
      const lean = (lean_deg * Math.PI) / 180
      expect(standOf({ x: along, y: rest * Math.cos(lean), z: rest * Math.sin(lean) })?.rise_deg).toBeCloseTo(6, 12)
    }
  })
  it('reads a turned device through the angles of a reading: beta 90 less 2, as a browser gives it for a long edge 2 degrees off', () => {
    // on its left edge (gamma -90) with beta 2: the top, which points left, is lifted by 2 degrees, so the right is lower by 2
    expect(standOf(upOf({ beta_deg: 2, gamma_deg: -90 }))).toEqual({ edge: 'left', rise_deg: expect.closeTo(-2, 9) })
  })
  it('reads nothing where it lies', () => {
    expect(standOf(upOf({ beta_deg: 10, gamma_deg: 5 }))).toBe(undefined)
    expect(standOf(upOf({ beta_deg: 180, gamma_deg: 0 }))).toBe(undefined)
  })
})

describe('turning round', () => {
  it('parts the surface from the error of the device: a slope of 1.2 read with an error of 0.4 is 1.6, then -0.8', () => {
    const { surface_deg, error_deg } = turnedRound({ first_deg: 1.6, second_deg: -0.8 })
    expect(surface_deg).toBeCloseTo(1.2, 12)
    expect(error_deg).toBeCloseTo(0.4, 12)
  })
  it('finds no error where both readings are opposite, and no slope where they agree', () => {
    expect(turnedRound({ first_deg: 2, second_deg: -2 })).toEqual({ surface_deg: 2, error_deg: 0 })
    expect(turnedRound({ first_deg: 0.3, second_deg: 0.3 })).toEqual({ surface_deg: 0, error_deg: 0.3 })
  })
})

describe('what follows from a rise', () => {
  it('is a slope: 45 degrees are 100 percent, 1:50 is 2 percent, down stays down', () => {
    expect(slope_percent(45)).toBeCloseTo(100, 9)
    expect(slope_percent((Math.atan(1 / 50) * 180) / Math.PI)).toBeCloseTo(2, 9)
    expect(slope_percent(-45)).toBeCloseTo(-100, 9)
  })
  it('is a roll: the rise itself without tilt, more than it under tilt, none where it cannot be', () => {
    expect(rollOf({ rise_deg: 5, tilt_deg: 0 })).toBeCloseTo(5, 12)
    // sin 30 * cos 60 = 0.25, whose angle is 14.4775 degrees in any table
    expect(rollOf({ rise_deg: 14.477512, tilt_deg: 60 })).toBeCloseTo(30, 5)
    expect(rollOf({ rise_deg: 40, tilt_deg: 60 })).toBe(undefined)
  })
})

describe('a hold', () => {
  it('is the mean of its readings with their spread, on the edge of the last one', () => {
    const lying = { x: 0, y: 0, z: 1 }
    const on = (rise_deg: number) => ({ x: Math.sin((rise_deg * Math.PI) / 180), y: Math.cos((rise_deg * Math.PI) / 180), z: 0 })
    const hold = holdOf([lying, { x: 1, y: 0, z: 0 }, on(1), on(1.2), on(1.4)])
    expect(hold?.edge).toBe('bottom')
    expect(hold?.rise_deg).toBeCloseTo(1.2, 9)
    expect(hold?.spread_deg).toBeCloseTo(0.4, 9)
    expect(holdOf([on(1), lying])).toBe(undefined)
    expect(holdOf([])).toBe(undefined)
  })
})
