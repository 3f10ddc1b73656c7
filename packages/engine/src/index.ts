export type { Body, BoxPosture, CylinderPosture, Posture } from './model/body.ts'
export type { BoxObstacle, Door, DoorState, Floor, Leaf, Obstacle, PostObstacle, ProtectionConcept } from './model/door.ts'
export type {
  Cause, CellRun, Crash, Finding, Judgement, NotApplicableReason, Pocket, Step, StepInput, Subject, UndeterminedReason, Verdict, WorstCase, ZoneCoverage,
} from './model/finding.ts'
export type { BeamPlane, FanPlane, Field, Pose, RangingSensor, RowPlane, SegmentPlane, SegmentSensor, Sensor, ZoneOnlySensor } from './model/sensor.ts'
export type { Basis, Confirmation, InputPath, OutsideValue, Quantity, Source, Unit } from './model/source.ts'
export type { SensingFunction, SizeFamily, Zone } from './model/zone.ts'
export { floorHeight, floorPieces } from './space/floor.ts'
export { cos, radians, sin } from './space/trigonometry.ts'
