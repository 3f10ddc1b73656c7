import type { Deed, OpenDoor } from './contract.ts'
import type { DoorDoc } from './door-document.ts'
import { newId } from './new-id.ts'
import { MOST_PINS, type PhotoEntry, photoOf, pinPlace } from './photo-entry.ts'
import { LONGEST_TEXT, printable } from './printable.ts'

type PhotoEdits = Pick<
  OpenDoor,
  'addPhoto' | 'changePhoto' | 'forgetWhereTaken' | 'removePhoto' | 'placePhoto' | 'addPin' | 'changePin' | 'removePin'
>

interface Around {
  readonly document: () => DoorDoc
  readonly write: (deed: Deed, change: (draft: DoorDoc) => void) => boolean
  readonly keepPhoto: (id: string, bytes: Uint8Array) => void
  readonly forgetPhoto: (id: string) => void
  readonly settled: () => Promise<void>
}

/** Where pins, and places on the drawing, stand in history. */
const PINS = 'photos/pins'
const ON_DRAWING = 'photos/onDrawing'
/** A ten-thousandth of a picture is less than a pixel of it. */
const STEPS = 10_000

/** Photos and their pins, as edits of the document like all others. */
export function photoEdits({ document, write, keepPhoto, forgetPhoto, settled }: Around): PhotoEdits {
  const entries = (draft: DoorDoc) => draft.photos as Record<string, Record<string, unknown>>
  const entryOf = (id: string): PhotoEntry | undefined => document().photos[id]
  return {
    async addPhoto(photo, bytes) {
      keepPhoto(photo.id, bytes)
      write({ deed: 'added', path: 'photos', name: photo.caption }, (draft) => {
        entries(draft)[photo.id] = { ...photo }
      })
      await settled()
    },
    changePhoto(id, change) {
      const caption = change.caption.slice(0, LONGEST_TEXT)
      write({ deed: 'set', path: 'photos', typed: caption }, (draft) => {
        const found = entries(draft)[id]
        if (found) found['caption'] = caption
      })
    },
    forgetWhereTaken(id) {
      write({ deed: 'removed', path: 'photos/takenWhere' }, (draft) => {
        delete entries(draft)[id]?.['takenWhere']
      })
    },
    removePhoto(id) {
      forgetPhoto(id)
      write({ deed: 'removed', path: 'photos' }, (draft) => {
        delete entries(draft)[id]
      })
    },
    placePhoto(id, onDrawing) {
      const entry = entryOf(id)
      if (!entry || (entry.onDrawing === undefined && onDrawing === undefined)) return
      const deed = onDrawing === undefined ? 'removed' : entry.onDrawing?.view === onDrawing.view ? 'moved' : 'added'
      write({ deed, path: ON_DRAWING }, (draft) => {
        const found = entries(draft)[id]
        // one value and not three: of two devices that move it one place is kept whole, never one's height with the other's width
        if (found && onDrawing) found['onDrawing'] = { ...onDrawing }
        else if (found) delete found['onDrawing']
      })
    },
    addPin(photo, { across, down }) {
      const entry = entryOf(photo)
      if (!entry || photoOf(entry).pins.length >= MOST_PINS) return undefined
      const id = newId()
      const isWritten = write({ deed: 'added', path: PINS }, (draft) => {
        const found = entries(draft)[photo]
        if (found) found[pinPlace(id)] = { across: share(across), down: share(down), text: '', setAt_ms: Date.now() }
      })
      return isWritten ? id : undefined
    },
    changePin(photo, pin, change) {
      if (!entryOf(photo)?.[pinPlace(pin)]) return
      const text = change.text === undefined ? undefined : printable(change.text)
      write(text === undefined ? { deed: 'moved', path: PINS } : { deed: 'set', path: PINS, typed: text }, (draft) => {
        const found = entries(draft)[photo]?.[pinPlace(pin)] as Record<string, unknown>
        // a field that stays is not written again: what another device puts there meanwhile is kept
        if (text !== undefined) found['text'] = text
        if (change.across !== undefined && found['across'] !== share(change.across)) found['across'] = share(change.across)
        if (change.down !== undefined && found['down'] !== share(change.down)) found['down'] = share(change.down)
      })
    },
    removePin(photo, pin) {
      const entry = entryOf(photo)?.[pinPlace(pin)]
      if (!entry) return
      write({ deed: 'removed', path: PINS, ...(entry.text !== '' && { typed: entry.text }) }, (draft) => {
        delete entries(draft)[photo]?.[pinPlace(pin)]
      })
    },
  }
}

/** Never outside of the picture. */
function share(value: number): number {
  return Math.round(Math.min(1, Math.max(0, value)) * STEPS) / STEPS
}
