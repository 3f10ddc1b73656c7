import type { DoorFile } from '@sillsight/document'
import { asOne } from './as-one.ts'
import type { Automerge } from './automerge.ts'
import { begunIn, isBegunPlace, putBegun } from './begun.ts'
import { conflictsOf } from './conflicts.ts'
import type { Conflict, Deed, DoorId, DoorSnapshot, Draft, Moment, OpenDoor, ReadOnly, Saving } from './contract.ts'
import type { CardRecord } from './database.ts'
import {
  type Author,
  asDraft,
  type Change,
  changesOf,
  type DoorDoc,
  deedOf,
  edited,
  historyOf,
  inverted,
  undoStacks,
} from './door-document.ts'
import { photoEdits } from './photo-edits.ts'
import { photoOf } from './photo-entry.ts'
import { placeShown, twinsIn, withoutTwins } from './twins.ts'

/** What an open door needs of the rest of the store. */
export interface Surroundings {
  readonly automerge: Automerge
  readonly author: () => Author
  readonly saving: () => Saving
  readonly readOnly: () => ReadOnly
  readonly exportedHeads: () => string
  /** New changes of this document, to be written and told to other tabs. */
  readonly onChanges: (doc: DoorDoc, changes: readonly Uint8Array[]) => void
  readonly keepPhoto: (id: string, bytes: Uint8Array) => void
  readonly forgetPhoto: (id: string) => void
  readonly photoBytes: (id: string) => Promise<Uint8Array | undefined>
  readonly settled: () => Promise<void>
  readonly onClosed: () => void
}

/** One door that somebody works on. `receive` brings in what other tabs and devices wrote; `refresh` says that savings or rights changed. */
export interface LiveDoor extends OpenDoor {
  readonly receive: (changes: readonly Uint8Array[]) => void
  readonly refresh: () => void
  readonly document: () => DoorDoc
  readonly listed: () => Listed
}

type Fields = Record<string, unknown>

