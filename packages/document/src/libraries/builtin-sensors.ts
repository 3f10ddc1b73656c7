import type { LibrarySensor } from '../schema/sensor.ts'

const INVENTED = {
  basis: 'invented',
  note: 'Demonstration figures: no such sensor exists. Enter the values of the one in your hand.',
} as const

/**
 * Sensors that ship with the program so that a first door can be judged before any data sheet is at hand. Invented, with odd figures on
 * purpose, so that nobody takes them for a device. Each can hang over a door by side, mounting height and offset alone.
 */
export const BUILTIN_SENSORS: ReadonlyMap<string, LibrarySensor> = new Map<string, LibrarySensor>([
  [
    'demo-header-scanner',
    {
      name: 'invented header scanner, 5 planes',
      device: 'scanner',
      source: INVENTED,
      planes: [-3.7, -1.9, 0, 2.3, 5.1].map((offset_deg, i) => ({
        id: `plane-${i + 1}`,
        offset_deg,
        fovMin_deg: -53,
        fovMax_deg: 53,
        beamCount: 266,
      })),
      maxRange_mm: 8700,
      rangeRef_mm: 7900,
      reflectanceRef: 0.07,
      backgroundMargin_mm: 67,
      spotRadius_mm: 0,
      usualTilt_deg: 5,
      fields: [
        {
          id: 'leaf',
          output: 'OUT 1',
          function: 'presence',
          xMin_mm: 'open',
          xMax_mm: 'open',
          clearance_mm: 70,
          top_mm: 'open',
          clusterBeams: 2,
          presenceTime_s: 'for-ever',
        },
      ],
    },
  ],
  [
    'demo-header-row',
    {
      name: 'invented row of downward beams',
      device: 'downward-row',
      source: INVENTED,
      planes: [
        { id: 'near', beamCount: 23, spacing_mm: 83, tilt_deg: 4 },
        { id: 'far', beamCount: 23, spacing_mm: 83, tilt_deg: 13 },
      ],
      maxRange_mm: 3300,
      rangeRef_mm: 2900,
      reflectanceRef: 0.09,
      backgroundMargin_mm: 110,
      spotRadius_mm: 17,
      usualTilt_deg: 0,
      fields: [
        {
          id: 'leaf',
          output: 'OUT 1',
          function: 'presence',
          xMin_mm: 'open',
          xMax_mm: 'open',
          clearance_mm: 130,
          top_mm: 'open',
          clusterBeams: 1,
          presenceTime_s: 43,
        },
      ],
    },
  ],
  [
    'demo-single-curtain',
    {
      name: 'invented scanner, a single curtain',
      device: 'scanner',
      source: INVENTED,
      planes: [{ id: 'curtain', offset_deg: 0, fovMin_deg: -61, fovMax_deg: 61, beamCount: 163 }],
      maxRange_mm: 5900,
      rangeRef_mm: 5300,
      reflectanceRef: 0.13,
      backgroundMargin_mm: 95,
      spotRadius_mm: 9,
      usualTilt_deg: 7,
      fields: [
        {
          id: 'leaf',
          output: 'OUT 1',
          function: 'presence',
          xMin_mm: 'open',
          xMax_mm: 'open',
          clearance_mm: 110,
          top_mm: 'open',
          clusterBeams: 3,
          presenceTime_s: 'for-ever',
        },
      ],
    },
  ],
])
