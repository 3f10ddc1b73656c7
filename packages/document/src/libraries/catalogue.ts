import type { LibraryBody } from '../schema/body.ts'
import type { LibrarySensor } from '../schema/sensor.ts'
import { BUILTIN_BODIES } from './builtin-bodies.ts'
import { BUILTIN_SENSORS } from './builtin-sensors.ts'

/** What `use` can name: what ships with the program and what the libraries of one door file hold. */
export interface Catalogue {
  readonly sensors: ReadonlyMap<string, LibrarySensor>
  readonly bodies: ReadonlyMap<string, LibraryBody>
}

export const BUILTIN_CATALOGUE: Catalogue = { sensors: BUILTIN_SENSORS, bodies: BUILTIN_BODIES }

/** Invented sensors that work in `use` from the first minute: id and name of each. */
export function builtinSensors(): readonly { readonly id: string; readonly name: string }[] {
  return [...BUILTIN_SENSORS].map(([id, { name = id }]) => ({ id, name }))
}