export function liveDoor(id: DoorId, first: DoorDoc, around: Surroundings): LiveDoor {
  const A = around.automerge
  let doc = first
  let revision = 0
  let snapshot: DoorSnapshot | undefined
  let known: { readonly heads: string; readonly changes: readonly Change[] } | undefined
  const listeners = new Set<() => void>()

  const changes = (): readonly Change[] => {
    const heads = headsOf(A, doc)
    // only what is new is read: of a door edited ten thousand times reading all takes longer than an edit may
    const before = known?.heads.split(' ') ?? []
    if (known?.heads !== heads) known = { heads, changes: [...(known?.changes ?? []), ...changesOf(A, doc, before)] }
    return known.changes
  }
  const tell = () => {
    snapshot = undefined
    for (const listener of listeners) listener()
  }
  const become = (next: DoorDoc) => {
    if (next.file !== doc.file) revision++
    doc = next
  }
  const shownAt = ({ path }: Conflict) => (isBegunPlace(path) ? path : placeShown(doc.file, path))
  const write = (deed: Deed, change: (draft: DoorDoc) => void, more: { undoes?: string; redoes?: string } = {}): boolean => {
    if (around.readOnly() !== undefined) return false
    const before = doc
    const next = edited(A, doc, { deed, at_ms: Date.now(), ...more }, around.author(), change as never)
    if (headsOf(A, next) === headsOf(A, before)) return true
    const made = A.getLastLocalChange(next)
    if (!made) throw new Error('a change must be there after an edit, got none')
    become(next)
    around.onChanges(doc, [made])
    tell()
    return true
  }
  const step = (way: 'undo' | 'redo') => {
    const target = undoStacks(changes(), around.author().id)[way].at(-1)
    if (!target) return
    const whole = doc
    write(
      target.deed,
      (draft) => inverted(A, whole, target, draft as never),
      way === 'undo' ? { undoes: target.hash } : { redoes: target.hash },
    )
  }
  const snapshotNow = (): DoorSnapshot => {
    const all = changes()
    const { undo, redo } = undoStacks(all, around.author().id)
    const top = (stack: readonly Change[]): Deed | undefined => {
      const change = stack.at(-1)
      return change && deedOf(change, all)
    }
    return {
      id,
      revision,
      file: withoutTwins(doc.file),
      typed: doc.typed,
      begun: begunIn(doc),
      photos: Object.values(doc.photos)
        .map(photoOf)
        .sort((a, b) => a.takenAt_ms - b.takenAt_ms || (a.id < b.id ? -1 : 1)),
      conflicts: conflictsOf(A, doc, all).map((each) => ({ ...each, path: shownAt(each) })),
      saving: around.saving(),
      readOnly: around.readOnly(),
      undo: top(undo),
      redo: top(redo),
      onlyHere: around.exportedHeads() !== headsOf(A, doc),
    }
  }

  return {
    id,
    snapshot: () => {
      snapshot ??= snapshotNow()
      return snapshot
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    edit: (deed, change, typed = {}, begun) =>
      write(deed, (draft) => {
        const file = asDraft(draft as never)
        change(withoutTwins(doc.file) === doc.file ? file : (asOne(file) as Draft))
        for (const [path, text] of Object.entries(typed)) {
          if (text === undefined) delete (draft.typed as Record<string, string>)[path]
          else (draft.typed as Record<string, string>)[path] = text
        }
        if (begun) putBegun(draft, begun.thing, begun.values)
      }),
    undo: () => step('undo'),
    redo: () => step('redo'),
    choose(asked, which) {
      const conflict = conflictsOf(A, doc, changes()).find((each) => shownAt(each) === asked)
      const chosen = which === 'all' ? conflict?.together : conflict?.values[which]?.value
      if (conflict === undefined || chosen === undefined) return
      const { path } = conflict
      write({ deed: 'chosen', path }, (draft) => {
        const way = isBegunPlace(path) ? [path] : path.split('/')
        const key = way.pop() as string
        const root = isBegunPlace(path) ? draft : draft.file
        const holder = way.reduce((here, step) => here[step] as Fields, root as unknown as Fields)
        const twins = Array.isArray(holder) ? twinsIn(plain(holder)).find((places) => places[0] === Number(key)) : undefined
        if (twins && Array.isArray(holder)) {
          // the one that is meant stays the thing that it is, so that what others change of it meanwhile is kept
          for (const place of [...twins].reverse()) if (place !== twins[Number(which)]) holder.splice(place, 1)
          return
        }
        // the same value again would be no change, and the rival would stay; out of a list, deleting would take the place itself away
        if (Array.isArray(holder)) holder[key as never] = null as never
        else delete holder[key]
        holder[key] = chosen
      })
    },
    history: () => historyOf(changes(), around.author().id),
    fileAt: (moment: Moment): DoorFile => withoutTwins(A.toJS(A.view(doc, [moment])).file),
    ...photoEdits({ ...around, document: () => doc, write: (deed, change) => write(deed, change) }),
    photoBytes: around.photoBytes,
    settled: around.settled,
    close: around.onClosed,
    receive(received) {
      const before = headsOf(A, doc)
      const [next] = A.applyChanges(doc, [...received])
      become(next) // even if it says nothing new: the library lets nobody use the former one again
      if (headsOf(A, next) === before) return
      tell()
    },
    refresh: tell,
    document: () => doc,
    listed: () => listed(A, doc),
  }
}

/** What a draft holds: its lists have not all that lists have. */
function plain(list: readonly unknown[]): readonly unknown[] {
  return JSON.parse(JSON.stringify(list))
}

export function headsOf(A: Automerge, doc: DoorDoc): string {
  return [...A.getHeads(doc)].sort().join(' ')
}

/** What the list of doors says of a document. */
type Listed = Pick<CardRecord, 'name' | 'note' | 'heads'>

export function listed(A: Automerge, doc: DoorDoc): Listed {
  return { name: doc.file.name ?? '', note: doc.file.note ?? '', heads: headsOf(A, doc) }
}
