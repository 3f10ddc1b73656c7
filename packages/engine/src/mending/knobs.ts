import type { Door } from '../model/door.ts'
import type { Finding, Judgement } from '../model/finding.ts'
import type { Pose, RangingSensor } from '../model/sensor.ts'
import { PI, radians } from '../space/trigonometry.ts'
import type { FieldPart, RepairStep } from './repair.ts'
import { timeKnobs } from './time-knobs.ts'

/** One measure that can be set: in whole grains, between two limits. */
export interface Knob {
  readonly from: number
  readonly grain: number
  readonly low: number
  readonly high: number
  /** How far a hand would turn it before it says that this is another job. */
  readonly most: number
  readonly step: (to: number) => RepairStep
}

/** Lengths are set to 5 mm and angles to half a degree: what a tape and a bracket can do. */
const LENGTH_GRAIN_MM = 5
const ANGLE_GRAIN_RAD = radians(0.5)

const MOST_UP_MM = 600
const MOST_OUT_MM = 300
const MOST_TURN_RAD = radians(15)
const HIGHEST_OVER_MM = 800

/** The zone that a finding is about, if it is about one: a pocket is named `<zone>/<letter>`. */
function zoneOf({ subject }: Finding): string | undefined {
  return subject.kind === 'zone' || subject.kind === 'pocket' ? subject.id.split('/')[0] : undefined
}

/** Sensors, and of each the fields, that a finding can depend on. */
function concerned(
  door: Door,
  judgement: Judgement,
  finding: Finding,
): readonly { readonly sensor: RangingSensor; readonly fields: readonly string[] }[] {
  const zone = zoneOf(finding)
  const counted = new Set(judgement.coverages.filter((c) => c.zone === zone).flatMap(({ countedFields }) => countedFields))
  return door.sensors.flatMap((sensor) => {
    if (sensor.kind !== 'ranging') return []
    const fields = sensor.fields.map(({ id }) => id)
    if (zone !== undefined) {
      const counting = fields.filter((id) => counted.has(`${sensor.id}/${id}`))
      return counting.length > 0 ? [{ sensor, fields: counting }] : []
    }
    const [ownSensor, ownField] = finding.subject.id.split('/')
    if (finding.subject.kind === 'door') return [{ sensor, fields }]
    return ownSensor === sensor.id ? [{ sensor, fields: fields.filter((id) => ownField === undefined || id === ownField) }] : []
  })
}

/** What can be turned, moved or set for a finding. */
export function knobsOf(door: Door, judgement: Judgement, finding: Finding): readonly Knob[] {
  if (finding.subject.kind === 'lane') return [...timeKnobs(door), ...reachKnobs(door)]
  return concerned(door, judgement, finding).flatMap(({ sensor, fields }) => [
    ...poseKnobs(door, sensor),
    ...sensor.fields.filter(({ id }) => fields.includes(id)).flatMap((field) => fieldKnobs(sensor.id, field)),
  ])
}

/** Whoever passes is seen earlier by a field that reaches farther out. */
function reachKnobs(door: Door): readonly Knob[] {
  return door.sensors.flatMap((sensor) => {
    if (sensor.kind !== 'ranging') return []
    const fields = sensor.fields.filter((field) => field.function === 'presence')
    return fields.flatMap((field) => (['yMin_mm', 'yMax_mm'] as const).flatMap((part) => sideKnob(sensor.id, field, part)))
  })
}

function poseKnobs(door: Door, { id, pose, planes }: RangingSensor): readonly Knob[] {
  const { width_mm, height_mm } = door.opening
  const knob = (part: keyof Pose, low: number, high: number, most: number, grain: number): Knob => ({
    from: pose[part],
    grain,
    low,
    high,
    most,
    step: (to) => ({ kind: 'move-sensor', sensor: id, part, from: pose[part], to }),
  })
  const onSideA = pose.y_mm >= 0
  const lengths = [
    knob('x_mm', Math.min(0, pose.x_mm), Math.max(width_mm, pose.x_mm), width_mm, LENGTH_GRAIN_MM),
    knob('y_mm', onSideA ? 0 : -Infinity, onSideA ? Infinity : 0, MOST_OUT_MM, LENGTH_GRAIN_MM),
    knob('z_mm', 0, Math.max(height_mm + HIGHEST_OVER_MM, pose.z_mm), MOST_UP_MM, LENGTH_GRAIN_MM),
  ]
  // a row leans by its planes and does not follow the pose's turns
  if (planes.every(({ kind }) => kind === 'row')) return lengths
  const turns = (['tilt_rad', 'yaw_rad', 'roll_rad'] as const).map((part) => knob(part, -2 * PI, 2 * PI, MOST_TURN_RAD, ANGLE_GRAIN_RAD))
  return [...turns, ...lengths]
}

