import { describe, expect, it } from 'vitest'
import { box, cylinder } from '../../cases/plain-door.ts'
import { radians } from '../space/trigonometry.ts'
import { isEmpty, shapeOf } from './shape.ts'

describe('what the spot leaves of a body (hand calculation: its radius off every side, bottom and top)', () => {
  it('of a box 100 x 60 x 500 and a spot of radius 10 is 80 x 40 between 10 and 490', () => {
    expect(shapeOf(box(100, 60, 500), 0, 0.3, 10)).toEqual({
      round: false,
      halfA: 40,
      halfB: 20,
      low: 10,
      high: 490,
      cosYaw: 1,
      sinYaw: 0,
      reflectance: 0.3,
    })
  })
  it('of a cylinder of radius 60 and height 500 is one of radius 50 between 10 and 490, whatever its yaw', () => {
    const shape = { round: true, halfA: 50, halfB: 50, low: 10, high: 490, cosYaw: 1, sinYaw: 0, reflectance: 0.3 }
    expect(shapeOf(cylinder(60, 500), 0, 0.3, 10)).toEqual(shape)
    expect(shapeOf(cylinder(60, 500), 1, 0.3, 10)).toEqual(shape)
  })
  it('is nothing once some side is no longer than twice the radius', () => {
    const left = [
      box(20, 500, 500),
      box(500, 20, 500),
      box(500, 500, 20),
      cylinder(10, 500),
      cylinder(500, 20),
      cylinder(5, 500),
      box(10, 10, 10),
    ]
    expect(left.map((posture) => isEmpty(shapeOf(posture, 0, 0.3, 10)))).toEqual(left.map(() => true))
    const more = [box(20.001, 500, 500), box(500, 20.001, 500), box(500, 500, 20.001), cylinder(10.001, 500), cylinder(500, 20.001)]
    expect(more.map((posture) => isEmpty(shapeOf(posture, 0, 0.3, 10)))).toEqual(more.map(() => false))
  })
})

describe('the yaw of a box', () => {
  it('is exact at quarter turns, and what sine and cosine say elsewhere', () => {
    const turned = (yaw_deg: number) => {
      const { cosYaw, sinYaw } = shapeOf(box(100, 60, 500), radians(yaw_deg), 0.3, 0)
      return [cosYaw, sinYaw]
    }
    expect([0, 90, 180, 270, -90, 360].map(turned)).toEqual([
      [1, 0],
      [0, 1],
      [-1, 0],
      [0, -1],
      [0, -1],
      [1, 0],
    ])
    expect(turned(30)[0]).toBeCloseTo(Math.sqrt(0.75), 15)
    expect(turned(30)[1]).toBeCloseTo(0.5, 15)
  })
})
