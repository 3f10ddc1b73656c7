import type { Door } from '@sillsight/engine'
import { EDITIONS, OUTSIDE_VALUES } from '@sillsight/engine'
import { BOUNDS } from './bounds.ts'
import { resolveDoor } from './door/resolve.ts'
import type { Issue, Note } from './issue.ts'
import type { Catalogue } from './libraries/catalogue.ts'
import { type LibraryAccess, readLibraries } from './libraries/read-libraries.ts'
import { MIGRATIONS, migrateDocument } from './migrations/migrate.ts'
import { checkShape } from './reading/check-shape.ts'
import { scanJson } from './reading/scan.ts'
import { noteUnknownFields } from './reading/unknown-fields.ts'
import { Remarks } from './remarks.ts'
import { type DoorFile, doorFileSchema } from './schema/door-file.ts'
import { shownText } from './shown.ts'

export type ParseResult =
  | {
      readonly ok: true
      /** The newest shape with everything that the text holds, unknown fields among it. */
      readonly document: DoorFile
      /** What `use` names in this document: goes to `toDoor` with it. */
      readonly catalogue: Catalogue
      readonly notes: readonly Note[]
      /** Version of the text. */
      readonly migratedFrom: number
    }
  | {
      readonly ok: false
      readonly issues: readonly Issue[] // the first hundred
      readonly issueCount: number
    }

/**
 * Reads and checks a door file: form, bounds, version, schema, libraries, references and contradictions. Never throws, never hangs.
 *
 * @param text of the file
 * @returns all issues at once, or the document, from which `toDoor` makes what the engine judges
 */
export function parseDocument(text: string, access: LibraryAccess = {}): ParseResult {
  const remarks = new Remarks()
  const result = parsed(text, access, remarks)
  if (result !== undefined && !remarks.failed) return { ok: true, ...result, notes: remarks.allNotes() }
  return { ok: false, issues: oncePerPlace(remarks.issues), issueCount: remarks.issueCount }
}

type Parsed = Omit<ParseResult & { readonly ok: true }, 'ok' | 'notes'>

function parsed(text: string, access: LibraryAccess, remarks: Remarks): Parsed | undefined {
  const json = parsedJson(text, remarks)
  if (json === undefined) return undefined
  const migrated = migrateDocument(json.value)
  if (!migrated.ok) {
    for (const issue of migrated.issues) remarks.issue(issue)
    return undefined
  }
  const { file, from, applied } = migrated
  if (applied.length > 0)
    remarks.note({
      code: 'migrated',
      path: 'sillsight',
      text: `read as version ${MIGRATIONS.length} (written as version ${from}: ${applied.join(', ')})`,
    })
  noteUnknownFields(doorFileSchema, file, remarks)
  if (!checkShape(doorFileSchema, file, remarks)) return undefined
  const document = file as unknown as DoorFile
  const catalogue = readLibraries(document.libraries, access, remarks)
  if (remarks.failed) return undefined // without its library, each `use` would be blamed as well
  const door = resolveDoor(document, catalogue, remarks)
  if (door !== undefined) noteUnknownValues(door, remarks)
  return { document, catalogue, migratedFrom: from }
}

function parsedJson(text: string, remarks: Remarks): { readonly value: unknown } | undefined {
  if (text.length > BOUNDS.textLength) {
    remarks.issue({ code: 'too-large', path: 'file', expected: `at most ${BOUNDS.textLength} characters`, got: `${text.length}` })
    return undefined
  }
  const json = text.startsWith('\uFEFF') ? text.slice(1) : text // a byte order mark says nothing about the content
  const { issues, broken } = scanJson(json)
  for (const issue of issues) remarks.issue(issue)
  return broken ? undefined : { value: JSON.parse(json) }
}

/** What this program does not know and a verdict could rest on: the judge will say so as well, but not where it stands in the file. */
function noteUnknownValues({ edition, confirmations, bodies, sensors }: Door, remarks: Remarks): void {
  if (!EDITIONS.some(({ id }) => id === edition))
    remarks.note({
      code: 'unknown-edition',
      path: 'edition',
      text: `${shownText(edition)} is not among the editions here (${EDITIONS.map(({ id }) => id).join(', ')}): nothing passes`,
    })
  const known = new Set([...OUTSIDE_VALUES, ...bodies, ...sensors].map(({ id }) => id))
  for (const [i, { value }] of confirmations.entries()) {
    if (!known.has(value))
      remarks.note({
        code: 'unknown-value',
        path: `confirmations/${i}/value`,
        text: `confirms ${shownText(value)}, which nothing here rests on`,
      })
  }
}

/** A number too large to hold is found in the text and again in the schema: people need it once. */
function oncePerPlace(issues: readonly Issue[]): readonly Issue[] {
  const places = new Set<string>()
  return issues.filter(({ path, code }) => {
    const key = code === 'duplicate-key' ? `${path} twice` : path
    return places.has(key) ? false : places.add(key)
  })
}
