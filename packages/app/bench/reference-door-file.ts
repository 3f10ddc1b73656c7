/** The reference job of the engine's bench as a door file; figures are invented. A 5000 x 5000 mm opening, 24,000 placements, 1,505 beams. */
export function referenceDoorFile(): object {
  const source = { basis: 'invented' }
  return {
    sillsight: 1,
    name: 'Reference job (invented)',
    sides: { a: 'yard', b: 'hall' },
    survey: {
      opening: { width_mm: 5000, height_mm: 5000 },
      leaf: { travel: 'down', thickness_mm: 45, bulge_mm: 20, parked: 'none' },
      walls: 'none',
      floor: { profile_mm: [[0, 0]], slopeX_percent: 0, tolerance_mm: 5 },
      visibility_m: 'clear',
      obstacles: [
        { id: 'rack', shape: 'box', x_mm: 3900, y_mm: 2500, size_mm: [1100, 500], from_mm: 0, to_mm: 1800 },
        { id: 'bin', shape: 'box', x_mm: 800, y_mm: 1700, size_mm: [500, 400], from_mm: 0, to_mm: 900 },
        { id: 'pallet', shape: 'box', x_mm: 2500, y_mm: 1500, size_mm: [1150, 780], yaw_deg: 20, from_mm: 0, to_mm: 150 },
        { id: 'desk', shape: 'box', x_mm: 1400, y_mm: 2700, size_mm: [900, 450], yaw_deg: -35, from_mm: 0, to_mm: 1050 },
        { id: 'bollard', shape: 'post', x_mm: 4600, y_mm: 700, radius_mm: 85, from_mm: 0, to_mm: 1000 },
        { id: 'column', shape: 'post', x_mm: 3100, y_mm: 2850, radius_mm: 160, from_mm: 0, to_mm: 5000 },
      ],
    },
    sensors: [
      {
        id: 'corner',
        name: 'scanner in the corner',
        device: 'scanner',
        source,
        pose: { x_mm: 60, y_mm: 90, z_mm: 4930, yaw_deg: 0, tilt_deg: 15, roll_deg: 40 },
        planes: [-8, -4, 0, 4, 8].map((offset_deg, i) => ({
          id: `plane-${i + 1}`,
          offset_deg,
          fovMin_deg: -55,
          fovMax_deg: 55,
          beamCount: 301,
        })),
        maxRange_mm: 13_000,
        rangeRef_mm: 10_500,
        reflectanceRef: 0.1,
        backgroundMargin_mm: 60,
        spotRadius_mm: 0,
        fields: [
          {
            id: 'near',
            xMin_mm: 0,
            xMax_mm: 5000,
            yMin_mm: 'open',
            yMax_mm: 'open',
            clearance_mm: 40,
            top_mm: 2500,
            clusterBeams: 1,
            output: 'out 1',
            function: 'presence',
            presenceTime_s: 'for-ever',
          },
        ],
      },
    ],
    bodies: [
      {
        id: 'box',
        name: '700 x 300 x 200',
        reflectance: 0.3,
        source,
        postures: [
          [200, 300, 700],
          [700, 300, 200],
          [200, 700, 300],
        ].map((size_mm) => ({ shape: 'box', size_mm })),
      },
    ],
    zones: [
      { id: 'z', purpose: 'presence-at-leaf', xMin_mm: 0, xMax_mm: 5000, yMin_mm: 0, yMax_mm: 3000, pitch_mm: 25, longestStay_s: 60 },
    ],
    concept: { people: 'public', drive: 'automatic', closingEdge: 'contact-free' },
  }
}
