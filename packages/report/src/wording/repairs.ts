import { cos, type Door, type FieldPart, type Finding, type Pose, type Repair, type RepairStep, type Sensor } from '@sillsight/engine'
import type { Units } from '../options.ts'
import { obstacleName } from './causes.ts'
import { figure, tape } from './figures.ts'
import { alongTheLeaf, handOf, outFromTheLeaf, sideName, sideOf } from './places.ts'
import { capital, plain } from './plain.ts'
import { ruleName } from './sentence.ts'

interface In {
  readonly units: Units
}

/** A repair in steps that hands can make: "Move sensor “corner” 120 mm up, to 2620 mm above the floor. Lean it 1° more toward the yard, to 1°." */
export function repairWords(door: Door, steps: readonly RepairStep[], { units }: In): string {
  return steps.map((step) => `${capital(stepWords(door, step, steps, units))}.`).join(' ')
}

function stepWords(door: Door, step: RepairStep, all: readonly RepairStep[], units: Units): string {
  switch (step.kind) {
    case 'move-sensor':
      return movedWords(door, step, all, units)
    case 'set-field':
      return fieldWords(door, step, all, units)
    case 'add-sensor': {
      const { pose } = step
      const viewer = sideOf(pose.y_mm)
      const where = `${tape(pose.z_mm, units)} up, ${alongTheLeaf(door, pose.x_mm, viewer, units)}, ${outFromTheLeaf(door, pose.y_mm, units)}`
      return `add a second sensor like ${sensorWords(door, step.like, all)}: ${where}, seen from ${sideName(door, viewer)}, with the same settings and on the same input`
    }
    case 'remove-obstacle':
      return `take the ${obstacleName(door, step.obstacle)} away`
  }
}

/** A sensor that this repair adds has no name yet. */
function sensorWords(door: Door, id: string, all: readonly RepairStep[]): string {
  if (all.some((step) => step.kind === 'add-sensor' && step.id === id)) return 'the new sensor'
  return `“${plain(door.sensors.find((sensor) => sensor.id === id)?.name ?? id)}”`
}

function movedWords(
  door: Door,
  { sensor: id, part, from, to }: Extract<RepairStep, { kind: 'move-sensor' }>,
  all: readonly RepairStep[],
  units: Units,
): string {
  const which = sensorWords(door, id, all)
  const pose = poseOf(door.sensors, id, all)
  const by = tape(Math.abs(to - from), units)
  const viewer = sideOf(pose.y_mm)
  const seen = `seen from ${sideName(door, viewer)}`
  switch (part) {
    case 'x_mm':
      return `move ${which} ${by} to the ${handOf(to > from ? 'width' : 'zero', viewer)}, ${seen}: to ${alongTheLeaf(door, to, viewer, units)}`
    case 'y_mm':
      return `move ${which} ${by} ${Math.abs(to) > Math.abs(from) ? 'farther from the leaf' : 'nearer to the leaf'}: to ${outFromTheLeaf(door, to, units)}`
    case 'z_mm':
      return `hang ${which} ${by} ${to > from ? 'higher' : 'lower'}: ${tape(to, units)} above the floor`
    case 'tilt_rad': {
      const ahead = to > from ? cos(pose.yaw_rad) : -cos(pose.yaw_rad)
      return `lean ${which} ${angle(to - from, units)} more toward ${sideName(door, ahead >= 0 ? 'a' : 'b')}, to a tilt of ${figure({ value: to, unit: 'rad' }, units)}`
    }
    case 'roll_rad': {
      const across = to > from ? cos(pose.yaw_rad) : -cos(pose.yaw_rad)
      return `turn the fan of ${which} ${angle(to - from, units)} in its own plane toward the ${handOf(across >= 0 ? 'width' : 'zero', viewer)} jamb, ${seen}: to a roll of ${figure({ value: to, unit: 'rad' }, units)}`
    }
    case 'yaw_rad':
      return `turn ${which} ${angle(to - from, units)} ${to > from ? 'counter-clockwise' : 'clockwise'}, seen from above: to a yaw of ${figure({ value: to, unit: 'rad' }, units)}`
  }
}

function angle(by_rad: number, units: Units): string {
  return figure({ value: Math.abs(by_rad), unit: 'rad' }, units)
}

const NOWHERE: Pose = { x_mm: 0, y_mm: 0, z_mm: 0, yaw_rad: 0, tilt_rad: 0, roll_rad: 0 }

function poseOf(sensors: readonly Sensor[], id: string, all: readonly RepairStep[]): Pose {
  for (const step of all) if (step.kind === 'add-sensor' && step.id === id) return step.pose
  const sensor = sensors.find((each) => each.id === id)
  return sensor?.kind === 'ranging' ? sensor.pose : NOWHERE
}

const PARTS: Readonly<Record<FieldPart, string>> = {
  clearance_mm: 'its clearance above the floor',
  top_mm: 'its top above the floor',
  xMin_mm: 'where it begins along x',
  xMax_mm: 'where it ends along x',
  yMin_mm: 'where it begins along y',
  yMax_mm: 'where it ends along y',
  clusterBeams: 'the number of neighbouring beams that must agree',
}

function fieldWords(
  door: Door,
  { sensor: id, field, part, from, to }: Extract<RepairStep, { kind: 'set-field' }>,
  all: readonly RepairStep[],
  units: Units,
): string {
  const sensor = door.sensors.find((each) => each.id === id)
  const name = sensor?.kind === 'zone-only' ? undefined : sensor?.fields.find((each) => each.id === field)?.name
  const told = (value: number) => (part === 'clusterBeams' ? String(value) : tape(value, units))
  return `in field “${plain(name ?? field)}” of ${sensorWords(door, id, all)}, set ${PARTS[part]} from ${told(from)} to ${told(to)}`
}

/** What a repair brings about: the finding itself, and what else it puts in order. */
export function repairOutcome(before: readonly Finding[], { then, alsoMends }: Repair): string {
  const waits =
    then.verdict === 'undetermined'
      ? 'That puts it in order as far as it can be judged; what it rests on is still to be confirmed.'
      : 'That puts it in order.'
  const names = alsoMends.map((id) => ruleName(before.find((finding) => finding.id === id)?.rule ?? id))
  return names.length === 0 ? waits : `${waits} It also puts in order: ${[...new Set(names)].join(', ')}.`
}
