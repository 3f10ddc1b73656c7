import type { Door, DoorState, Judgement, Zone, ZoneCoverage } from '@sillsight/engine'

/** What one drawing shows: one door state and, if there is one, one zone with its answer. */
export interface Shown {
  readonly state: DoorState
  readonly zone: Zone | undefined
  readonly coverage: ZoneCoverage | undefined
}

/**
 * Picks the zone and state to draw. Whatever is not asked for falls to the answer with most unseen cells, the first one on a tie.
 * @throws if the door has no states, which the model rules out
 */
export function shownOf(
  door: Door,
  judgement: Judgement,
  wanted: { readonly state?: string | undefined; readonly zone?: string | undefined },
): Shown {
  const candidates = judgement.coverages
    .filter(({ state, zone }) => (wanted.state ?? state) === state && (wanted.zone ?? zone) === zone)
    .filter(({ zone }) => wanted.zone !== undefined || purposeOf(door, zone) !== 'must-not-see')
  const coverage = [...candidates].sort((a, b) => b.counts.blind - a.counts.blind)[0]
  const stateId = coverage?.state ?? wanted.state
  const state = door.states.find(({ id }) => id === stateId) ?? door.states[0]
  if (!state) throw new Error('states of a door must not be empty, got none')
  const zoneId = coverage?.zone ?? wanted.zone
  return { state, coverage, zone: door.zones.find(({ id }) => id === zoneId) ?? (wanted.zone === undefined ? door.zones[0] : undefined) }
}

function purposeOf(door: Door, zoneId: string): Zone['purpose'] | undefined {
  return door.zones.find(({ id }) => id === zoneId)?.purpose
}

/** Ids of the sensors that counted for this answer; all of the door's where there is none. */
export function countedSensors(door: Door, coverage: ZoneCoverage | undefined): ReadonlySet<string> {
  if (!coverage) return new Set(door.sensors.map(({ id }) => id))
  return new Set(coverage.countedFields.map((field) => field.split('/')[0] ?? field))
}
