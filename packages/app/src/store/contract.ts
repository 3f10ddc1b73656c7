import type { DoorFile } from '@sillsight/document'

/**
 * What the rest of the app knows of storage. A door is one mergeable document with its history; `file` inside it is the door file as it
 * is exported. Nothing here throws for what a user or a device may do: failures are states that the screen shows.
 */

export type DoorId = string & { readonly brand: 'door' }
/** A moment in the history of a door: the heads of its document, as one text. */
export type Moment = string & { readonly brand: 'moment' }

/** The door file while it is edited: plain JSON that may be changed in place inside of `edit`, and nowhere else. */
export type Draft = { -readonly [K in keyof DoorFile]: DoorFile[K] } & Record<string, unknown>

/**
 * What an edit did, as a code with its arguments, so that history reads in every language.
 * `path` is the place in the door file, as `survey/opening/width_mm`; `name` what the thing is called on site.
 */
export interface Deed {
  readonly deed: 'made' | 'imported' | 'set' | 'added' | 'removed' | 'moved' | 'mended' | 'chosen' | 'copied'
  readonly path?: string
  readonly name?: string
  /** The value as it was typed, where one was. */
  readonly typed?: string
}

export interface HistoryEntry {
  readonly moment: Moment
  readonly deed: Deed
  /** Name that the author gave on the device, or empty. */
  readonly author: string
  readonly at_ms: number
  readonly own: boolean
  /** Set for an undo or redo: the entry that it takes back or brings back. */
  readonly undoes?: Moment
  readonly redoes?: Moment
}

/** A value of a thing that the door file holds only whole, such as a lane, and that is not whole yet. */
export interface Begun {
  readonly value: number | string
  /** As it was typed, where that differs. */
  readonly typed?: string
}

/** Values of one thing that is begun, by name; an undefined one goes, and undefined in place of all of them takes the whole thing away. */
export interface BegunEdit {
  readonly thing: string
  readonly values: Readonly<Record<string, Begun | undefined>> | undefined
}

/** Two values for one place, written by people who did not see each other's. The file shows the first until someone chooses. */
export interface Conflict {
  readonly path: string
  /** In the order of the file; of something begun a `Begun`, its path being its place in the document. */
  readonly values: readonly { readonly value: unknown; readonly author: string; readonly at_ms: number }[]
  /** All of it in one, where people do not contradict each other: lists of different things that each began. */
  readonly together: unknown
}

export type Saving =
  | { readonly kind: 'saved'; readonly at_ms: number }
  | { readonly kind: 'saving' }
  /** The last edits are on the screen only. `full`: no room on the device; `private`: the browser keeps nothing; `failed`: anything else. */
  | { readonly kind: 'not-saved'; readonly reason: 'full' | 'private' | 'failed'; readonly message: string }

export type ReadOnly = 'newer-version' | 'past' | undefined

export interface Photo {
  readonly id: string // SHA-256 of the stored bytes
  readonly takenAt_ms: number
  readonly caption: string
  readonly width_px: number
  readonly height_px: number
  /** Where it belongs on the drawing, doorway frame. */
  readonly onDrawing?: { readonly view: 'plan' | 'elevation'; readonly u_mm: number; readonly v_mm: number }
  /** Latitude and longitude in words, only where somebody wanted to keep them; never in the picture's bytes. */
  readonly takenWhere?: string
  /** In the order in which they were set: the first is number 1. */
  readonly pins: readonly Pin[]
}

/** A numbered place on a photo. Fractions of its width and height, from the upper left: however large the picture is drawn, it stays. */
export interface Pin {
  readonly id: string
  readonly across: number
  readonly down: number
  /** What is there, on one line. */
  readonly text: string
  readonly setAt_ms: number
}

/** One immutable picture of an open door; a new object whenever anything changes. */
export interface DoorSnapshot {
  readonly id: DoorId
  /** Grows with every change of `file`: an answer that carries an older one is old. */
  readonly revision: number
  readonly file: DoorFile
  /** What was typed, by place in the file, where it differs from what the file can hold: `7' 10 1/2"`. */
  readonly typed: Readonly<Record<string, string>>
  /** What is begun and not in the file yet, by thing and by the name of the value: kept like all else, and never judged. */
  readonly begun: Readonly<Record<string, Readonly<Record<string, Begun>>>>
  readonly photos: readonly Photo[]
  readonly conflicts: readonly Conflict[]
  readonly saving: Saving
  readonly readOnly: ReadOnly
  /** What undo and redo would do; undefined if nothing. Only one's own edits. */
  readonly undo: Deed | undefined
  readonly redo: Deed | undefined
  /** True until this state of the door was exported or backed up. */
  readonly onlyHere: boolean
}

