import { type Issue, sha256 } from '@sillsight/document'
import type { DoorId } from './contract.ts'

/**
 * One file with whole doors: every change of each document, so that nothing of its history is lost, and the photos. JSON around base64;
 * `sha256` is that of the text in `content` (docs/backup-file.md).
 */
export interface Backup {
  readonly doors: readonly { readonly id: DoorId; readonly changes: readonly Uint8Array[]; readonly away: boolean }[]
  readonly photos: readonly { readonly id: string; readonly bytes: Uint8Array }[]
}

export const BACKUP_VERSION = 1
/** Bounds on what is read: a backup larger than these was not written here. */
const MOST_BYTES = 512_000_000
const MOST_DOORS = 20_000
const MOST_CHANGES = 2_000_000
const MOST_PHOTOS = 100_000

export function writeBackup({ doors, photos }: Backup): Uint8Array {
  const content = JSON.stringify({
    doors: doors.map(({ id, changes, away }) => ({ id, away, changes: changes.map(toBase64) })),
    photos: photos.map(({ id, bytes }) => ({ id, bytes: toBase64(bytes) })),
  })
  return new TextEncoder().encode(JSON.stringify({ sillsightBackup: BACKUP_VERSION, sha256: sha256(content), content }))
}

export type ReadBackup = { readonly ok: true; readonly backup: Backup } | { readonly ok: false; readonly issues: readonly Issue[] }

/** Whether bytes claim to be a backup; a door file starts otherwise. */
export function looksLikeBackup(bytes: Uint8Array): boolean {
  return new TextDecoder().decode(bytes.subarray(0, 40)).includes('"sillsightBackup"')
}

/** Reads a backup whole, or says why not. */
export function readBackup(bytes: Uint8Array): ReadBackup {
  const refuse = (code: string, path: string, expected: string, got: string): ReadBackup => ({
    ok: false,
    issues: [{ code, path, expected, got }],
  })
  if (bytes.length > MOST_BYTES) return refuse('too-large', 'file', `at most ${MOST_BYTES} bytes`, String(bytes.length))
  const outer = parsed(new TextDecoder().decode(bytes))
  if (!isRecord(outer)) return refuse('not-json', 'file', 'a whole backup', 'a text that ends early or was changed')
  const { sillsightBackup: version, sha256: seal, content } = outer
  if (version !== BACKUP_VERSION) return refuse('unknown-version', 'sillsightBackup', `version ${BACKUP_VERSION}`, shown(version))
  if (typeof content !== 'string') return refuse('missing', 'content', 'a text', shown(content))
  if (sha256(content) !== seal) return refuse('checksum', 'sha256', sha256(content), shown(seal))
  const inner = parsed(content)
  if (!isRecord(inner) || !Array.isArray(inner['doors']) || !Array.isArray(inner['photos']))
    return refuse('not-json', 'content', 'doors and photos', shown(inner))
  if (inner['doors'].length > MOST_DOORS || inner['photos'].length > MOST_PHOTOS)
    return refuse('too-many', 'content', 'fewer doors and photos', 'more')
  const doors = inner['doors'].map(readDoor)
  const photos = inner['photos'].map(readPhoto)
  const bad = [...doors.map((door, i) => [door, `doors/${i}`] as const), ...photos.map((photo, i) => [photo, `photos/${i}`] as const)].find(
    ([found]) => found === undefined,
  )
  if (bad) return refuse('malformed', bad[1], 'an entry of a backup', 'something else')
  return { ok: true, backup: { doors: doors.filter((each) => each !== undefined), photos: photos.filter((each) => each !== undefined) } }
}

function readDoor(found: unknown): Backup['doors'][number] | undefined {
  if (!isRecord(found)) return undefined
  const { id, changes, away } = found
  if (typeof id !== 'string' || !ID.test(id) || !Array.isArray(changes) || changes.length > MOST_CHANGES) return undefined
  const bytes = changes.map(fromBase64)
  return bytes.every((each) => each !== undefined) ? { id: id as DoorId, away: away === true, changes: bytes } : undefined
}

function readPhoto(found: unknown): Backup['photos'][number] | undefined {
  if (!isRecord(found)) return undefined
  const bytes = fromBase64(found['bytes'])
  return bytes && sha256(bytes) === found['id'] ? { id: found['id'], bytes } : undefined
}

/** Ids of doors as this program makes them. */
export const ID = /^[0-9a-f-]{8,64}$/

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function shown(value: unknown): string {
  return (JSON.stringify(value) ?? 'nothing').slice(0, 60)
}

const PIECE = 0x8000
function toBase64(bytes: Uint8Array): string {
  let text = ''
  for (let at = 0; at < bytes.length; at += PIECE) text += String.fromCharCode(...bytes.subarray(at, at + PIECE))
  return btoa(text)
}

function fromBase64(text: unknown): Uint8Array | undefined {
  if (typeof text !== 'string') return undefined
  try {
    return Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0))
  } catch {
    return undefined
  }
}
