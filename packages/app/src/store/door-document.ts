import type { Doc, Heads } from '@automerge/automerge/slim'
import type { DoorFile } from '@sillsight/document'
import type { Automerge } from './automerge.ts'
import type { BegunPlace } from './begun.ts'
import type { Begun, Deed, Draft, HistoryEntry, Moment } from './contract.ts'
import type { PhotoEntry } from './photo-entry.ts'
import { same, takeBack } from './take-back.ts'

/** What is merged between devices: the door file and what belongs to it but not into it. */
export type DoorDocument = {
  file: DoorFile
  typed: Record<string, string>
  photos: Record<string, PhotoEntry>
} & { [place: BegunPlace]: Begun }
export type DoorDoc = Doc<DoorDocument>

/** Who edits on this device. */
export interface Author {
  readonly id: string
  readonly name: string
}

/** Travels with each change, as JSON in its message. */
interface Message {
  readonly deed: Deed
  readonly author: string
  readonly name: string
  readonly at_ms: number
  /** Hash of the change that this one takes back, or of the taking back that it brings back. */
  readonly undoes?: string
  readonly redoes?: string
}

export interface Change extends Message {
  readonly hash: string
  readonly deps: Heads
  readonly actor: string
  readonly startOp: number
  readonly maxOp: number
}

export function newDocument(A: Automerge, first: Omit<DoorDocument, 'photos'>, deed: Deed, author: Author, at_ms: number): DoorDoc {
  const content = JSON.parse(JSON.stringify(first)) as typeof first
  return A.change(A.init<DoorDocument>(), options({ deed, author: author.id, name: author.name, at_ms }), (draft) => {
    Object.assign(draft, content, { photos: {} })
  })
}

/** One edit. The same document comes back where it changed nothing, unless it is an undo or redo: these count as done, or they would be tried for ever. */
export function edited(
  A: Automerge,
  doc: DoorDoc,
  message: Omit<Message, 'author' | 'name'>,
  author: Author,
  change: (draft: DoorDocument) => void,
): DoorDoc {
  const given = options({ ...message, author: author.id, name: author.name })
  const next = A.change(doc, given, change)
  const step = message.undoes !== undefined || message.redoes !== undefined
  return step && same(A.getHeads(next), A.getHeads(doc)) ? A.emptyChange(doc, given) : next
}

function options(message: Message): { message: string; time: number } {
  return { message: JSON.stringify(message), time: Math.floor(message.at_ms / 1000) }
}

export function asDraft(draft: DoorDocument): Draft {
  return draft.file as unknown as Draft
}

/** All changes that these heads do not know, each after those that it rests on. */
export function changesOf(A: Automerge, doc: DoorDoc, heads: Heads = []): readonly Change[] {
  return A.getChangesMetaSince(doc, heads).map(({ hash, deps, actor, startOp, maxOp, message, time }) => ({
    ...messageOf(message, time),
    hash,
    deps,
    actor,
    startOp,
    maxOp,
  }))
}

function messageOf(text: string | null, time: number): Message {
  const unknown: Message = { deed: { deed: 'set' }, author: '', name: '', at_ms: time * 1000 }
  try {
    const found = JSON.parse(text ?? '') as Partial<Message>
    return typeof found.author === 'string' && typeof found.deed?.deed === 'string' ? { ...unknown, ...found } : unknown
  } catch {
    return unknown // not written by this program
  }
}

/** What one author could take back and bring back next: the hashes of the changes to invert. */
export function undoStacks(
  changes: readonly Change[],
  author: string,
): { readonly undo: readonly Change[]; readonly redo: readonly Change[] } {
  const undo: Change[] = []
  const redo: Change[] = []
  for (const change of changes) {
    if (change.author !== author || change.deed.deed === 'made' || change.deed.deed === 'imported' || change.deed.deed === 'copied')
      continue
    if (change.undoes !== undefined) {
      if (takeOut(undo, change.undoes)) redo.push(change)
    } else if (change.redoes !== undefined) {
      if (takeOut(redo, change.redoes)) undo.push(change)
    } else {
      undo.push(change)
      redo.length = 0
    }
  }
  return { undo, redo }
}

/** By its name and not from the top: two tabs of one author may have worked side by side. */
function takeOut(stack: Change[], hash: string): boolean {
  const at = stack.findLastIndex((each) => each.hash === hash)
  if (at >= 0) stack.splice(at, 1)
  return at >= 0
}

/** Takes one change back where nobody has changed the same place since. */
export function inverted(A: Automerge, doc: DoorDoc, change: Change, draft: DoorDocument): void {
  const before = A.toJS(A.view(doc, change.deps))
  const after = A.toJS(A.view(doc, [change.hash]))
  takeBack(
    draft as unknown as Record<string, unknown>,
    before as unknown as Record<string, unknown>,
    after as unknown as Record<string, unknown>,
    (holder, key, shown) => {
      const rivals = A.getConflicts(holder as DoorDoc, key as never) ?? {}
      return Object.values(rivals).some((each) => !same(JSON.parse(JSON.stringify(each)), shown))
    },
  )
}

/** What somebody did, through an undo and its redo, as one reads it. */
export function deedOf(change: Change, changes: readonly Change[]): Deed {
  const other = change.undoes ?? change.redoes
  const undone = other === undefined ? undefined : changes.find(({ hash }) => hash === other)
  return undone ? deedOf(undone, changes) : change.deed
}

export function historyOf(changes: readonly Change[], author: string): readonly HistoryEntry[] {
  return changes
    .map((change): HistoryEntry => {
      const { hash, at_ms, name, undoes, redoes } = change
      return {
        moment: hash as Moment,
        deed: deedOf(change, changes),
        author: name,
        at_ms,
        own: change.author === author,
        ...(undoes !== undefined && { undoes: undoes as Moment }),
        ...(redoes !== undefined && { redoes: redoes as Moment }),
      }
    })
    .reverse()
}