export interface OpenDoor {
  readonly id: DoorId
  readonly snapshot: () => DoorSnapshot
  readonly subscribe: (listener: () => void) => () => void
  /** Changes the draft at once; `snapshot().saving` says when it is in the database. Ignored (and false) where read-only. */
  readonly edit: (
    deed: Deed,
    change: (draft: Draft) => void,
    typed?: Readonly<Record<string, string | undefined>>,
    begun?: BegunEdit,
  ) => boolean
  readonly undo: () => void
  readonly redo: () => void
  /** @param which of the values, or all of them where they go together */
  readonly choose: (path: string, which: number | 'all') => void
  /** Newest first. */
  readonly history: () => readonly HistoryEntry[]
  /** The file as it was then; the live door is untouched. */
  readonly fileAt: (moment: Moment) => DoorFile
  readonly addPhoto: (photo: Omit<Photo, 'pins'>, bytes: Uint8Array) => Promise<void>
  readonly changePhoto: (id: string, change: Pick<Photo, 'caption'>) => void
  /** Where it was taken is not kept any more; history still knows it. */
  readonly forgetWhereTaken: (id: string) => void
  readonly removePhoto: (id: string) => void
  /** Marked on a drawing, moved there, or (undefined) taken off it. */
  readonly placePhoto: (id: string, onDrawing: Photo['onDrawing']) => void
  /** @returns its id; undefined where nothing was set: read-only, no such photo, or too many on it */
  readonly addPin: (photo: string, at: Pick<Pin, 'across' | 'down'>) => string | undefined
  /** Moved, or said anew. */
  readonly changePin: (photo: string, pin: string, change: Partial<Pick<Pin, 'across' | 'down' | 'text'>>) => void
  readonly removePin: (photo: string, pin: string) => void
  readonly photoBytes: (id: string) => Promise<Uint8Array | undefined>
  /** Everything up to now is in the database (or has failed). */
  readonly settled: () => Promise<void>
  readonly close: () => void
}

export interface DoorCard {
  readonly id: DoorId
  readonly name: string
  readonly note: string
  readonly changedAt_ms: number
  readonly onlyHere: boolean
  /** Put away: listed apart, nothing deleted. */
  readonly away: boolean
  readonly damaged: boolean
}

export interface StorageHealth {
  /** Answer of the browser when asked to keep the data; `unknown` where it has no such question. */
  readonly persistent: 'granted' | 'refused' | 'unknown'
  readonly used_bytes: number | undefined
  readonly free_bytes: number | undefined
  /** Little room left: said before it is too late. */
  readonly low: boolean
  readonly private: boolean
  /** A newer version of the program has opened this database: everything is read-only here. */
  readonly newerVersion: boolean
}

export type ImportResult =
  | { readonly ok: true; readonly doors: readonly { readonly id: DoorId; readonly how: 'new' | 'merged' | 'same' }[] }
  | {
      readonly ok: false
      readonly issues: readonly { readonly code: string; readonly path: string; readonly expected: string; readonly got: string }[]
    }

export interface Doors {
  readonly cards: () => readonly DoorCard[]
  readonly health: () => StorageHealth
  readonly author: () => string
  readonly subscribe: (listener: () => void) => () => void
  readonly setAuthor: (name: string) => void
  readonly open: (id: DoorId) => Promise<OpenDoor | undefined>
  /** @param typed what was typed, by place in the file, as in a snapshot */
  readonly make: (file: DoorFile, deed: Deed, typed?: Readonly<Record<string, string>>) => Promise<OpenDoor>
  readonly copy: (id: DoorId, name: string) => Promise<DoorId>
  readonly putAway: (id: DoorId, away: boolean) => void
  /** Gone for good, history and all. Where another tab has it open, that tab keeps it. */
  readonly throwAway: (id: DoorId) => Promise<void>
  /** A door file (JSON), one door with its history, or a backup: told apart by content. Merges where the document is already here. */
  readonly read: (bytes: Uint8Array, fileName: string) => Promise<ImportResult>
  /** One door with history and photos; merges on the other device. */
  readonly exportDoor: (id: DoorId) => Promise<Uint8Array>
  /** The door file alone, for the command line and other people. */
  readonly exportFile: (id: DoorId) => Promise<string>
  /** All doors with history, photos and checksum, in one file. */
  readonly backup: () => Promise<Uint8Array>
  /** What could still be read of a damaged database, as a backup; the damaged data stay where they are. */
  readonly rescue: () => Promise<Uint8Array | undefined>
  readonly askToPersist: () => Promise<StorageHealth['persistent']>
}
