import type { BoxPosture } from '@sillsight/engine'
import { describe, expect, it } from 'vitest'
import { solidsOfBody } from './body-solids.ts'

const around: BoxPosture = { shape: 'box', name: 'cart', a_mm: 600, b_mm: 1000, c_mm: 1200, yawFrom_rad: 0, yawTo_rad: 0 }
const ofParts: BoxPosture = {
  ...around,
  parts: [
    { shape: 'box', name: 'bed', alongX_mm: 0, alongY_mm: 100, from_mm: 200, reflectance: 0.1, a_mm: 600, b_mm: 800, c_mm: 100 },
    { shape: 'cylinder', name: 'post', alongX_mm: 200, alongY_mm: -450, from_mm: 0, reflectance: 0.1, radius_mm: 50, height_mm: 1200 },
  ],
}

describe('what a body is drawn as', () => {
  it('is each of its parts, carried and turned with it', () => {
    // by hand: a quarter turn counter-clockwise takes (200, -450) to (450, 200)
    const [bed, post] = solidsOfBody(ofParts, { x_mm: 1000, y_mm: 2000, z_mm: 30, yaw_rad: Math.PI / 2 })
    expect(bed).toMatchObject({ shape: 'box', size_mm: [600, 800], from_mm: 230, to_mm: 330, yaw_rad: Math.PI / 2 })
    expect([bed?.x_mm, bed?.y_mm].map((value) => Math.round(value ?? 0))).toEqual([900, 2000])
    expect(post).toMatchObject({ shape: 'post', radius_mm: 50, from_mm: 30, to_mm: 1230 })
    expect([post?.x_mm, post?.y_mm].map((value) => Math.round(value ?? 0))).toEqual([1450, 2200])
  })
  it('is the one solid of a body that has no parts', () => {
    const at = { x_mm: 1, y_mm: 2, z_mm: 3, yaw_rad: 0.5 }
    expect(solidsOfBody(around, at)).toEqual([
      { x_mm: 1, y_mm: 2, from_mm: 3, to_mm: 1203, yaw_rad: 0.5, shape: 'box', size_mm: [600, 1000] },
    ])
    expect(solidsOfBody({ shape: 'cylinder', name: '', radius_mm: 90, height_mm: 900 }, at)).toEqual([
      { x_mm: 1, y_mm: 2, from_mm: 3, to_mm: 903, yaw_rad: 0.5, shape: 'post', radius_mm: 90 },
    ])
  })
})
