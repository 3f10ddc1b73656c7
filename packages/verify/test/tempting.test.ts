import { parseDocument, toDoor } from '@sillsight/document'
import { describe, expect, it } from 'vitest'
import { claimedOf, counterexample, leavesOf } from './claims.ts'
import { sha256 } from './random-door-files.ts'
import { diceOf } from './random-numbers.ts'
import { type Coverage, verified } from './true-evidence.ts'

/*
 * Claims that look proved at the corners, or with the bound that lies near at hand, and are false. Each comes with the door for which it was made, and
 * single placements show that it is false.
 */

interface Tempting {
  readonly sensor: object
  readonly field?: object
  readonly posture: object
  readonly zone: { readonly x: readonly [number, number]; readonly y: readonly [number, number] }
  readonly faces: number
  readonly survey?: object
  readonly tolerances?: Partial<NonNullable<Coverage['tolerances']>>
}

const NONE = { length_mm: 0, position_mm: 0, tilt_deg: 0, roll_deg: 0, yaw_deg: 0, floor_mm: 0, range_percent: 0 }
const STRONG = { maxRange_mm: 50_000, rangeRef_mm: 50_000, reflectanceRef: 0.1 }
const SOURCE = { basis: 'invented' }

/** Whether the verifier accepts the claim that the one sight sees the body all over the zone, and what single placements say. */
function tried({ sensor, field, posture, zone, faces, survey, tolerances }: Tempting) {
  const all = tolerances && { ...NONE, ...tolerances }
  const text = JSON.stringify({
    sillsight: 1,
    survey: { opening: { width_mm: 1500, height_mm: 3000 }, ...survey },
    sensors: [{ id: 's', source: SOURCE, fields: [{ id: 'f', output: 'o', function: 'presence', ...field }], ...sensor }],
    bodies: [{ id: 'b', source: SOURCE, reflectance: 1, postures: [posture] }],
    zones: [{ id: 'z', purpose: 'presence-at-leaf', xMin_mm: zone.x[0], xMax_mm: zone.x[1], yMin_mm: zone.y[0], yMax_mm: zone.y[1] }],
    tolerances: all,
  })
  const parsed = parseDocument(text)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues))
  const coverage: Coverage = {
    zone: 'z',
    state: 'as-surveyed',
    tolerances: all ?? null,
    smallest_mm: 1,
    fields: ['s/f'],
    obstacles: [],
    sights: [[0, 0, 0, [faces]]],
    slices: [{ body: 'b', posture: 0, part: 0, of: 1, trees: [[0]] }],
    worstCases: [],
  }
  const claimed = claimedOf(toDoor(parsed.document), coverage)
  const leaves = claimed && leavesOf(claimed)
  const [leaf] = typeof leaves === 'string' ? [] : (leaves ?? [])
  if (claimed === undefined || leaf === undefined) throw new Error(`the evidence must have one leaf, got ${leaves}`)
  let found: string | undefined
  for (let seed = 1; seed <= 100 && found === undefined; seed++) found = counterexample(claimed, leaf, diceOf(seed))
  const evidenceText = JSON.stringify({ sillsightEvidence: 1, doorSha256: sha256(text), coverages: [coverage] })
  return { accepted: verified({ text, readLibrary: () => undefined }, evidenceText).ok, counterexample: found }
}

const oneBeam = (pose: object, values: object = {}) => ({
  device: 'scanner',
  ...STRONG,
  backgroundMargin_mm: 0,
  ...values,
  planes: [{ id: 'p', fovMin_deg: 0, fovMax_deg: 0, beamCount: 1 }],
  pose,
})

describe('a claim that is false although it looks proved', () => {
  it('is refused: a round body on a floor that rises along the beam, entered too soon only between the corners', () => {
    // 45 degrees down: the top is met later where the floor is low, the side later where the body is far; both are met soonest in the middle
    const claim = {
      sensor: oneBeam({ x_mm: 0, y_mm: 0, z_mm: 2000, tilt_deg: 45 }),
      posture: { shape: 'cylinder', radius_mm: 200, height_mm: 500 },
      zone: { x: [-1, 1], y: [1257.7, 1357.7] },
      faces: 5,
      survey: {
        floor: {
          profile_mm: [
            [0, 0],
            [3000, 900],
          ],
        },
      },
    } as const
    expect(tried({ ...claim, field: { yMin_mm: 1090 } })).toEqual({ accepted: true, counterexample: undefined })
    const { accepted, counterexample } = tried({ ...claim, field: { yMin_mm: 1115 } })
    expect(accepted).toBe(false)
    expect(counterexample).toMatch(/beam 0 fails by -7/)
  })
  it('is refused: a background that comes nearer by what the beam still moves on its way through the margin', () => {
    // 45 degrees down, a wall 2 m ahead, the top entered 40 mm before the margin; one degree of tilt moves both
    const claim = (height_mm: number) => ({
      sensor: oneBeam({ x_mm: 750, y_mm: 0, z_mm: 2500, tilt_deg: 45 }, { backgroundMargin_mm: 400 }),
      posture: { shape: 'box', size_mm: [400, 400, height_mm] },
      zone: { x: [749, 751], y: [1689, 1691] } as const,
      faces: 4,
      survey: { obstacles: [{ id: 'w', shape: 'box', x_mm: 750, y_mm: 2100, size_mm: [4000, 200], from_mm: 0, to_mm: 3000 }] },
      tolerances: { tilt_deg: 1 },
    })
    expect(tried(claim(860))).toEqual({ accepted: true, counterexample: undefined })
    const { accepted, counterexample } = tried(claim(845.4))
    expect(accepted).toBe(false)
    expect(counterexample).toMatch(/beam 0 fails by -1\.\d/)
  })
  it('is refused: a segment that starts inside of the body, and would stand between its faces only behind its start', () => {
    const claim = (y: number) => ({
      sensor: {
        device: 'segments',
        planes: [
          {
            id: 'p',
            segments_mm: [
              [
                [0, 0, 300],
                [1000, 15, 300],
              ],
            ],
          },
        ],
      },
      posture: { shape: 'box', size_mm: [1600, 100, 600] },
      zone: { x: [-1, 1], y: [y - 0.1, y + 0.1] } as const,
      faces: 7,
      tolerances: { position_mm: 10 },
    })
    expect(tried(claim(5))).toEqual({ accepted: true, counterexample: undefined })
    const { accepted, counterexample } = tried(claim(-51))
    expect(accepted).toBe(false)
    expect(counterexample).toMatch(/beam 0 fails/)
  })
})
