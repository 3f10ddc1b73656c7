import { parseDocument } from '@sillsight/document'
import { type Automerge, automerge } from './automerge.ts'
import { areBegun } from './begun.ts'
import { conflictsOf, withBoth } from './conflicts.ts'
import { changesOf, type DoorDocument } from './door-document.ts'
import type { Foreign, Inspected } from './foreign.ts'
import { isPhotoEntry } from './photo-entry.ts'
import { asHandedOut } from './twins.ts'

self.onmessage = async ({ data: { changes, library } }: MessageEvent<Foreign>) => {
  let answer: Inspected
  try {
    const A = await automerge(library)
    if (!changes.every((change) => isAsItWasMade(A, change))) throw new Error('a change was spoiled')
    const [doc] = A.applyChanges(A.init<DoorDocument>(), [...changes])
    const whole = A.toJS(doc)
    const { file, typed, photos } = whole
    const parsed = parseDocument(JSON.stringify(file ? asHandedOut(withBoth(file, conflictsOf(A, doc, changesOf(A, doc)))) : null))
    if (!areTyped(typed) || !arePhotos(photos) || !areBegun(whole) || A.getMissingDeps(doc, []).length > 0)
      throw new Error('not a whole document')
    answer = parsed.ok
      ? { ok: true, file, heads: [...A.getHeads(doc)].sort().join(' ') }
      : {
          ok: false,
          message: parsed.issues
            .map(({ path, expected, got }) => `${path}: ${expected}, ${got}`)
            .join('; ')
            .slice(0, 2000),
        }
  } catch (problem) {
    answer = { ok: false, message: problem instanceof Error ? problem.message : String(problem) }
  }
  self.postMessage(answer)
}

const MOST_PHOTOS = 10_000

function arePhotos(found: unknown): boolean {
  if (typeof found !== 'object' || found === null || Object.keys(found).length > MOST_PHOTOS) return false
  return Object.entries(found).every(([id, photo]) => isPhotoEntry(id, photo))
}

function areTyped(found: unknown): boolean {
  return typeof found === 'object' && found !== null && Object.values(found).every((text) => typeof text === 'string')
}

/**
 * The library takes a change whose bits were flipped as long as it can be decoded. The chunk says what it should be: its bytes 4 to 7 are
 * the beginning of the hash of its content.
 */
function isAsItWasMade(A: Automerge, change: Uint8Array): boolean {
  const stated = Array.from(change.subarray(4, 8), (byte) => byte.toString(16).padStart(2, '0')).join('')
  return A.decodeChange(change as never).hash?.startsWith(stated) === true
}
