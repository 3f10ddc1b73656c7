import type { Door } from '../model/door.ts'
import type { Field, Pose, RangingSensor, Sensor } from '../model/sensor.ts'
import type { Drive } from '../model/traffic.ts'

export type FieldPart = 'xMin_mm' | 'xMax_mm' | 'yMin_mm' | 'yMax_mm' | 'clearance_mm' | 'top_mm' | 'clusterBeams'

/** What can be set at a control: speeds and delays of the leaf. */
export type DrivePart = Extract<keyof Drive, 'closeSpeed_mm_per_s' | 'stopDelay_s' | 'reverseDelay_s'>
/** What can be set at an output. */
export type OutputPart = Extract<keyof Field, 'response_s' | 'hold_s'>

/** One thing that hands can do to a door. Doorway frame, mm and radians. */
export type RepairStep =
  | { readonly kind: 'move-sensor'; readonly sensor: string; readonly part: keyof Pose; readonly from: number; readonly to: number }
  | {
      readonly kind: 'set-field'
      readonly sensor: string
      readonly field: string
      readonly part: FieldPart
      readonly from: number
      readonly to: number
    }
  /** Another sensor with the values and fields of `like`, in another place. */
  | { readonly kind: 'add-sensor'; readonly like: string; readonly id: string; readonly pose: Pose }
  | { readonly kind: 'set-drive'; readonly part: DrivePart; readonly from: number; readonly to: number }
  /** The outputs of several fields set alike: one is seldom enough where a body can come from both sides. */
  | {
      readonly kind: 'set-outputs'
      readonly part: OutputPart
      readonly fields: readonly { readonly sensor: string; readonly field: string }[]
      readonly from: number
      readonly to: number
    }
  | { readonly kind: 'remove-obstacle'; readonly obstacle: string }

/**
 * The door after these steps.
 *
 * @throws where a step names something that the door does not have
 */
export function repaired(door: Door, steps: readonly RepairStep[]): Door {
  return steps.reduce(afterStep, door)
}

function afterStep(door: Door, step: RepairStep): Door {
  switch (step.kind) {
    case 'move-sensor':
      return withSensor(door, step.sensor, (sensor) => moved(sensor, { [step.part]: step.to }))
    case 'set-field':
      return withField(door, step, { [step.part]: step.to })
    case 'set-drive':
      if (door.drive === undefined) throw unknown('a drive')
      return { ...door, drive: { ...door.drive, [step.part]: step.to } }
    case 'set-outputs':
      return step.fields.reduce((changed, field) => withField(changed, field, { [step.part]: step.to }), door)
    case 'add-sensor': {
      const like = door.sensors.find(({ id }) => id === step.like)
      if (like === undefined) throw unknown(step.like)
      return { ...door, sensors: [...door.sensors, { ...moved(like, step.pose), id: step.id }] }
    }
    case 'remove-obstacle': {
      if (!door.states.some(({ obstacles }) => obstacles.some(({ id }) => id === step.obstacle))) throw unknown(step.obstacle)
      const without = door.states.map((s) => ({ ...s, obstacles: s.obstacles.filter(({ id }) => id !== step.obstacle) }))
      return { ...door, states: without }
    }
  }
}

function unknown(id: string): Error {
  return new Error(`a repair must name something of the door, got ${id}`)
}

function withField(door: Door, named: { readonly sensor: string; readonly field: string }, change: Partial<Field>): Door {
  return withSensor(door, named.sensor, (sensor) => {
    if (sensor.kind === 'zone-only' || !sensor.fields.some(({ id }) => id === named.field)) throw unknown(`${named.sensor}/${named.field}`)
    const set = (field: Field): Field => (field.id === named.field ? { ...field, ...change } : field)
    return { ...sensor, fields: sensor.fields.map(set) }
  })
}

function withSensor(door: Door, id: string, change: (sensor: Sensor) => Sensor): Door {
  if (!door.sensors.some((sensor) => sensor.id === id)) throw unknown(id)
  return { ...door, sensors: door.sensors.map((sensor) => (sensor.id === id ? change(sensor) : sensor)) }
}

/** A ranging sensor in another pose; the places of a row go with it. */
function moved(sensor: Sensor, change: Partial<Pose>): RangingSensor {
  if (sensor.kind !== 'ranging') throw new Error(`only a ranging sensor has a pose, got ${sensor.id}`)
  const pose = { ...sensor.pose, ...change }
  const by = { x: pose.x_mm - sensor.pose.x_mm, y: pose.y_mm - sensor.pose.y_mm, z: pose.z_mm - sensor.pose.z_mm }
  const planes = sensor.planes.map((plane) =>
    plane.kind === 'row'
      ? { ...plane, places: plane.places.map((p) => ({ x_mm: p.x_mm + by.x, y_mm: p.y_mm + by.y, z_mm: p.z_mm + by.z })) }
      : plane,
  )
  return { ...sensor, pose, planes }
}
