import type { Body } from '../model/body.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { ZoneCoverage } from '../model/finding.ts'
import type { Sensor } from '../model/sensor.ts'
import type { InputPath } from '../model/source.ts'
import type { Zone } from '../model/zone.ts'
import type { Facts } from './drafts.ts'
import { countedSensors } from './fields.ts'
import { bodyPath, SENSORS, SURROUNDINGS, SURVEY, sensorPath, VISIBILITY, zonePath } from './paths.ts'
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
  const [, ...others] = coverageInputs(door, zone, sensors)
  return {
    inputs: [...SURROUNDINGS, VISIBILITY, ...others],
    values: door.extinction_per_mm > 0 ? [values.koschmiederContrast] : [],
    bodies: bodiesOf(door, zone),
    sensors,
  }
}

/** What a grid answer is computed from, in the few words of a step: the survey first. */
export function coverageInputs(door: Door, zone: Zone, sensors: readonly Sensor[] = countedSensors(door, zone)): readonly InputPath[] {
  const bodies = bodiesOf(door, zone).map((body) => bodyPath(door, body))
  const watching = sensors.length > 0 ? sensors.map((sensor) => sensorPath(door, sensor)) : [SENSORS]
  return [SURVEY, zonePath(door, zone), ...bodies, ...watching]
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
