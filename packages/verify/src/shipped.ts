import type { Json } from './json.ts'
import { SHIPPED_OF_PARTS } from './shipped-of-parts.ts'

/** What ships with the program and `use` may name, retyped: a test holds it against what does ship. Sensors are invented, for demonstration. */

const fan = (offset_deg: number, i: number) => ({ id: `plane-${i + 1}`, offset_deg, fovMin_deg: -53, fovMax_deg: 53, beamCount: 266 })
const leaf = { id: 'leaf', function: 'presence', xMin_mm: 'open', xMax_mm: 'open', top_mm: 'open' }

export const SHIPPED_SENSORS: Readonly<Record<string, Json>> = {
  'demo-header-scanner': {
    device: 'scanner',
    planes: [-3.7, -1.9, 0, 2.3, 5.1].map(fan),
    maxRange_mm: 8700,
    rangeRef_mm: 7900,
    reflectanceRef: 0.07,
    backgroundMargin_mm: 67,
    spotRadius_mm: 0,
    usualTilt_deg: 5,
    fields: [{ ...leaf, clearance_mm: 70, clusterBeams: 2, presenceTime_s: 'for-ever' }],
  },
  'demo-header-row': {
    device: 'downward-row',
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
    fields: [{ ...leaf, clearance_mm: 130, clusterBeams: 1, presenceTime_s: 43 }],
  },
  'demo-single-curtain': {
    device: 'scanner',
    planes: [{ id: 'curtain', offset_deg: 0, fovMin_deg: -61, fovMax_deg: 61, beamCount: 163 }],
    maxRange_mm: 5900,
    rangeRef_mm: 5300,
    reflectanceRef: 0.13,
    backgroundMargin_mm: 95,
    spotRadius_mm: 9,
    usualTilt_deg: 7,
    fields: [{ ...leaf, clearance_mm: 110, clusterBeams: 3, presenceTime_s: 'for-ever' }],
  },
}

export const SHIPPED_BODIES: Readonly<Record<string, Json>> = {
  'presence-reference-body': {
    reflectance: 0.1,
    postures: [
      { shape: 'box', size_mm: [700, 300, 200] },
      { shape: 'box', size_mm: [300, 700, 200] },
      { shape: 'box', size_mm: [300, 200, 700] },
    ],
  },
  'passing-person': { reflectance: 0.05, postures: [{ shape: 'box', size_mm: [500, 300, 1700] }] },
  ...SHIPPED_OF_PARTS,
}
