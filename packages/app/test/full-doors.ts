import { firstWiring } from '@sillsight/document'

const paper = { basis: 'published', document: 'a standard', edition: '2026', clause: '1' }
const tried = { basis: 'measured', note: 'A. Reader, on the lift' }
const across = { yMin_mm: -150, yMax_mm: 150 }
const post = { id: 'post', shape: 'post', x_mm: 3600, y_mm: 600, radius_mm: 60, from_mm: 0, to_mm: 1000, tolerance_mm: 5 }
const rack = { id: 'rack', shape: 'box', x_mm: 4200, y_mm: 900, size_mm: [400, 300], yaw_deg: 5, from_mm: 0, to_mm: 1800 }
const floor = { profile_mm: [[0, 0]], slopeX_percent: 0, tolerance_mm: 5 }
const values = { maxRange_mm: 4000, rangeRef_mm: 4000, reflectanceRef: 0.1, backgroundMargin_mm: 60, spotRadius_mm: 5 }
const placed = { side: 'a', mountingHeight_mm: 3300, offset_mm: 250, x_mm: 1500, tilt_deg: 5 }
const plane = { id: 'one', beamCount: 20, spacing_mm: 90 }
const facts = { sensorFault: 'stays', powerReturn: 'waits', fire: 'none', escape: 'none', interlock: 'none' }
const control = (source: object) => Object.fromEntries(Object.entries(facts).map(([fact, does]) => [fact, { does, source }]))
const field = (source: object) => ({
  id: 'near',
  planes: ['one'],
  xMin_mm: 0,
  xMax_mm: 3000,
  yMin_mm: 0,
  yMax_mm: 700,
  clearance_mm: 60,
  top_mm: 2000,
  clusterBeams: 1,
  output: 'OUT 1',
  response_s: 0.1,
  fastestResponse_s: 0.05,
  hold_s: 1,
  presenceTime_s: 30,
  approach: { way: 'parallel', capability_mm: 70, height_mm: 300, addend_mm: 1200, supplement_mm: 100, source },
  blanking: [{ from_mm: 0, to_mm: 100 }],
  leafBlanking: { beside_mm: 50, before_mm: 100 },
  leafHides: 'bodies',
})
const outputs = [
  { name: 'OUT 1', function: 'presence', whileWarmingUp: 'detecting' },
  { name: 'OUT 2', function: 'call' },
]
const zone = { id: 'leaf', name: 'at the leaf', xMin_mm: 0, xMax_mm: 3000, yMin_mm: 0, yMax_mm: 700, bodies: ['box'], pitch_mm: 50 }
const family = { proportions: [1, 1, 1], reflectance: 0.1, largest_mm: 900, step_mm: 100, required_mm: 400 }
const fallen = { shape: 'box', how: 'fallen', size_mm: [900, 300, 200] }
const standing = { shape: 'box', size_mm: [300, 300, 900] }
const stopping = { closeSpeed_m_per_s: 0.3, closeAccel_m_per_s2: 1, stopDelay_s: 0.05, afterStop: 'reverse', reverseDelay_s: 0.2 }

