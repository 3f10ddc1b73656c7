import { firstWiring } from '../src/first-wiring.ts'

/** A small door file with something of everything, as parsed JSON; each call gives a fresh one that a test may spoil. */
export function exampleFile() {
  const source = { basis: 'invented', note: 'for tests' }
  return {
    sillsight: 1,
    name: 'example',
    edition: '2026-11',
    sides: { a: 'yard', b: 'hall' },
    survey: {
      opening: { width_mm: 3000, height_mm: 2500, readings: { widths: [{ reading: '3 m' }], diagonals: [3905, 3906] } },
      leaf: {
        travel: 'down',
        thickness_mm: 40,
        bulge_mm: 10,
        parked: { x_mm: 1500, y_mm: 0, size_mm: [3000, 40], from_mm: 2600, to_mm: 5000 },
      },
      walls: { yMin_mm: 30, yMax_mm: 230, beyondZero_mm: 1000, beyondWidth_mm: 500, top_mm: 4000 },
      guides: { width_mm: 60, yMin_mm: -30, yMax_mm: 30 },
      floor: {
        profile_mm: [
          [-1000, 0],
          [0, 0],
          [2000, 100],
        ],
        slopeX_percent: 1,
        tolerance_mm: 5,
      },
      obstacles: [
        { id: 'bollard', shape: 'post', x_mm: 300, y_mm: -400, radius_mm: 60, from_mm: 0, to_mm: 900 },
        { id: 'rack', name: 'rack', shape: 'box', x_mm: 3500, y_mm: -500, size_mm: [400, 600], yaw_deg: 30, from_mm: 0, to_mm: 2000 },
      ],
      states: [
        { id: 'empty', name: 'nobody docked' },
        {
          id: 'docked',
          floor: { profile_mm: [[0, 0]], slopeX_percent: 0 },
          removeObstacles: ['bollard'],
          addObstacles: [{ id: 'trailer', shape: 'box', x_mm: 1500, y_mm: 4000, size_mm: [2400, 6000], from_mm: 200, to_mm: 3800 }],
        },
      ],
      lanes: [{ id: 'lane', who: 'both', xMin_mm: 500, xMax_mm: 2500, slowest_m_per_s: 0.5, fastest_m_per_s: 2 }],
      visibility_m: 40,
    },
    sensors: [
      {
        id: 'scan',
        device: 'scanner',
        source,
        pose: { x_mm: 1500, y_mm: -120, z_mm: 2450, yaw_deg: 180, tilt_deg: 4, roll_deg: 1 },
        planes: [
          { id: 'p1', offset_deg: -2, fovMin_deg: -50, fovMax_deg: 50, beamCount: 101 },
          { id: 'p2', offset_deg: 3, fovMin_deg: -50, fovMax_deg: 50, beamCount: 101 },
        ],
        maxRange_mm: 7000,
        rangeRef_mm: 6000,
        reflectanceRef: 0.1,
        backgroundMargin_mm: 60,
        learnedIn: 'empty',
        fields: [
          {
            id: 'leaf',
            planes: ['p1'],
            xMin_mm: 0,
            xMax_mm: 3000,
            clearance_mm: 60,
            top_mm: 'open',
            clusterBeams: 2,
            output: 'OUT 1',
            function: 'presence',
            presenceTime_s: 30,
            blanking: [{ from_mm: 100, to_mm: 400 }],
          },
          {
            id: 'way',
            xMin_mm: 'open',
            xMax_mm: 'open',
            yMin_mm: -2000,
            clearance_mm: 100,
            top_mm: 2000,
            clusterBeams: 1,
            output: 'OUT 2',
            function: 'opening',
            presenceTime_s: 'for-ever',
          },
        ],
      },
      {
        id: 'grid',
        device: 'segments',
        source,
        planes: [
          {
            id: 'g',
            between_mm: [
              [-50, 300],
              [3050, 300],
            ],
            heights_mm: [150, 400, 700],
          },
        ],
        fields: [{ id: 'g', output: 'OUT 3', function: 'presence' }],
      },
      {
        id: 'loop',
        device: 'zone-only',
        source,
        function: 'opening',
        output: 'L1',
        needs: 'a car',
        covers: { xMin_mm: 0, xMax_mm: 3000, yMin_mm: 2000, yMax_mm: 4000 },
      },
      {
        id: 'short',
        use: 'demo-header-row',
        side: 'a',
        mountingHeight_mm: 2600,
        offset_mm: 300,
        x_mm: 1200,
        tilt_deg: 3,
        learnedIn: 'empty',
      },
    ],
    bodies: [
      { id: 'presence-reference-body', use: 'presence-reference-body' },
      {
        id: 'own',
        reflectance: 0.2,
        source,
        postures: [
          { shape: 'box', size_mm: [100, 200, 300], yaw_deg: [0, 20] },
          { shape: 'cylinder', radius_mm: 80, height_mm: 600 },
        ],
      },
    ],
    zones: [
      {
        id: 'leaf',
        purpose: 'presence-at-leaf',
        xMin_mm: 0,
        xMax_mm: 3000,
        yMin_mm: -700,
        yMax_mm: -50,
        bodies: ['own'],
        longestStay_s: 20,
      },
      {
        id: 'way',
        purpose: 'opening',
        xMin_mm: 500,
        xMax_mm: 2500,
        yMin_mm: -1500,
        yMax_mm: -800,
        allowedPocket_mm: 50,
        allowedPocketSource: { basis: 'our decision' },
        pitch_mm: 50,
        family: { proportions: [1, 1, 2], reflectance: 0.1, largest_mm: 600, step_mm: 50, required_mm: 300 },
      },
    ],
    concept: { people: 'trained', drive: 'automatic', closingEdge: 'presence-aid' },
    confirmations: [
      { value: 'presence-reference-body', document: 'EN 12453', edition: '2017', clause: '5', by: 'A. Reader', on: '2026-11-25' },
    ],
    wiring: firstWiring(['scan']),
    records: { anything: [1, { at: 'all' }] },
  }
}

export const SIX_VALUES = {
  sillsight: 1,
  survey: { opening: { width_mm: 3460, height_mm: 4180 } },
  sensors: [{ use: 'demo-header-scanner', side: 'a', mountingHeight_mm: 4070, offset_mm: 150 }],
}

/** A drive of which everything is said that a closing needs. */
export const PLAIN_DRIVE = {
  closeSpeed_m_per_s: 0.5,
  closeAccel_m_per_s2: 1,
  stopDelay_s: 0.1,
  stopDecel_m_per_s2: 1,
  afterStop: 'reverse',
  reverseDelay_s: 0.2,
  openSpeed_m_per_s: 0.5,
  openAccel_m_per_s2: 1,
}

/** A copy of parsed JSON in which the value at a path, as an issue names it, is another one (undefined takes it away). */
export function changed(file: unknown, path: string, value: unknown): unknown {
  const copy = JSON.parse(JSON.stringify(file)) as Record<string, unknown>
  const keys = path.split('/')
  const last = keys.pop() ?? ''
  let place: Record<string, unknown> = copy
  for (const key of keys) place = place[key] as Record<string, unknown>
  if (value === undefined) delete place[last]
  else place[last] = value
  return copy
}
