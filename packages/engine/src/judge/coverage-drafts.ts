import type { Body } from '../model/body.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { ZoneCoverage } from '../model/finding.ts'
import type { Sensor } from '../model/sensor.ts'
import type { OutsideValue } from '../model/source.ts'
import type { Zone } from '../model/zone.ts'
import type { Facts } from './drafts.ts'
import { countedSensors } from './fields.ts'
import { bodyPath, SENSORS, SURVEY, sensorPath, zonePath } from './paths.ts'
import type { Context, RestsOn } from './rule.ts'

/** One zone in one state of the door, and what was computed for it. */
export interface JudgedZone {
  readonly zone: Zone
  readonly state: DoorState
  readonly coverage: ZoneCoverage
}

/** The zones that have to be covered, in every state. */
export function zonesToCover({ door, coverage }: Context): readonly JudgedZone[] {
  return door.zones.filter(mustSee).flatMap((zone) => door.states.map((state) => ({ zone, state, coverage: coverage(zone, state) })))
}

export function mustSee({ purpose }: Zone): boolean {
  return purpose !== 'must-not-see'
}

export function bodiesOf(door: Door, zone: Zone): readonly Body[] {
  return door.bodies.filter(({ id }) => zone.bodies.includes(id))
}

/**
 * What a grid answer rests on: the survey, the zone, its bodies, the sensors that count, and in fog the contrast that visibility is told by.
 *
 * @param sensors those with a field that counts for the zone if not given
 */
export function restsOnCoverage({ door, values }: Context, zone: Zone, sensors: readonly Sensor[] = countedSensors(door, zone)): RestsOn {
  const bodies = bodiesOf(door, zone)
  const watching = sensors.length > 0 ? sensors.map((sensor) => sensorPath(door, sensor)) : [SENSORS]
  return {
    inputs: [SURVEY, zonePath(door, zone), ...bodies.map((body) => bodyPath(door, body)), ...watching],
    values: fogValues(door, values.koschmiederContrast),
    bodies,
    sensors,
  }
}

export function fogValues({ extinction_per_mm }: Door, contrast: OutsideValue): readonly OutsideValue[] {
  return extinction_per_mm > 0 ? [contrast] : []
}

/** `zone`, `zoneName`, `purpose`, `function`, `state`, `stateName`: the facts that every finding about a zone in a state has. */
export function zoneFacts({ zone, state }: { readonly zone: Zone; readonly state: DoorState }): Facts {
  return { zone: zone.id, zoneName: zone.name, purpose: zone.purpose, function: zone.function, ...stateFacts(state) }
}

export function stateFacts({ id, name }: DoorState): Facts {
  return { state: id, stateName: name }
}

export function freeCells({ counts }: ZoneCoverage): number {
  return counts.seen + counts.blind
}
