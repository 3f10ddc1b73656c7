import type { Body } from '../model/body.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { Field, Sensor } from '../model/sensor.ts'
import type { InputPath } from '../model/source.ts'
import type { Crossing, Lane } from '../model/traffic.ts'
import type { Zone } from '../model/zone.ts'

// Places in the door file, as its issues name them: lists are counted from 0. The one place of the engine that knows the file's shape.

export const OPENING_WIDTH: InputPath = 'survey/opening/width_mm'
export const OPENING_HEIGHT: InputPath = 'survey/opening/height_mm'
export const FLOOR: InputPath = 'survey/floor'
export const OBSTACLES: InputPath = 'survey/obstacles'
export const LEAF: InputPath = 'survey/leaf'
export const HINGED: InputPath = 'survey/leaf/hinged'
export const DRIVE: InputPath = 'survey/drive'
export const LANES: InputPath = 'survey/lanes'
export const CROSSINGS: InputPath = 'survey/crossings'
export const AIR: InputPath = 'survey/air'
export const DANGERS: InputPath = 'survey/dangers'
export const CONTROL: InputPath = 'survey/control'
export const WIRING: InputPath = 'wiring'
export const FORCE_RECORDS: InputPath = 'forceRecords'
export const PARKED: InputPath = 'survey/leaf/parked'
export const VISIBILITY: InputPath = 'survey/visibility_m'
export const SURVEY: InputPath = 'survey'
/** What stands around a beam or a body: the survey without what only other questions rest on (visibility, bulge of the leaf, lanes). */
export const SURROUNDINGS: readonly InputPath[] = [
  'survey/opening',
  'survey/walls',
  'survey/lintel',
  'survey/jambs',
  'survey/guides',
  'survey/hood',
  'survey/leaf/parked',
  OBSTACLES,
  FLOOR,
  'survey/states',
]
export const ZONES: InputPath = 'zones'
export const CONCEPT: InputPath = 'concept'
export const SENSORS: InputPath = 'sensors'
export const EDITION: InputPath = 'edition'

export function zonePath({ zones }: Door, zone: Zone): InputPath {
  return `zones/${zones.indexOf(zone)}`
}

export function sensorPath({ sensors }: Door, sensor: Sensor): InputPath {
  return `sensors/${sensors.indexOf(sensor)}`
}

export function fieldPath(door: Door, sensor: Sensor, field: Field): InputPath {
  const fields = sensor.kind === 'zone-only' ? [] : sensor.fields
  return `${sensorPath(door, sensor)}/fields/${fields.indexOf(field)}`
}

export function bodyPath({ bodies }: Door, body: Body): InputPath {
  return `bodies/${bodies.indexOf(body)}`
}

export function lanePath({ lanes = [] }: Door, lane: Lane): InputPath {
  return `${LANES}/${lanes.indexOf(lane)}`
}

export function crossingPath({ crossings = [] }: Door, crossing: Crossing): InputPath {
  return `${CROSSINGS}/${crossings.indexOf(crossing)}`
}

/** A state without a floor of its own has the one of the survey. */
export function floorTolerancePath({ states }: Door, state: DoorState): InputPath {
  const floor = state.floor === states[0]?.floor ? FLOOR : `survey/states/${states.indexOf(state)}/floor`
  return `${floor}/tolerance_mm`
}

/** Where a user writes that a figure was held against its page: the confirmation of this id is still missing. */
export function confirmationPath(id: string): InputPath {
  return `confirmations/${id}`
}

/** One of both places holds the other, or both are the same. */
export function overlaps(a: InputPath, b: InputPath): boolean {
  return a === b || a.startsWith(`${b}/`) || b.startsWith(`${a}/`)
}
