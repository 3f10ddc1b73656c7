import type { Door, Obstacle } from '../src/model/door.ts'
import { radians } from '../src/space/trigonometry.ts'

/**
 * The job that speed is measured on: a 5000 x 5000 mm opening, a zone of 24,000 placements, one box in three postures, one scanner in a
 * top corner with five planes of 301 beams, six obstacles. All figures are invented.
 */
export function referenceJob(change: Partial<ReferenceChange> = {}): Door {
  const { yaw_deg, cylinder, slopeX_percent, visibility_m, clusterBeams, beamsTimes, rowsTimes } = { ...PLAIN, ...change }
  const box = (name: string, a: number, b: number, c: number) => ({
    shape: 'box' as const,
    name,
    a_mm: a,
    b_mm: b,
    c_mm: c,
    yawFrom_rad: radians(yaw_deg),
    yawTo_rad: radians(yaw_deg),
  })
  const tube = (name: string, radius_mm: number, height_mm: number) => ({ shape: 'cylinder' as const, name, radius_mm, height_mm })
  const slopes = slopeX_percent !== 0
  return {
    name: 'reference job',
    sides: { a: 'yard', b: 'hall' },
    opening: { width_mm: 5000, height_mm: 5000 },
    leaf: { travel: 'down', thickness_mm: 45, bulge_mm: 20 },
    states: [
      {
        id: 'as-surveyed',
        name: 'as surveyed',
        floor: {
          profile: slopes
            ? [
                { y_mm: 0, z_mm: 0 },
                { y_mm: 1200, z_mm: 30 },
                { y_mm: 3200, z_mm: -20 },
              ]
            : [{ y_mm: 0, z_mm: 0 }],
          slopeX: slopeX_percent / 100,
          tolerance_mm: 5,
        },
        obstacles: OBSTACLES,
      },
    ],
    sensors: [
      {
        kind: 'ranging',
        id: 'corner',
        name: 'corner scanner',
        source: { basis: 'invented' },
        pose: { x_mm: 60, y_mm: 90, z_mm: 4930, yaw_rad: 0, tilt_rad: radians(15), roll_rad: radians(40) },
        planes: [-8, -4, 0, 4, 8].map((offset) => ({
          kind: 'fan' as const,
          id: `p${offset}`,
          offset_rad: radians(offset),
          fovMin_rad: radians(-55),
          fovMax_rad: radians(55),
          beamCount: 301 * beamsTimes,
        })),
        maxRange_mm: 13_000,
        rangeRef_mm: 10_500,
        reflectanceRef: 0.1,
        backgroundMargin_mm: 60,
        spotRadius_mm: 0,
        learnedIn: 'as-surveyed',
        fields: [
          {
            id: 'near',
            name: 'near field',
            planes: ['p-8', 'p-4', 'p0', 'p4', 'p8'],
            xMin_mm: 0,
            xMax_mm: 5000,
            yMin_mm: -Infinity,
            yMax_mm: Infinity,
            clearance_mm: 40,
            top_mm: 2500,
            clusterBeams,
            output: 'out 1',
            function: 'presence',
            presenceTime_s: Infinity,
            blanking: [],
          },
        ],
      },
    ],
    bodies: [
      {
        id: 'box',
        name: 'box',
        reflectance: 0.3,
        source: { basis: 'invented' },
        postures: cylinder
          ? [tube('standing', 130, 700), tube('sitting', 140, 300), tube('low', 150, 200)]
          : [box('standing', 200, 300, 700), box('lying along', 700, 300, 200), box('lying across', 200, 700, 300)],
      },
    ],
    zones: [
      {
        id: 'z',
        name: 'before the leaf',
        purpose: 'presence-at-leaf',
        function: 'presence',
        xMin_mm: 0,
        xMax_mm: 5000,
        yMin_mm: 0,
        yMax_mm: 3000,
        bodies: ['box'],
        allowedPocket_mm: 0,
        pitch_mm: 25 / rowsTimes,
        longestStay_s: 60,
        family: undefined,
      },
    ],
    concept: { people: 'public', drive: 'automatic', closingEdge: 'contact-free' },
    extinction_per_mm: visibility_m > 0 ? 3.912 / (visibility_m * 1000) : 0,
    edition: '2026-11',
    confirmations: [],
    assumed: [],
  }
}

export interface ReferenceChange {
  readonly yaw_deg: number
  readonly cylinder: boolean
  readonly slopeX_percent: number
  readonly visibility_m: number // 0: clear air
  readonly clusterBeams: number
  readonly beamsTimes: number
  readonly rowsTimes: number
}
const PLAIN: ReferenceChange = {
  yaw_deg: 0,
  cylinder: false,
  slopeX_percent: 0,
  visibility_m: 0,
  clusterBeams: 1,
  beamsTimes: 1,
  rowsTimes: 1,
}

const base = { implied: false, from_mm: 0 }
const OBSTACLES: readonly Obstacle[] = [
  { ...base, shape: 'box', id: 'rack', name: 'rack', x_mm: 3900, y_mm: 2500, size_mm: [1100, 500], yaw_rad: 0, to_mm: 1800 },
  { ...base, shape: 'box', id: 'bin', name: 'bin', x_mm: 800, y_mm: 1700, size_mm: [500, 400], yaw_rad: 0, to_mm: 900 },
  { ...base, shape: 'box', id: 'pallet', name: 'pallet', x_mm: 2500, y_mm: 1500, size_mm: [1150, 780], yaw_rad: radians(20), to_mm: 150 },
  { ...base, shape: 'box', id: 'desk', name: 'desk', x_mm: 1400, y_mm: 2700, size_mm: [900, 450], yaw_rad: radians(-35), to_mm: 1050 },
  { ...base, shape: 'post', id: 'bollard', name: 'bollard', x_mm: 4600, y_mm: 700, radius_mm: 85, to_mm: 1000 },
  { ...base, shape: 'post', id: 'column', name: 'column', x_mm: 3100, y_mm: 2850, radius_mm: 160, to_mm: 5000 },
]
