/**
 * The largest door file that is read. Bounds keep a hostile file from hanging or exhausting the programs that read, check and judge it;
 * each is far above what a real door needs, so none errs against an honest file. They are our decision (docs/decisions/door-file-bounds.md).
 */
export const BOUNDS = {
  /** UTF-16 code units of the text, checked before anything else looks at it. */
  textLength: 8 * 1024 * 1024,
  /** Objects and lists within each other; the deepest known field lies 9 deep, the rest is room for what later versions carry. */
  depth: 32,
  /** Objects, lists, texts, numbers, true, false and null in the whole file. */
  values: 200_000,
  /** Code units of one text that no field bounds tighter, such as a picture inside of a record. */
  textValue: 1_000_000,
  key: 200,
  libraryLength: 2 * 1024 * 1024,

  name: 200,
  note: 20_000,
  id: 60,
  /** Half a kilometre: farther than any door, gate or light beam across one. */
  length_mm: 500_000,

  sensors: 32,
  planes: 64,
  fields: 32,
  beamsOfPlane: 4096,
  /** All beams of one door together. */
  beams: 16_384,
  obstacles: 200,
  profilePoints: 50,
  states: 16,
  bodies: 32,
  postures: 32,
  partsOfPosture: 16,
  zones: 32,
  /** Cells of one zone at its pitch: a yard of 10 m by 6 m at 25 mm has 96,000. */
  cellsOfZone: 100_000,
  /** Strokes of the judge: one beam over one row of the grid for one posture (`door/work.ts`). */
  work: 400_000_000,
  /** Sizes that a family tries. */
  familySizes: 400,
  lanes: 32,
  crossings: 8,
  /** Ways of one body through the doorway that are judged in time: lanes times places across times directions times postures times states times openings. */
  passages: 2000,
  stoppingReadings: 1000,
  partialOpenings: 4,
  closingAttempts: 20,
  blankings: 16,
  dangers: 64,
  forceRecords: 500,
  guards: 8,
  readings: 50,
  volt: 60,
  wiredSensors: 16,
  wiredOutputs: 16,
  wiredInputs: 32,
  cables: 32,
  coresOfCable: 40,
  resistors: 64,
  joints: 200,
  confirmations: 200,
  libraries: 16,
  libraryEntries: 500,
  /** Issues that are listed; the rest is only counted. */
  issues: 100,
  notes: 100,
} as const
