import type { CoverageMaps } from '../coverage/maps.ts'
import type { SightOf } from '../coverage/scene.ts'
import type { Body } from '../model/body.ts'
import type { Door, DoorState } from '../model/door.ts'
import type { Finding, ZoneCoverage } from '../model/finding.ts'
import type { Sensor } from '../model/sensor.ts'
import type { InputPath, OutsideValue, Source } from '../model/source.ts'
import type { Zone } from '../model/zone.ts'
import type { ValuesOfEdition } from '../values/editions.ts'

/** One question about a door. A rule answers with drafts; what every finding needs besides is added in one place, `settle.ts`. */
export interface Rule {
  readonly id: string
  /** Why the rule exists, and who says so. */
  readonly source: Source
  readonly judge: (context: Context) => readonly Draft[]
}

/** What the rules of one judgement share. */
export interface Context {
  readonly door: Door
  /** Outside values of the edition that judges. */
  readonly values: ValuesOfEdition
  /** The grid answer of a zone in a state, computed at most once. */
  readonly coverage: (zone: Zone, state: DoorState) => ZoneCoverage
  /** What that answer was made from. */
  readonly maps: (zone: Zone, state: DoorState) => CoverageMaps
  /** What a field sees with, computed at most once. */
  readonly sightOf: SightOf
}

/** What a verdict rests on. A pass that rests on an assumption or on an unconfirmed memory is none. */
export interface RestsOn {
  /** Places in the door file; whatever lies below one counts with it. */
  readonly inputs: readonly InputPath[]
  readonly values: readonly OutsideValue[]
  readonly bodies: readonly Body[]
  readonly sensors: readonly Sensor[]
}

/** A finding without what `settle.ts` adds: id, rule, edition and basis. */
export type Draft = WithoutFrame<Finding> & {
  /** What tells this finding from others of the same rule, if that is not the id of its subject. */
  readonly key?: string
  readonly restsOn: RestsOn
}
type WithoutFrame<F> = F extends Finding ? Omit<F, 'id' | 'rule' | 'edition' | 'basis'> : never
