import { sha256 } from './verify-py.files.ts'

type Json = Record<string, unknown>

/**
 * Claims that nearly every condition holds for and that are false all the same: each passed, or would pass, a rule that is a little too weak.
 * A door with one sensor and one body, one tile, no worst case.
 */
export interface Tempting {
  readonly title: string
  readonly door: string
  readonly evidence: string
}

const SCANNER = {
  id: 's',
  device: 'scanner',
  maxRange_mm: 200000,
  rangeRef_mm: 200000,
  reflectanceRef: 0.1,
  backgroundMargin_mm: 0,
  spotRadius_mm: 0,
}
const FIELD = { id: 'f', output: 'OUT 1', function: 'presence', presenceTime_s: 'for-ever' }
const OPEN = { ...FIELD, xMin_mm: 'open', xMax_mm: 'open', top_mm: 'open', clearance_mm: 0, clusterBeams: 1 }
const EXACT = { length_mm: 0, position_mm: 0, tilt_deg: 0, roll_deg: 0, yaw_deg: 0, floor_mm: 0, range_percent: 0 }

function oneBeam([x_mm, y_mm, z_mm]: readonly [number, number, number], tilt_deg: number, theta_deg: number, more: Json = {}): Json {
  const planes = [{ id: 'p', fovMin_deg: theta_deg, fovMax_deg: theta_deg, beamCount: 1 }]
  return { ...SCANNER, pose: { x_mm, y_mm, z_mm, tilt_deg }, planes, fields: [OPEN], ...more }
}

interface Setting {
  readonly sensors: readonly Json[]
  readonly posture: Json
  readonly zone: readonly [x0: number, x1: number, y0: number, y1: number]
  readonly tolerances?: Json
  readonly survey?: Json
}

function tempting(title: string, { sensors, posture, zone, tolerances, survey }: Setting, claim: Json): Tempting {
  const [xMin_mm, xMax_mm, yMin_mm, yMax_mm] = zone
  const door = JSON.stringify({
    sillsight: 1,
    survey: {
      opening: { width_mm: 3000, height_mm: 3000 },
      walls: 'none',
      floor: { profile_mm: [[-9000, 0]], slopeX_percent: 0 },
      visibility_m: 'clear',
      ...survey,
    },
    sensors,
    bodies: [{ id: 'b', reflectance: 0.1, postures: [posture] }],
    zones: [{ id: 'z', purpose: 'presence-at-leaf', xMin_mm, xMax_mm, yMin_mm, yMax_mm }],
    ...(tolerances ? { tolerances: { ...EXACT, ...tolerances } } : {}),
  })
  const coverage = {
    zone: 'z',
    state: 'as-surveyed',
    tolerances: tolerances ? { ...EXACT, ...tolerances } : null,
    smallest_mm: 3.125,
    fields: ['s/f'],
    obstacles: [],
    sights: [],
    slices: [{ body: 'b', posture: 0, part: 0, of: 1, trees: [[0]] }],
    worstCases: [],
    ...claim,
  }
  return { title, door, evidence: JSON.stringify({ sillsightEvidence: 1, doorSha256: sha256(door), coverages: [coverage] }) }
}

const box = (...size_mm: readonly [number, number, number]): Json => ({ shape: 'box', size_mm })
const block = (id: string, size_mm: readonly number[], from_mm: number, to_mm: number): Json => ({
  id,
  shape: 'box',
  x_mm: 1005,
  y_mm: 0,
  size_mm,
  from_mm,
  to_mm,
})
const BLOCKED = [{ body: 'b', posture: 0, part: 0, of: 1, trees: [[-3]] }]
const ABOVE = [oneBeam([0, 0, 2900], 0, 0)]
const HERE = [1000, 1010, -5, 5] as const

