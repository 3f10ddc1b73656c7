import type { Automerge } from './automerge.ts'
import type { DoorId } from './contract.ts'
import { type ChangeRecord, type Database, unsealed } from './database.ts'
import type { DoorDoc, DoorDocument } from './door-document.ts'
import { isPack, type Packing, packingOf } from './pack.ts'

/** What there is of a door: written, or waiting to be. */
export interface Stored {
  /** Undefined where nothing can be read. */
  readonly doc: DoorDoc | undefined
  /** The changes of `doc`: sound, and resting on nothing that is gone. */
  readonly changes: () => readonly Uint8Array[]
  /** Nothing is spoiled and nothing is missing. */
  readonly whole: boolean
  /** Records that are not as they were written, and of which there is no sound copy. */
  readonly spoiled: readonly ChangeRecord[]
  /** What could be written in place of all that was read, where that is worth it. */
  readonly packing: Packing | undefined
}

/**
 * @param heads the last changes of the document as its card names them: one of these that is gone is missed by no other change
 * @param waiting changes that are not in the database yet
 */
export async function storedDoor(
  A: Automerge,
  database: Database | undefined,
  id: DoorId,
  heads: string,
  waiting: () => readonly Uint8Array[],
): Promise<Stored> {
  const records = database ? await database.getAllFromIndex('changes', 'door', id) : []
  const read = records.map((record) => ({ record, bytes: unsealed(record) }))
  const packs = read.filter(({ record }) => isPack(record))
  const pack = packs.find(({ bytes }) => bytes !== undefined)?.bytes
  const spoiled = read.filter(({ record, bytes }) => bytes === undefined && !(isPack(record) && pack)).map(({ record }) => record)
  const loose = read.flatMap(({ record, bytes }) => (bytes && !isPack(record) ? [bytes] : []))
  const doc = documentOf(A, pack, [...loose, ...waiting()])
  if (!doc) return { doc, changes: () => [], whole: false, spoiled, packing: undefined }
  const whole = !lacks(A, doc, heads) && spoiled.length === 0
  return { doc, changes: () => A.getAllChanges(doc), whole, spoiled, packing: whole ? packingOf(A, id, doc, records) : undefined }
}

/** The document of a pack and some changes; those that rest on one that is not there wait in it and do not count. */
function documentOf(A: Automerge, pack: Uint8Array | undefined, changes: readonly Uint8Array[]): DoorDoc | undefined {
  try {
    const [doc] = A.applyChanges(pack ? A.load<DoorDocument>(pack) : A.init<DoorDocument>(), [...changes])
    return doc.file ? doc : undefined
  } catch {
    return undefined // cannot be decoded although it is as it was written
  }
}

/** Whether a document lacks a change that its card names, or that one of its own rests on. */
export function lacks(A: Automerge, doc: DoorDoc, heads: string): boolean {
  return A.getMissingDeps(doc, heads.split(' ').filter(isHash)).length > 0
}

const isHash = (text: string) => /^[0-9a-f]{64}$/.test(text)

/** Keeps a copy of what was found, once. */
export async function setAside(database: Database, spoiled: readonly ChangeRecord[]): Promise<void> {
  for (const found of spoiled) await database.put('damaged', { found, at_ms: Date.now() }, asideKey(found))
}

/** After a door was brought back: moves aside what is not part of it, so that the next opening does not stumble over it again. */
export async function mend(database: Database, id: DoorId, isPart: (hash: string) => boolean): Promise<void> {
  const transaction = database.transaction(['changes', 'damaged'], 'readwrite', { durability: 'strict' })
  for (const found of await transaction.objectStore('changes').index('door').getAll(id)) {
    if (isPack(found) ? unsealed(found) : isPart(found.hash)) continue
    await transaction.objectStore('damaged').put({ found, at_ms: Date.now() }, asideKey(found))
    await transaction.objectStore('changes').delete([found.door, found.hash])
  }
  await transaction.done
}

function asideKey({ door, hash }: ChangeRecord): string {
  return `${door}/${hash}`
}