/** A door in which nearly everything is said that the door file has, each thing known from `source`. */
function full(name: string, source: object, { leaf, drive }: { readonly leaf: object; readonly drive: object }) {
  return {
    name,
    note: 'Anything.',
    edition: '2026-11',
    sides: { a: 'yard', b: 'hall' },
    survey: {
      opening: {
        width_mm: 3000,
        height_mm: 3200,
        tolerance_mm: 5,
        readings: {
          widths: [{ at_mm: 1000, reading: 3002 }],
          heights: [{ at_mm: 500, reading: '3.201 m' }],
          diagonals: [4386, 4387],
        },
      },
      leaf,
      drive: { ...stopping, ...drive, source },
      walls: { ...across, beyondZero_mm: 500, beyondWidth_mm: 500, top_mm: 4000 },
      lintel: { ...across, underside_mm: 3200, top_mm: 4000 },
      jambs: { yMin_mm: 150, yMax_mm: 180, width_mm: 60, top_mm: 3200 },
      guides: { yMin_mm: 180, yMax_mm: 200, width_mm: 60, top_mm: 3200 },
      hood: { yMin_mm: 150, yMax_mm: 240, from_mm: 3400, to_mm: 3800, beyond_mm: 50 },
      floor,
      obstacles: [post, rack],
      states: [
        { id: 'down', name: 'level' },
        {
          id: 'up',
          name: 'raised',
          floor,
          addObstacles: [
            { ...post, id: 'post-2', x_mm: 4800 },
            { ...rack, id: 'rack-2', x_mm: 5400 },
          ],
          removeObstacles: ['post'],
        },
      ],
      lanes: [
        {
          id: 'road',
          name: 'road',
          who: 'vehicles',
          xMin_mm: 200,
          xMax_mm: 2800,
          directions: ['from-a'],
          slowest_m_per_s: 0.5,
          fastest_m_per_s: 2,
          bodies: ['box'],
          longestStay_s: 60,
          falls: 'never',
          followGap_mm: 800,
          braking: { reaction_s: 1, decel_m_per_s2: 2, gradient_percent: 0, source },
        },
      ],
      crossings: [
        {
          id: 'past',
          name: 'past',
          yMin_mm: 900,
          yMax_mm: 1900,
          slowest_m_per_s: 0.5,
          fastest_m_per_s: 2,
          bodies: ['box'],
          perDay: 9,
          mostPerDay: 3,
        },
      ],
      air: { sideA_degC: 20, sideB_degC: 2, mostPerDay_m3: 900 },
      dangers: {
        points: [
          { id: 'tail', kind: 'tail', obstacle: 'post', part: 'hand' },
          {
            id: 'hinge',
            kind: 'hinge',
            gap_mm: 20,
            part: 'hand',
            from_mm: 100,
            x_mm: 100,
            y_mm: 100,
            guards: [
              { how: 'cover', upTo_mm: 1800, opening_mm: 0, shape: 'slot', distance_mm: 0 },
              { how: 'presence', zone: 'leaf', stops: 'yes' },
              { how: 'edge', sensor: 'strip', stops: 'yes' },
            ],
          },
        ],
        none: ['lifting'],
      },
      control: control(source),
      visibility_m: 50,
    },
    wiring: wired(source),
    sensors: [
      {
        id: 'row',
        name: 'row',
        device: 'downward-row',
        ...placed,
        tolerance_mm: 5,
        learnedIn: 'down',
        source,
        declares: { device: 'electro-sensitive', source },
        ...values,
        planes: [plane, { ...plane, id: 'two', tilt_deg: 5 }],
        warmUp_s: 5,
        outputs,
        fields: [field(source), { ...field(source), id: 'far' }],
      },
      {
        id: 'scan',
        device: 'scanner',
        pose: { x_mm: 1500, y_mm: 260, z_mm: 3300, yaw_deg: 0, tilt_deg: 5, roll_deg: 0 },
        source,
        ...values,
        planes: [{ id: 'fan', fovMin_deg: -40, fovMax_deg: 40, beamCount: 50 }],
      },
      {
        id: 'strip',
        name: 'strip',
        device: 'zone-only',
        source,
        function: 'presence',
        output: 'OUT 9',
        needs: 'a push of 100 N',
        covers: { xMin_mm: 0, xMax_mm: 3000, yMin_mm: -20, yMax_mm: 20 },
      },
    ],
    bodies: [{ id: 'box', name: 'box', reflectance: 0.1, postures: [standing, fallen], source }],
    zones: [
      { ...zone, purpose: 'presence-at-leaf', allowedPocket_mm: 20, allowedPocketSource: source, longestStay_s: 60, family },
      { ...zone, id: 'road', purpose: 'must-not-see', function: 'opening', yMin_mm: 2000, yMax_mm: 3000 },
    ],
    concept: { people: 'public', drive: 'automatic', closingEdge: 'contact-free', lowEnergy: 'no', separation: '2024' },
    tolerances: { length_mm: 5, position_mm: 5, tilt_deg: 0.3, roll_deg: 0.3, yaw_deg: 0.3, floor_mm: 5, range_percent: 0 },
    forceRecords: [
      {
        id: 'a',
        place: 'middle',
        gap_mm: 300,
        peak_N: 200,
        time_s: 0.2,
        mean_N: 60,
        after5s_N: 20,
        instrument: 'gauge 1',
        calibratedUntil: '2027-01-01',
        on: '2026-10-01',
        by: 'A. Reader',
      },
    ],
  }
}

