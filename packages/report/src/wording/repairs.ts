import { cos, type Door, type Finding, type Pose, type Repair, type RepairStep, type Sensor } from '@sillsight/engine'
import { obstacleName } from './causes.ts'
import { figure, tape } from './figures.ts'
import type { Reader } from './language.ts'
import { alongTheLeaf, handOf, outFromTheLeaf, sideName, sideOf } from './places.ts'
import { called, capital, plain } from './plain.ts'
import { ruleName } from './sentence.ts'

/** A repair in steps that hands can make: "Move sensor “corner” 120 mm up, to 2620 mm above the floor. Lean it 1° more toward the yard, to 1°." */
export function repairWords(door: Door, steps: readonly RepairStep[], reader: Reader): string {
  return steps.map((step) => `${capital(stepWords(door, step, steps, reader))}.`).join(' ')
}

function stepWords(door: Door, step: RepairStep, all: readonly RepairStep[], reader: Reader): string {
  const { repairs } = reader.language
  switch (step.kind) {
    case 'move-sensor':
      return movedWords(door, step, all, reader)
    case 'set-field':
      return fieldWords(door, step, all, reader)
    case 'add-sensor': {
      const { pose } = step
      const viewer = sideOf(pose.y_mm)
      const along = alongTheLeaf(door, pose.x_mm, viewer, reader)
      const out = outFromTheLeaf(door, pose.y_mm, reader)
      return repairs.add(sensorWords(door, step.like, all, reader), tape(pose.z_mm, reader), along, out, sideName(door, viewer, reader))
    }
    case 'set-drive': {
      const unit = step.part === 'closeSpeed_mm_per_s' ? 'mm_per_s' : 's'
      return repairs.drive[step.part](figure({ value: step.from, unit }, reader), figure({ value: step.to, unit }, reader))
    }
    case 'set-outputs': {
      const outputs = step.fields.map((named) => outputWords(door, named, all, reader))
      const [from, to] = [step.from, step.to].map((value) => figure({ value, unit: 's' }, reader))
      return repairs.outputs[step.part](reader.language.listed(outputs), from ?? '', to ?? '')
    }
    case 'remove-obstacle':
      return repairs.remove(obstacleName(door, step.obstacle, reader))
  }
}

function outputWords(
  door: Door,
  named: { readonly sensor: string; readonly field: string },
  all: readonly RepairStep[],
  reader: Reader,
): string {
  const sensor = door.sensors.find(({ id }) => id === named.sensor)
  const field = sensor?.kind === 'zone-only' ? undefined : sensor?.fields.find(({ id }) => id === named.field)
  return reader.language.repairs.outputOf(called(field?.output ?? named.field, reader), sensorWords(door, named.sensor, all, reader))
}

/** A sensor that this repair adds has no name yet. */
function sensorWords(door: Door, id: string, all: readonly RepairStep[], reader: Reader): string {
  const { repairs, quoted } = reader.language
  if (all.some((step) => step.kind === 'add-sensor' && step.id === id)) return repairs.newSensor
  return quoted(called(door.sensors.find((sensor) => sensor.id === id)?.name ?? id, reader))
}

function movedWords(
  door: Door,
  { sensor: id, part, from, to }: Extract<RepairStep, { kind: 'move-sensor' }>,
  all: readonly RepairStep[],
  reader: Reader,
): string {
  const { repairs } = reader.language
  const which = sensorWords(door, id, all, reader)
  const pose = poseOf(door.sensors, id, all)
  const viewer = sideOf(pose.y_mm)
  const side = sideName(door, viewer, reader)
  const angle = (value: number) => figure({ value, unit: 'rad' }, reader)
  const [byLength, byAngle] = [tape(Math.abs(to - from), reader), angle(Math.abs(to - from))]
  const ahead = (to > from ? cos(pose.yaw_rad) : -cos(pose.yaw_rad)) >= 0
  switch (part) {
    case 'x_mm':
      return repairs.along(which, byLength, handOf(to > from ? 'width' : 'zero', viewer), side, alongTheLeaf(door, to, viewer, reader))
    case 'y_mm':
      return repairs.out(which, byLength, Math.abs(to) > Math.abs(from), outFromTheLeaf(door, to, reader))
    case 'z_mm':
      return repairs.up(which, byLength, to > from, tape(to, reader))
    case 'tilt_rad':
      return repairs.tilt(which, byAngle, sideName(door, ahead ? 'a' : 'b', reader), angle(to))
    case 'roll_rad':
      return repairs.roll(which, byAngle, handOf(ahead ? 'width' : 'zero', viewer), side, angle(to))
    case 'yaw_rad':
      return repairs.yaw(which, byAngle, to > from, angle(to))
  }
}

const NOWHERE: Pose = { x_mm: 0, y_mm: 0, z_mm: 0, yaw_rad: 0, tilt_rad: 0, roll_rad: 0 }

function poseOf(sensors: readonly Sensor[], id: string, all: readonly RepairStep[]): Pose {
  for (const step of all) if (step.kind === 'add-sensor' && step.id === id) return step.pose
  const sensor = sensors.find((each) => each.id === id)
  return sensor?.kind === 'ranging' ? sensor.pose : NOWHERE
}

function fieldWords(
  door: Door,
  { sensor: id, field, part, from, to }: Extract<RepairStep, { kind: 'set-field' }>,
  all: readonly RepairStep[],
  reader: Reader,
): string {
  const { repairs } = reader.language
  const sensor = door.sensors.find((each) => each.id === id)
  const name = sensor?.kind === 'zone-only' ? undefined : sensor?.fields.find((each) => each.id === field)?.name
  const told = (value: number) => (part === 'clusterBeams' ? String(value) : tape(value, reader))
  return repairs.set(plain(name ?? field), sensorWords(door, id, all, reader), repairs.parts[part], told(from), told(to))
}

/** What a repair brings about: the finding itself, and what else it puts in order. */
export function repairOutcome(before: readonly Finding[], { then, alsoMends }: Repair, reader: Reader): string {
  const { repairs } = reader.language
  const outcome = then.verdict === 'undetermined' ? repairs.waits : repairs.inOrder
  const names = alsoMends.map((id) => ruleName(before.find((finding) => finding.id === id)?.rule ?? id, reader))
  return names.length === 0 ? outcome : `${outcome} ${repairs.also([...new Set(names)].join(', '))}`
}
