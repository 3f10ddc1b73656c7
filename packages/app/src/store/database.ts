import { sha256 } from '@sillsight/document'
import { type DBSchema, type IDBPDatabase, openDB } from 'idb'
import type { DoorCard, DoorId, ImportResult } from './contract.ts'

/** Written into the database. A program that finds a larger one only reads: somebody else's newer version knows more. */
export const FORMAT = 2 // 1: every change a record of its own

/** Nothing is brought into a database that a newer program owns. */
export const OF_NEWER: ImportResult = {
  ok: false,
  issues: [{ code: 'newer-version', path: 'database', expected: `format ${FORMAT}`, got: 'that of a newer program' }],
}

/** Bytes with their SHA-256, so that what the disk spoiled is noticed before it is believed. */
export interface Sealed {
  readonly bytes: Uint8Array
  readonly sha256: string
}

export type ChangeRecord = Sealed & { readonly door: DoorId; readonly hash: string }

export function sealed(bytes: Uint8Array): Sealed {
  return { bytes, sha256: sha256(bytes) }
}

/** The bytes if they are as they were written. */
export function unsealed(found: unknown): Uint8Array | undefined {
  if (typeof found !== 'object' || found === null) return undefined
  const { bytes, sha256: seal } = found as Partial<Sealed>
  return bytes instanceof Uint8Array && sha256(bytes) === seal ? bytes : undefined
}

/** What the list of doors shows without opening one, and what this device alone knows of it. */
export interface CardRecord {
  readonly id: DoorId
  readonly name: string
  readonly note: string
  readonly changedAt_ms: number
  readonly away: boolean
  readonly damaged: boolean
  /** Heads of the document now, and when it was last handed out. */
  readonly heads: string
  readonly exportedHeads: string
}

export function emptyCard(id: DoorId): CardRecord {
  return { id, name: '', note: '', changedAt_ms: Date.now(), away: false, damaged: false, heads: '', exportedHeads: '' }
}

/** The list of doors, what changed last first. */
export function cardsOf(records: readonly CardRecord[]): readonly DoorCard[] {
  return records
    .map(({ heads, exportedHeads, ...card }) => ({ ...card, onlyHere: heads !== exportedHeads }))
    .sort((a, b) => b.changedAt_ms - a.changedAt_ms)
}

interface Schema extends DBSchema {
  /** One record for each change of each document; those that were packed together are in the door's packs, whose `hash` is no hash. */
  changes: {
    key: [door: string, hash: string]
    value: ChangeRecord
    indexes: { door: string }
  }
  cards: { key: string; value: CardRecord }
  photos: { key: string; value: Sealed }
  /** `format`, `author`, `authorName`. */
  about: { key: string; value: string | number }
  /** Records that could not be read, as they were found. */
  damaged: { key: string; value: { readonly found: unknown; readonly at_ms: number } }
}
export type Database = IDBPDatabase<Schema>

/**
 * @param onOutdated called when a newer program wants the database: this one lets go of it and writes no more
 * @returns undefined where the browser keeps nothing (a private window, storage switched off)
 */
export async function openDatabase(name: string, onOutdated: () => void): Promise<Database | undefined> {
  if (!globalThis.indexedDB) return undefined
  try {
    const database = await openDB<Schema>(name, 1, {
      upgrade(fresh) {
        fresh.createObjectStore('changes', { keyPath: ['door', 'hash'] }).createIndex('door', 'door')
        fresh.createObjectStore('cards', { keyPath: 'id' })
        fresh.createObjectStore('photos')
        fresh.createObjectStore('about')
        fresh.createObjectStore('damaged', { autoIncrement: true })
      },
      blocking(_current, _blocked, event) {
        ;(event.target as IDBDatabase).close()
        onOutdated()
      },
    })
    await database.get('about', 'format') // some private windows open a database and refuse it at the first use
    return database
  } catch (problem) {
    if (!(problem instanceof DOMException && problem.name === 'VersionError')) return undefined
    onOutdated()
    return openAsItIs(name)
  }
}

/** A database that a newer program has rebuilt, to read what this one understands of it. */
async function openAsItIs(name: string): Promise<Database | undefined> {
  const stores = ['changes', 'cards', 'photos', 'about', 'damaged'] as const
  try {
    const database = await openDB<Schema>(name, undefined, {
      blocking: (_current, _blocked, event) => (event.target as IDBDatabase).close(),
    })
    if (stores.every((store) => database.objectStoreNames.contains(store))) return database
    database.close()
  } catch {
    // rebuilt again, or refused: then there is nothing to read
  }
  return undefined
}