type Limits = Pick<Knob, 'low' | 'high' | 'most' | 'grain'>

function fieldKnob(sensor: string, field: RangingSensor['fields'][number], part: FieldPart, limits: Limits): readonly Knob[] {
  const from = field[part]
  return Number.isFinite(from) ? [{ ...limits, from, step: (to) => ({ kind: 'set-field', sensor, field: field.id, part, from, to }) }] : []
}

function sideKnob(sensor: string, field: RangingSensor['fields'][number], part: FieldPart): readonly Knob[] {
  return fieldKnob(sensor, field, part, { low: -Infinity, high: Infinity, most: MOST_UP_MM, grain: LENGTH_GRAIN_MM })
}

function fieldKnobs(sensor: string, field: RangingSensor['fields'][number]): readonly Knob[] {
  const side = (part: FieldPart) => sideKnob(sensor, field, part)
  return [
    ...fieldKnob(sensor, field, 'clearance_mm', { low: 0, high: field.top_mm, most: MOST_OUT_MM, grain: LENGTH_GRAIN_MM }),
    ...fieldKnob(sensor, field, 'clusterBeams', { low: 1, high: field.clusterBeams, most: field.clusterBeams, grain: 1 }),
    ...side('xMin_mm'),
    ...side('xMax_mm'),
    ...side('yMin_mm'),
    ...side('yMax_mm'),
    ...side('top_mm'),
  ]
}

/** Repairs that are no knob: another sensor of the same kind, and a thing that stands in the way taken away. */
export function wholeSteps(door: Door, judgement: Judgement, finding: Finding): readonly RepairStep[] {
  const zone = zoneOf(finding)
  if (zone === undefined) return []
  const hiding = judgement.coverages
    .filter((coverage) => coverage.zone === zone)
    .flatMap(({ pockets }) => pockets.flatMap(({ causes }) => causes.flatMap(({ obstacle }) => (obstacle === undefined ? [] : [obstacle]))))
  const listed = new Set(door.states.flatMap(({ obstacles }) => obstacles.filter(({ implied }) => !implied).map(({ id }) => id)))
  const taken = [...new Set(hiding)].filter((id) => listed.has(id)).map((obstacle): RepairStep => ({ kind: 'remove-obstacle', obstacle }))
  const added = concerned(door, judgement, finding).flatMap(({ sensor }) =>
    [mirroredAcross(door, sensor.pose), mirroredThrough(sensor.pose)]
      .filter((pose) => apart(pose, sensor.pose))
      .map((pose): RepairStep => ({ kind: 'add-sensor', like: sensor.id, id: freeId(door, sensor.id), pose })),
  )
  return [...taken, ...added]
}

/**
 * The other end of the opening, looking back. A fan that looks along the leaf to one side is turned round; one that hangs in the middle is mirrored.
 */
function mirroredAcross(door: Door, pose: Pose): Pose {
  const turned =
    Math.abs(Math.abs(pose.yaw_rad) - PI) < 1e-9
      ? { yaw_rad: 0, tilt_rad: -pose.tilt_rad }
      : { yaw_rad: -pose.yaw_rad, roll_rad: -pose.roll_rad }
  return { ...pose, x_mm: door.opening.width_mm - pose.x_mm, ...turned }
}

/** The other side of the leaf, facing away from it likewise. */
function mirroredThrough(pose: Pose): Pose {
  return { ...pose, y_mm: -pose.y_mm, yaw_rad: pose.yaw_rad > 0 ? pose.yaw_rad - PI : pose.yaw_rad + PI }
}

function apart(a: Pose, b: Pose): boolean {
  return Math.abs(a.x_mm - b.x_mm) + Math.abs(a.y_mm - b.y_mm) > 100
}

function freeId(door: Door, like: string): string {
  for (let n = 2; ; n++) {
    const id = `${like}-${n}`
    if (!door.sensors.some((sensor) => sensor.id === id)) return id
  }
}
