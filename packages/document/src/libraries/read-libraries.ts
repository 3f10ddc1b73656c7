import { BOUNDS } from '../bounds.ts'
import { checkShape } from '../reading/check-shape.ts'
import { scanJson } from '../reading/scan.ts'
import { noteUnknownFields } from '../reading/unknown-fields.ts'
import type { Remarks } from '../remarks.ts'
import type { LibraryBody } from '../schema/body.ts'
import { type DoorFile, type LibraryFile, libraryFileSchema } from '../schema/door-file.ts'
import type { LibrarySensor } from '../schema/sensor.ts'
import { isObject, own } from '../schema/shape.ts'
import { pathOf, shown, shownText } from '../shown.ts'
import { BUILTIN_CATALOGUE, type Catalogue } from './catalogue.ts'

/** How libraries are reached: files and hashing belong to the platform, so they are passed in. */
export interface LibraryAccess {
  /** The text of a library by its path relative to the door file; undefined if there is none. */
  readonly readLibrary?: ((file: string) => string | undefined) | undefined
  /** SHA-256 of the text's UTF-8 bytes, as 64 hexadecimal digits in lower case. */
  readonly sha256?: ((text: string) => string) | undefined
}

/** Reads the libraries that a door file names, each pinned by its content, into one catalogue with what ships with the program. */
export function readLibraries(references: DoorFile['libraries'], access: LibraryAccess, remarks: Remarks): Catalogue {
  if (references === undefined || references.length === 0) return BUILTIN_CATALOGUE
  const sensors = new Map(BUILTIN_CATALOGUE.sensors)
  const bodies = new Map(BUILTIN_CATALOGUE.bodies)
  for (const [i, { file, sha256 }] of references.entries()) {
    const path = `libraries/${i}`
    const text = readPinned(file, sha256, access, path, remarks)
    const library = text === undefined ? undefined : parseLibrary(text, path, remarks)
    addEntries(library?.sensors, sensors, `${path}/sensors`, remarks)
    addEntries(library?.bodies, bodies, `${path}/bodies`, remarks)
  }
  return { sensors, bodies }
}

function readPinned(
  file: string,
  pinned: string,
  { readLibrary, sha256 }: LibraryAccess,
  path: string,
  remarks: Remarks,
): string | undefined {
  if (escapes(file)) {
    remarks.issue({
      code: 'path-escapes',
      path: `${path}/file`,
      expected: "a relative path inside the door file's folder",
      got: shownText(file),
      repair: 'copy the library beside the door file',
    })
    return undefined
  }
  if (readLibrary === undefined || sha256 === undefined) {
    remarks.issue({
      code: 'no-library',
      path: `${path}/file`,
      expected: 'a place where libraries can be read',
      got: 'none here',
      repair: 'open the door file from its folder',
    })
    return undefined
  }
  const text = attempt(() => readLibrary(file))
  if (text === undefined) {
    remarks.issue({ code: 'no-library', path: `${path}/file`, expected: 'a file that can be read', got: shownText(file) })
    return undefined
  }
  if (text.length > BOUNDS.libraryLength) {
    remarks.issue({
      code: 'too-large',
      path: `${path}/file`,
      expected: `at most ${BOUNDS.libraryLength} characters`,
      got: `${text.length}`,
    })
    return undefined
  }
  const found = sha256(text)
  if (found === pinned) return text
  remarks.issue({
    code: 'changed-library',
    path: `${path}/sha256`,
    expected: `the content that was pinned (${pinned.slice(0, 12)}...)`,
    got: `${found.slice(0, 12)}...`,
    repair: `the library has changed: judge anew with "sha256": "${found}"`,
  })
  return undefined
}

/** Absolute, with a drive or a scheme, with a backslash, or with a step upward: also where a later step would come back. */
function escapes(file: string): boolean {
  return file === '' || /^[/~]|^[A-Za-z][A-Za-z0-9+.-]*:|\\|\0/.test(file) || file.split('/').includes('..')
}

function attempt(read: () => string | undefined): string | undefined {
  try {
    return read()
  } catch {
    return undefined
  }
}

function parseLibrary(text: string, path: string, remarks: Remarks): LibraryFile | undefined {
  const { issues, broken } = scanJson(text)
  for (const issue of issues) remarks.issue({ ...issue, path: issue.path === 'file' ? path : `${path}/${issue.path}` })
  if (broken) return undefined
  const library: unknown = JSON.parse(text)
  if (isObject(library) && Number(own(library, 'sillsightLibrary')) > 1) {
    remarks.issue({
      code: 'newer-version',
      path: `${path}/sillsightLibrary`,
      expected: 'version 1',
      got: shown(own(library, 'sillsightLibrary')),
      repair: 'open it with a newer Sillsight',
    })
    return undefined
  }
  if (!checkShape(libraryFileSchema, library, remarks, ['libraries', path.split('/')[1] ?? '', 'content'])) return undefined
  noteUnknownFields(libraryFileSchema, library, remarks, [path, 'content'])
  return library as LibraryFile
}

function addEntries<T extends LibrarySensor | LibraryBody>(
  entries: Readonly<Record<string, T>> | undefined,
  into: Map<string, T>,
  path: string,
  remarks: Remarks,
): void {
  const list = Object.entries(entries ?? {})
  if (list.length > BOUNDS.libraryEntries)
    remarks.issue({ code: 'too-much', path, expected: `at most ${BOUNDS.libraryEntries} entries`, got: `${list.length}` })
  for (const [id, entry] of list.slice(0, BOUNDS.libraryEntries)) {
    if (into.has(id))
      remarks.issue({ code: 'duplicate-id', path: pathOf([path, id]), expected: 'an id that no other library uses', got: shownText(id) })
    else into.set(id, entry)
  }
}