export const TEMPTING: readonly Tempting[] = [
  // 80 degrees from straight down, the floor is 1000 / cos 80 = 5759 mm away and 1500 mm of that are margin. Rolled by 1 degree it is
  // 1000 / cos 79 = 5241 mm away, so that an entry counts up to 3741 mm. The face stands at 3740 to 3750: met at 3740 / sin 79 = 3810 mm.
  // What the beam moves up to 4259 mm would let it count up to 3834 mm.
  tempting(
    'background that comes nearer than the beam moves up to its window',
    {
      sensors: [oneBeam([0, 0, 1000], 0, 80, { backgroundMargin_mm: 1500 })],
      posture: box(200, 2000, 700),
      zone: [3840, 3850, -5, 5],
      tolerances: { roll_deg: 1 },
    },
    { sights: [[0, 0, 0, [1]]] },
  ),
  // The beam rises from 100 to 109 mm and starts inside of a body 103.3 mm high: lifted by 5 mm it runs above it all the way. Where the body
  // begins, 1000 mm before the start, the line would pass at 98.2 mm, more than 5 mm under its top.
  tempting(
    'segment that starts inside of the body and leaves through its top',
    {
      sensors: [{ id: 's', device: 'segments', planes: [{ id: 'p', segments_mm: [[[0, 0, 100], [5000, 0, 109]]] }], fields: [FIELD] }], // biome-ignore format: one beam
      posture: box(1400, 700, 103.3),
      zone: [-405, -395, -5, 5],
      tolerances: { position_mm: 5 },
    },
    { sights: [[0, 0, 0, [7]]] },
  ),
  // At a tilt 0.7071 degrees larger and a yaw of -2.743 degrees the face is met at 12819.3 mm and a cosine of 0.007565: reach 12818.1 mm.
  // Tilt and yaw range taken each alone leave a cosine of 0.008049. Found by a search; reckoned again from the same numbers by matrices.
  tempting(
    'cosine that tilt and yaw range make smaller together',
    {
      sensors: [
        oneBeam([-254.4294297196799, -1723.0106693003397, 13090.654689117962], 9.68995697769269, 0.9292377431902937, {
          rangeRef_mm: 147375.2,
          maxRange_mm: 400000,
        }),
      ],
      posture: { ...box(149.43600771140328, 1400, 4872.0012557911205), yaw_deg: [-2.7426118226570493, 2.7426118226570493] },
      zone: [0, 0.01, 0, 0.01],
      tolerances: { tilt_deg: 0.7071248156607044 },
    },
    { sights: [[0, 0, 0, [1]]] },
  ),
  // Along 45 degrees the beam's x is its height below 2000 mm. On the floor z = 0.1 x a body at x is entered through its top, 800 mm high, at
  // 1200 - 0.1 x, or through its side at x - 200, whichever is later: at x = 1272.7 both are 1072.7, before the field's 1074. At the corners,
  // x = 1245 and 1300, the later one is 1075.5 and 1100.
  tempting(
    'round body whose entry is earliest in the middle of a tile',
    {
      sensors: [oneBeam([0, 0, 2000], 0, 45, { fields: [{ ...OPEN, xMin_mm: 1074 }] })],
      posture: { shape: 'cylinder', radius_mm: 200, height_mm: 800 },
      zone: [1245, 1300, -1, 1],
      survey: { floor: { profile_mm: [[-9000, 0]], slopeX_percent: 10 } },
    },
    { sights: [[0, 0, 0, [5]]] },
  ),
  ...(
    [
      ['plate 6 mm thick whose faces may each be off by 5 mm', block('o', [6, 3000], 0, 1000), box(400, 400, 1000)],
      ['shelf 6 mm high whose faces may each be off by 5 mm', block('o', [600, 3000], 500, 506), box(400, 400, 1000)],
      [
        'pipe 4 mm in radius that may be off by 5 mm',
        { id: 'o', shape: 'post', x_mm: 1005, y_mm: 0, radius_mm: 4, from_mm: 0, to_mm: 1500 },
        { shape: 'cylinder', radius_mm: 200, height_mm: 1000 },
      ],
    ] as const
  ).map(([title, obstacle, posture]) =>
    tempting(
      title,
      { sensors: ABOVE, posture, zone: HERE, tolerances: { length_mm: 5 }, survey: { obstacles: [obstacle] } },
      { obstacles: ['o'], slices: BLOCKED },
    ),
  ),
  // The second scanner hangs straight above the body and sees it.
  tempting(
    'worst case that leaves out the field that sees',
    { sensors: [oneBeam([5000, 0, 2900], 0, 0), oneBeam([1000, 0, 2900], 0, 0, { id: 't' })], posture: box(400, 400, 1000), zone: HERE },
    {
      slices: [{ body: 'b', posture: 0, part: 0, of: 1, trees: [[-2]] }],
      worstCases: [{ pocket: 'A', slice: 0, x_mm: 1005, y_mm: 0, yaw_deg: 0, fails: [[0, 0, 'm1']] }],
    },
  ),
]
