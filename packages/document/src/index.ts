import type { Door } from '@sillsight/engine'
import type { Issue, Note } from './issue.ts'

export { issueLine } from './issue.ts'
export type { Issue, Note }

// The entrances, named first so that the command line can be written against them; bodies follow.
export interface DoorFile {
  readonly sillsight: 1
  readonly name?: string
}
export interface Catalogue {
  readonly sensors: ReadonlyMap<string, unknown>
  readonly bodies: ReadonlyMap<string, unknown>
}
export interface ParseOptions {
  readonly readLibrary?: (file: string) => string | undefined
  readonly sha256?: (text: string) => string
}
export type ParseResult =
  | { readonly ok: true; readonly document: DoorFile; readonly catalogue: Catalogue; readonly notes: readonly Note[]; readonly migratedFrom: number }
  | { readonly ok: false; readonly issues: readonly Issue[]; readonly issueCount: number }
export type MigrateResult =
  | { readonly ok: true; readonly file: unknown; readonly from: number; readonly applied: readonly string[] }
  | { readonly ok: false; readonly issues: readonly Issue[]; readonly issueCount: number }
export type LengthUnits = 'metric' | 'feet-inches'
export type LengthResult =
  | { readonly ok: true; readonly mm: number; readonly typed: { readonly text: string; readonly units: LengthUnits } }
  | { readonly ok: false; readonly issue: Issue }

const notBuilt = (name: string): never => {
  throw new Error(`${name} is not built yet`)
}
/** Reads and checks a door file; every issue at once. `readLibrary` and `sha256` are needed only by files that name libraries. */
export const parseDocument = (_text: string, _options: ParseOptions = {}): ParseResult => notBuilt('parseDocument')
/** What the engine judges. The document must have come through `parseDocument`; its catalogue too when the file names libraries. */
export const toDoor = (_document: DoorFile, _catalogue?: Catalogue): Door => notBuilt('toDoor')
/** Canonical JSON text: known fields in the schema's order, then unknown ones; ends in a line feed. */
export const serialise = (_document: DoorFile): string => notBuilt('serialise')
/** Brings parsed JSON of an older version to the newest shape, unchecked. `parseDocument` does this by itself. */
export const migrateDocument = (_file: unknown): MigrateResult => notBuilt('migrateDocument')
/** JSON Schema 2020-12 of the newest door file. */
export const doorFileJsonSchema = (): Record<string, unknown> => notBuilt('doorFileJsonSchema')
/** A length as people type it; a bare number is mm, or inches when `units` is feet-inches. */
export const readLength = (_text: string, _options: { readonly units?: LengthUnits } = {}): LengthResult => notBuilt('readLength')
/** A length for people, as `2400 mm` or `7' 10 1/2"` (nearest sixteenth). */
export const showLength = (_length_mm: number, _units: LengthUnits): string => notBuilt('showLength')
/** Invented sensors that work in `use` from the first minute: id and name of each. */
export const builtinSensors = (): readonly { readonly id: string; readonly name: string }[] => notBuilt('builtinSensors')
