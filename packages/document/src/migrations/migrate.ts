import type { Issue } from '../issue.ts'
import { VERSION } from '../schema/door-file.ts'
import { isObject, own } from '../schema/shape.ts'
import { shown } from '../shown.ts'
import { namedPlaces } from './0001-named-places.ts'

type JsonObject = Readonly<Record<string, unknown>>

/** Migration i turns version i into version i + 1. Each is total: whatever it does not recognise stays for the schema to refuse. */
export const MIGRATIONS: readonly { readonly name: string; readonly migrate: (file: JsonObject) => JsonObject }[] = [
  { name: '0001-named-places', migrate: namedPlaces },
]

export type MigrateResult =
  | { readonly ok: true; readonly file: JsonObject; readonly from: number; readonly applied: readonly string[] }
  | { readonly ok: false; readonly issues: readonly Issue[] }

/**
 * Brings parsed JSON of an older version to the newest shape. Only the version is checked here, `parseDocument` checks the rest.
 * A file of the newest version comes back as the same object.
 */
export function migrateDocument(file: unknown): MigrateResult {
  if (!isObject(file)) return refused('wrong-type', 'file', 'an object { "sillsight": 1, ... }', shown(file))
  const version = own(file, 'sillsight')
  if (own(file, 'sillsightLibrary') !== undefined && version === undefined)
    return refused('wrong-kind', 'file', 'a door file', 'a library', 'name the library in "libraries" of a door file')
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0)
    return refused(
      version === undefined ? 'missing' : 'wrong-type',
      'sillsight',
      `the version of the file, 0 to ${VERSION}`,
      shown(version),
      `add "sillsight": ${VERSION}`,
    )
  if (version > VERSION)
    return refused(
      'newer-version',
      'sillsight',
      `version ${VERSION} or older`,
      `version ${version}`,
      'open it with a newer Sillsight; nothing was changed',
    )
  const steps = MIGRATIONS.slice(version)
  return {
    ok: true,
    file: steps.reduce((older, step) => step.migrate(older), file),
    from: version,
    applied: steps.map((step) => step.name),
  }
}

function refused(code: string, path: string, expected: string, got: string, repair?: string): MigrateResult {
  return { ok: false, issues: [repair === undefined ? { code, path, expected, got } : { code, path, expected, got, repair }] }
}
