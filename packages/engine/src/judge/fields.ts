import { type CountedField, countedFields, fieldName } from '../coverage/scene.ts'
import type { Door } from '../model/door.ts'
import type { Sensor } from '../model/sensor.ts'
import type { SensingFunction, Zone } from '../model/zone.ts'

/** All fields that are computed, in the door's order. */
export function allFields({ sensors }: Door): readonly CountedField[] {
  return sensors.flatMap((sensor) => (sensor.kind === 'zone-only' ? [] : sensor.fields.map((field) => ({ sensor, field }))))
}

/** Fields whose output does this at the door. An opening field never counts as presence at the leaf. */
export function fieldsOfFunction(door: Door, wanted: SensingFunction): readonly CountedField[] {
  return allFields(door).filter(({ field }) => field.function === wanted)
}

/** Whether it is there so that the leaf closes on nobody: an output of it acts for presence. */
export function protects(sensor: Sensor): boolean {
  return sensor.kind === 'zone-only' ? sensor.function === 'presence' : sensor.fields.some((field) => field.function === 'presence')
}

/** Sensors with a field that counts for the zone. */
export function countedSensors(door: Door, zone: Zone): readonly Sensor[] {
  return [...new Set(countedFields(door, zone).map(({ sensor }) => sensor))]
}

/** `sensor`, `sensorName`, `field`, `fieldName`, `output`: the facts that every finding about a field has. */
export function fieldFacts({ sensor, field }: CountedField) {
  return { sensor: sensor.id, sensorName: sensor.name, field: field.id, fieldName: field.name, output: field.output }
}

export function fieldSubject(counted: CountedField) {
  return { kind: 'field', id: fieldName(counted) } as const
}
