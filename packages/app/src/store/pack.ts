import type { Automerge } from './automerge.ts'
import type { DoorId } from './contract.ts'
import { type ChangeRecord, type Database, sealed, unsealed } from './database.ts'
import type { DoorDoc } from './door-document.ts'

/**
 * A pack is a whole document, history and all, in one record: ten thousand changes one by one take 25 times the room and four times as long to
 * read. It is kept twice, because one spoiled record must not take the history with it. A pack never loses a change: the transaction that
 * writes it and deletes the records it holds happens whole or not at all, and only where the pack it follows is still the one that was read.
 */
const PACKS = ['pack 1', 'pack 2'] as const

/** So many records are read one by one before they are packed. */
export const MOST_LOOSE = 200

export function isPack({ hash }: Pick<ChangeRecord, 'hash'>): boolean {
  return (PACKS as readonly string[]).includes(hash)
}

/** What is to be written in place of records that were read. */
export interface Packing {
  readonly door: DoorId
  readonly bytes: Uint8Array
  /** SHA-256 of the packs as they were read, by name; undefined where there was none. */
  readonly follows: readonly (string | undefined)[]
  /** The records whose changes it holds. */
  readonly holds: readonly string[]
}

/** @returns undefined where there is little to pack, and both packs are sound */
export function packingOf(A: Automerge, door: DoorId, doc: DoorDoc, records: readonly ChangeRecord[]): Packing | undefined {
  const packs = PACKS.map((name) => records.find(({ hash }) => hash === name))
  const loose = records.filter((record) => !isPack(record))
  const isSound =
    packs.every((pack) => pack === undefined || unsealed(pack) !== undefined) && (packs[0] === undefined) === (packs[1] === undefined)
  if (loose.length < MOST_LOOSE && isSound) return undefined
  return { door, bytes: A.save(doc), follows: packs.map((pack) => pack?.sha256), holds: loose.map(({ hash }) => hash) }
}

/** Writes it, unless another tab has packed meanwhile, whose pack may hold changes that this one has not heard of, or has thrown the door away. */
export async function pack(database: Database, { door, bytes, follows, holds }: Packing): Promise<boolean> {
  const transaction = database.transaction('changes', 'readwrite', { durability: 'strict' })
  const { store } = transaction
  const found = await Promise.all(PACKS.map((name) => store.get([door, name])))
  const first = holds[0] === undefined ? true : await store.getKey([door, holds[0]])
  if (first === undefined || found.some((each, i) => each?.sha256 !== follows[i])) {
    await transaction.done
    return false
  }
  const seal = sealed(bytes)
  await Promise.all([
    ...PACKS.map((hash) => store.put({ door, hash, ...seal })),
    ...holds.map((hash) => store.delete([door, hash])),
    transaction.done,
  ])
  return true
}
