export { type Evidence, evidenceOf, type TolerancesInFile } from './coverage/evidence.ts'
export { type FieldLook, type Look, looker } from './coverage/looking.ts'
export type { Stance } from './coverage/scene.ts'
export { type ByHand, handTestOf } from './judge/by-hand.ts'
export { canonicalText } from './judge/canonical-text.ts'
export { protects } from './judge/fields.ts'
export { type Depth, type JudgeOptions, judge } from './judge/judge.ts'
export { lanesEvidence } from './judge/lane-passing.ts'
export type { Rule } from './judge/rule.ts'
export { RULES } from './judge/rules.ts'
export { faultFacts } from './judge/single-fault.ts'
export { LEAST_STOPS } from './judge/stop-time.ts'
export { type DrivePart, type FieldPart, type OutputPart, type RepairStep, repaired } from './mending/repair.ts'
export { type Rejected, type Repair, type Repairs, repairs } from './mending/repairs.ts'
export type { Tried } from './mending/search.ts'
export { type Body, type BodyPart, type BoxPosture, type CylinderPosture, isOfParts, type Posture, partsOf } from './model/body.ts'
export type { Control } from './model/control.ts'
export { type Course, courseEnds, type Reading, readingAt, type TimeSpan } from './model/course.ts'
export { type CaughtPart, type DangerKind, type Dangers, EXPECTED_DANGERS, type Guard } from './model/danger.ts'
export type {
  BoxObstacle,
  Door,
  DoorState,
  Floor,
  HingedLeaf,
  Leaf,
  Obstacle,
  PostObstacle,
  ProtectionConcept,
  Tolerances,
} from './model/door.ts'
export type {
  BlindRegion,
  Cause,
  CellRun,
  Crash,
  Finding,
  Judgement,
  NotApplicableReason,
  Pocket,
  PointMm,
  Step,
  StepInput,
  Subject,
  UndeterminedReason,
  Verdict,
  WorstCase,
  ZoneCoverage,
} from './model/finding.ts'
export type {
  Approach,
  BeamPlane,
  Declared,
  FanPlane,
  Field,
  Output,
  Pose,
  RangingSensor,
  RowPlane,
  SegmentPlane,
  SegmentSensor,
  Sensor,
  ZoneOnlySensor,
} from './model/sensor.ts'
export type { Basis, Confirmation, InputPath, OutsideValue, Quantity, Source, Unit } from './model/source.ts'
export type { ForceRecord } from './model/test-record.ts'
export type { Air, Braking, ControlCycle, Crossing, Drive, Lane } from './model/traffic.ts'
export type {
  Band,
  Cable,
  ControlInput,
  Core,
  SensorState,
  SensorSwitch,
  Supply,
  Terminal,
  WiredSensor,
  Wiring,
} from './model/wiring.ts'
export type { SensingFunction, SizeFamily, Zone } from './model/zone.ts'
export { closingFrom } from './motion/leaf-run.ts'
export { leafCorners, type TurningLeaf, turningLeaf } from './motion/turning-leaf.ts'
export { type BeamSpot, beamSpots, type PlaneSpots } from './seeing/beam-spots.ts'
export { floorHeight, floorPieces } from './space/floor.ts'
export { cos, radians, sin } from './space/trigonometry.ts'
export { conductorOhm_per_km } from './values/conductors.ts'
export { EDITIONS, OUTSIDE_VALUES } from './values/editions.ts'
export { partsFrom } from './wiring/connecting.ts'
export { type Diagnosis, diagnosis, type Meter, type Observation, type Standing } from './wiring/diagnosis.ts'
export { EFFECTS, type Effect, type FaultEffect, faultEffects } from './wiring/fault-effects.ts'
export type { Fault } from './wiring/faults.ts'
export { type Played, played } from './wiring/played.ts'
export { type SecondFaults, secondFaults } from './wiring/second-faults.ts'
export { comparedScores, type Proposal, type Synthesis, scoreOf, synthesis, type WiringScore } from './wiring/synthesis.ts'
export { type WiringEvidence, wiringEvidence } from './wiring/wiring-evidence.ts'
