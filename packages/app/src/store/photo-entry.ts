import type { Photo, Pin } from './contract.ts'
import { LONGEST_TEXT, printable } from './printable.ts'

/** A pin as the document holds it; its id is in the name of its place. */
export type PinEntry = Omit<Pin, 'id'>

/**
 * A photo as the document holds it. Each pin has a place of its own beside the caption, and no container: one that two devices made
 * apart would be two, of which a merge shows only one.
 */
export type PhotoEntry = Omit<Photo, 'pins'> & { [place: PinPlace]: PinEntry }
export type PinPlace = `pin ${string}`

/** Numbers on a picture that can still be told apart. */
export const MOST_PINS = 99
/** What is read from elsewhere may hold more: merged devices had that many each. */
const MOST_PINS_READ = 2000
const LONGEST_PLACE = 60

export function pinPlace(id: string): PinPlace {
  return `pin ${id}`
}

/** A photo for the screen: its pins in the order in which they were set, which is how they are numbered. */
export function photoOf(entry: PhotoEntry): Photo {
  const { id, takenAt_ms, caption, width_px, height_px, onDrawing, takenWhere } = entry
  const pins = Object.entries(entry).flatMap(([place, value]) =>
    isPinPlace(place) ? [{ ...(value as PinEntry), id: place.slice(4) }] : [],
  )
  pins.sort((a, b) => a.setAt_ms - b.setAt_ms || (a.id < b.id ? -1 : 1))
  return {
    ...{ id, takenAt_ms, caption, width_px, height_px, pins },
    ...(onDrawing !== undefined && { onDrawing }),
    ...(takenWhere !== undefined && { takenWhere }),
  }
}

/** Whether something from elsewhere is the entry of this photo. */
export function isPhotoEntry(id: string, found: unknown): boolean {
  if (!isRecord(found) || found['id'] !== id) return false
  const { takenAt_ms, caption, width_px, height_px, onDrawing, takenWhere } = found
  const pins = Object.entries(found).filter(([place]) => isPinPlace(place))
  return (
    isText(caption, LONGEST_TEXT) &&
    [takenAt_ms, width_px, height_px].every(Number.isFinite) &&
    (takenWhere === undefined || (isText(takenWhere, LONGEST_PLACE) && printable(takenWhere) === takenWhere)) &&
    (onDrawing === undefined || isPlace(onDrawing)) &&
    pins.length <= MOST_PINS_READ &&
    pins.every(([, pin]) => isPin(pin))
  )
}

function isPlace(found: unknown): boolean {
  if (!isRecord(found)) return false
  const { view, u_mm, v_mm } = found
  return (view === 'plan' || view === 'elevation') && [u_mm, v_mm].every(Number.isFinite)
}

function isPin(found: unknown): boolean {
  if (!isRecord(found)) return false
  const { across, down, text, setAt_ms } = found
  return isShare(across) && isShare(down) && Number.isFinite(setAt_ms) && isText(text, LONGEST_TEXT) && printable(text) === text
}

function isPinPlace(place: string): place is PinPlace {
  return /^pin [0-9a-f]{1,64}$/.test(place)
}

function isShare(value: unknown): boolean {
  return typeof value === 'number' && value >= 0 && value <= 1
}

function isText(value: unknown, longest: number): value is string {
  return typeof value === 'string' && value.length <= longest
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