/** A usual wiring on cores of a gauge, all of whose figures are from there. */
function wired(source: object) {
  const { supply, sensors, control: ofControl, cables, ...rest } = firstWiring(['row'])
  const more = [
    { kind: 'contact', name: 'o2', acts: 'opening', from: 'row.a', to: 'row.b', closedIn: ['seen'], on_ohm: 0.2 },
    {
      kind: 'sourcing',
      name: 'o3',
      acts: 'presence',
      at: 'row.p',
      onIn: ['clear'],
      off_ohm: 1e5,
      pulsed: { off_V: 5, within_s: 0.1 },
      settable: 'either-way',
    },
    { kind: 'sinking', name: 'o4', acts: 'presence', at: 'row.n', onIn: ['clear'], pulsed: { off_V: 5, within_s: 0.1 } },
  ]
  return {
    ...rest,
    supply: { ...supply, source },
    sensors: sensors.map((sensor) => ({ ...sensor, outputs: [...sensor.outputs, ...more], source })),
    control: { ...ofControl, source },
    handTest: { mostHidden_percent: 0.1, cable_y: 900, supply_y: 400, resistor_y: 5000, control_y: 800, source },
    cables: [...cables, ...cables.map((cable) => ({ ...cable, id: 'W9', conductor: { awg: 20 } }))],
  }
}

/** Doors in which together everything is said that the app takes: what excludes each other stands in different ones. */
export const FULL: readonly Record<string, unknown>[] = [
  full('Full, sliding, by the page', paper, {
    leaf: {
      travel: 'toward-zero',
      thickness_mm: 40,
      bulge_mm: 5,
      parked: { x_mm: -1700, y_mm: 0, size_mm: [3000, 40], yaw_deg: 0, from_mm: 0, to_mm: 3200 },
    },
    drive: {
      stopDecel_m_per_s2: 3,
      closeJerk_m_per_s3: 5,
      brake: 'brakes',
      openSpeed_m_per_s: 0.4,
      openAccel_m_per_s2: 1,
      openDelay_s: 0.2,
      holdOpen_s: 5,
      movingMass_kg: 90,
      partialOpenings_mm: [1200],
      stoppingCurve: [[0.1, 30]],
      stopTimes: { readings_s: [0.2, 0.21, 0.22], share_percent: 95, confidence_percent: 95 },
      cycle: {
        holdOpenFrom: 'opened',
        closesOnlyByTimer: 'yes',
        preWarning_s: 1,
        outputInWarning: 'waits',
        attempts: 2,
        attemptPause_s: 4,
        attemptWhileHeld: 'waits',
        afterAttempts: 'partial',
      },
    },
  }),
  full('Full, turning, tried', tried, {
    leaf: {
      travel: 'turning',
      thickness_mm: 40,
      hinged: { hinge: 'at-zero', opensTo: 'b', length_mm: 1500, secondPanel_mm: 1500, openAngle_deg: 85 },
      parked: 'none',
    },
    drive: { brake: 'none', coastDecel_m_per_s2: 0.5 },
  }),
  full('Full, downward, coasting by its way', tried, {
    leaf: { travel: 'down', thickness_mm: 40 },
    drive: { brake: 'none', coastWay_mm: 60 },
  }),
]
