/**
 * What stands in for things that nobody entered, so that six values give a first verdict. All of it is our decision
 * (docs/decisions/first-verdict-defaults.md), each use is listed in `Door.assumed`, and nothing that rests on one passes. They err toward
 * seeing, so that a fail found with them is a fail of the door and not of the default; the zone and the bodies are what is usual to test.
 */
export const DEFAULTS = {
  /** How far a zone of presence at the leaf reaches from the mid-plane of the leaf. */
  zoneDepth_mm: 1000,
  pitch_mm: 25,
  clearance_mm: 0,
  clusterBeams: 1,
  backgroundMargin_mm: 0,
  bulge_mm: 0,
  slopeX_percent: 0,
  bodyReflectance: 0.1,
} as const

/** Where a door file names no edition, the newest one judges. */
export const UNNAMED_DOOR = 'door without a name'
